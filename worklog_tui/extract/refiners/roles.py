"""What a reading is for: read off the machine, what it should be, what it was set to, still to come, or a part's
label.
"""

from __future__ import annotations

from worklog_tui.extract.measured.habits import DEVICES, ON_CHARGE
from worklog_tui.extract.measured.naming import is_test_voltage
from worklog_tui.extract.refiners.booked import from_book
from worklog_tui.extract.refiners.brought import SETTABLE, TURNED, brought_to
from worklog_tui.extract.refiners.rated import is_rated
from worklog_tui.extract.refiners.time_roles import DAYS, is_ordered, role_of_time
from worklog_tui.extract.scene import Draft, Scene
from worklog_tui.extract.tokens import Token

REACH = 9
SET_ACTIONS = frozenset({"adjust", "tighten", "fill"})
HOLDS = frozenset("holds takes capacity capacity's".split())
SET_BY_NATURE = frozenset({"torque", "turns"})
FOUND = frozenset(
    "somebody someone somebodys someones had was were wz ws found count counted only is still reads read".split()
)


def refine(drafts: list[Draft], scene: Scene) -> list[Draft]:
    """Readings with their role, where the rule did not give one."""
    amounts = {d.main for d in drafts if d.kind == "reading"}
    for draft in drafts:
        if draft.kind == "reading" and not draft.fields["role"]:
            draft.fields["role"] = _role(draft, scene, amounts)
            if draft.fields["quantity"] == "duration" and draft.fields["unit"] in DAYS and is_ordered(scene):
                draft.fields["subject"] = "parts"
    return drafts


def _role(draft: Draft, scene: Scene, amounts: set[int]) -> str:
    quantity = draft.fields["quantity"]
    if from_book(draft.main, scene, amounts):
        return "specified"
    if quantity == "duration":
        return role_of_time(draft, scene)
    if is_rated(draft, scene):
        return "rated"
    if quantity == "thread":
        return "measured"
    if quantity == "volume":
        return _of_fluid(draft, scene)
    if quantity in ("temperature", "current") and _of_a_device(draft, scene):
        return "set"
    if quantity == "voltage" and is_test_voltage(draft.main, scene):
        return "set"
    if brought_to(draft.main, scene) and quantity in SETTABLE:
        return "set"
    was_set = _was_set(draft.main, scene, amounts, quantity)
    if was_set or (quantity in SET_BY_NATURE and not _as_found(draft.main, scene)):
        return "set"
    if quantity == "ratio" and draft.thing is not None and draft.thing.kind == "fluid":
        return "set"
    topic = scene.context.topic
    if topic is not None and topic.quantity == quantity and topic.role == "set" and not _read_off(draft.main, scene):
        return "set"
    return "planned" if "plan" in scene.tokens[draft.main].stances and quantity == "temperature" else "measured"


def _of_fluid(draft: Draft, scene: Scene) -> str:
    """A fluid that came out is measured, one that went in is set, one that is wanted is planned."""
    span = scene.clause(draft.main)
    before = scene.tokens[max(span.start, draft.main - 8) : draft.main]
    after = scene.tokens[draft.main + 1 : min(draft.main + 5, span.stop)]
    if any(t.low in HOLDS for t in before):
        return "specified"
    out = [k for k, t in enumerate(before) if _comes_out(t)]
    went = [k for k, t in enumerate(before) if _goes_in(t)]
    if out and out[-1] >= len(before) - 2 and not went:
        return "measured"
    back = any(t.low in BACK_IN and _no_place(k, scene) for k, t in enumerate(after[:2], draft.main + 1))
    if back or any(t.low == "fresh" for t in after[:3]):
        return "set"
    if out and (not went or out[-1] >= went[-1]):
        return "measured"
    if "plan" in scene.tokens[draft.main].stances and not went:
        return "planned"
    if went or _went_in(draft.main, scene, after):
        return "set"
    return "planned" if _is_wanted(draft.main, scene) else "measured"


def _went_in(i: int, scene: Scene, after: list[Token]) -> bool:
    """`Two litres in`; not `half a litre in the minute`."""
    low = [t.low for t in after[:2]]
    if low[:1] == ["to"] and low[1:] and low[1] in ("bring", "fill", "top", "get"):
        return True
    return any(
        t.low in ("went in", "goes in", "to fill") or (t.low == "in" and _no_place(k, scene))
        for k, t in enumerate(after, i + 1)
    )


def _no_place(k: int, scene: Scene) -> bool:
    """Whether nothing follows that something could be in: `in the bowl`, `in a minute`."""
    after = scene.tokens[k + 1] if k + 1 < len(scene.tokens) else None
    if after is None:
        return True
    return not (after.sense("article", "pronoun") or after.amount is not None or after.thing is not None)


def _comes_out(token: Token) -> bool:
    named = any(s.cls in ("did", "doing") and s.name in ("drain", "bleed") for s in token.senses)
    return named or bool(OUT & set(token.low.split()))


def _goes_in(token: Token) -> bool:
    named = any(s.cls in ("did", "doing", "does", "do") and s.name == "fill" for s in token.senses)
    return named or bool(token.sense("setto", "new")) or bool(IN & set(token.low.split()))


def _is_wanted(i: int, scene: Scene) -> bool:
    """`That wants changing. Six pints.`: the sentence before says what is still to be done."""
    words = scene.tokens[:i]
    return any(t.sense("must", "want") for t in words)


BACK_IN = frozenset({"in", "back in", "went in", "goes in", "went back in"})
OUT = frozenset("out drained dumped caught got lost spilled came".split())
IN = frozenset("in fresh took poured filled topped added puts put".split())


def _came_to(k: int, scene: Scene, quantity: str) -> bool:
    """`It's down to four`, `that one got up to fifty-five`, `the quill's dropping down to`: it came there by itself."""
    if scene.tokens[k].low == "gets" and k + 1 < len(scene.tokens) and scene.tokens[k + 1].low in ("to", "as", "up"):
        return True
    if k and scene.tokens[k - 1].low in ("have", "has", "had") and not _by_a_person(k - 1, scene):
        return True  # `these have opened up to forty`
    if scene.tokens[k].low not in CAME_TO or not k:
        return False
    if scene.tokens[k].low == "back to" and quantity in ("gap", "turns", "angle"):
        return False  # `the points are back to twenty`: nobody but a person brings them back
    before = scene.tokens[k - 1]
    owns = scene.text[max(0, before.end - 2) : before.end] in ("'s", "\u2019s") or before.low in ("theyre", "its")
    return bool(before.sense("copula")) or before.low in CAME or owns or before.low.endswith(("dropped", "dropping"))


def _by_a_person(k: int, scene: Scene) -> bool:
    """Whether a person stands before the verb at token k."""
    return k > 0 and bool(scene.tokens[k - 1].sense("person") or scene.tokens[k - 1].low in ("i", "we", "he", "she"))


CAME_TO = frozenset({"down to", "up to", "back to", "into"})
CAME = frozenset(
    (
        "got gets get getting add adds adding added dropped drops dropping fell falls fallen rose rises climbed climbs "
        "crept worn wears "
        "went sinks sank only is was gone come comes came goes go going sags sagged pulled pulls dips dipped"
    ).split()
)


def _as_found(i: int, scene: Scene) -> bool:
    amount = scene.tokens[i].amount
    turned = amount is not None and amount.unit == "turn"
    first = max(0, i - TURNED) if turned else max(scene.clause(i).start, i - 3)
    near = scene.tokens[first:i]
    if turned and any(s.cls == "did" for t in near for s in t.senses):
        return False
    whose = scene.tokens[scene.clause(i).start : i] if turned else []
    return any(t.low in FOUND for t in near) or any(t.low in scene.book.owed["somebody"] for t in whose)



def _read_off(i: int, scene: Scene) -> bool:
    """`it reads`, `opens at`, `is`: a word of reading in the clause before the number."""
    return any(t.sense("reads", "copula", "pronoun") for t in scene.tokens[scene.clause(i).start : i])


def _of_a_device(draft: Draft, scene: Scene) -> bool:
    """`On the charger at six amps`: what a device named in the clause was set to."""
    words = DEVICES & set(draft.fields["subject"].lower().split())
    near = scene.tokens[max(0, draft.main - TURNED) : draft.main]
    named = any(words & set(t.low.split()) for t in near) or any(t.low in ON_CHARGE for t in near)
    return bool(words) and named


def _adjusts(k: int, scene: Scene) -> bool:
    """Whether a token tells that something was set; a state (`bent`), a side (`top`) and `dropping` tell nothing."""
    token = scene.tokens[k]
    if token.sense("side", "bad", "judged") or (token.sense("doing") and token.low in FELL):
        return False
    if k and scene.tokens[k - 1].low in ("have", "has") and not _by_a_person(k - 1, scene):
        return False
    if token.low == "moved" and k and (scene.tokens[k - 1].thing is not None or scene.tokens[k - 1].sense("pronoun")):
        return False  # `the clock moved twelve thou`
    return any(s.cls in ("did", "doing", "does", "do") and s.name in SET_ACTIONS for s in token.senses)


FELL = frozenset("dropping falling losing".split())


def _was_set(i: int, scene: Scene, amounts: set[int], quantity: str) -> bool:
    tokens = scene.tokens
    for k in range(i - 1, max(i - 1 - REACH, -1), -1):
        if tokens[k].kind == "stop" or k in amounts or "break" in tokens[k].classes or tokens[k].low in ("was", "were"):
            return False
        if _adjusts(k, scene):
            return True
        if "setto" in tokens[k].classes:
            return not _came_to(k, scene, quantity)
        if "reads" in tokens[k].classes and tokens[k].low not in ("at", "now", "is", "was", "are", "up to", "down to"):
            return False
    return False
