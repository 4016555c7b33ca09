"""What a reading is for: read off the machine, what it should be, what it was set to, still to come, or a part's
label.
"""

from __future__ import annotations

from worklog_tui.extract.measured.by_times import crossed
from worklog_tui.extract.measured.habits import DEVICES, ON_CHARGE
from worklog_tui.extract.measured.naming import is_test_voltage
from worklog_tui.extract.refiners.booked import from_book
from worklog_tui.extract.refiners.brought import SETTABLE, TURNED, brought_to
from worklog_tui.extract.refiners.of_fluids import role_of_fluid
from worklog_tui.extract.refiners.rated import is_rated
from worklog_tui.extract.refiners.time_roles import DAYS, is_ordered, role_of_time
from worklog_tui.extract.refiners.turned import came_of_turning
from worklog_tui.extract.refiners.was_set import left_so, was_set
from worklog_tui.extract.scene import Draft, Scene

SET_BY_NATURE = frozenset({"torque", "turns"})
FOUND = frozenset(
    "somebody someone somebodys someones had was were wz ws found count counted only is still reads read".split()
)


def refine(drafts: list[Draft], scene: Scene) -> list[Draft]:
    """Readings with their role, where the rule did not give one."""
    amounts = frozenset([d.main for d in drafts if d.kind == "reading"])
    told: dict[int, str] = {}
    for draft in drafts:
        if draft.kind == "reading" and not draft.fields["role"]:
            draft.fields["role"] = _of_pair(draft.main, told, scene) or _role(draft, scene, amounts)
            told[draft.main] = draft.fields["role"]
            if draft.fields["quantity"] == "duration" and draft.fields["unit"] in DAYS and is_ordered(scene):
                draft.fields["subject"] = "parts"
    return drafts


def _of_pair(i: int, told: dict[int, str], scene: Scene) -> str:
    """`Want 52/50`, `reset 18/36`: what one of two with a stroke between is for, the other is for."""
    stroke = i > 1 and scene.text[scene.tokens[i - 1].start : scene.tokens[i - 1].end] == "/"
    return told.get(i - 2, "") if stroke else ""


def _role(draft: Draft, scene: Scene, amounts: frozenset[int]) -> str:
    quantity = draft.fields["quantity"]
    if quantity in PUT_OFF and _is_put_off(draft.main, scene):
        return "planned"
    if crossed(draft.main, scene):
        return "rated"
    if from_book(draft.main, scene, amounts):
        return "specified"
    if quantity == "duration":
        return role_of_time(draft, scene)
    if came_of_turning(draft, scene):
        return "set"
    if is_rated(draft, scene):
        return "rated"
    if quantity == "thread":
        return "measured"
    if quantity == "volume":
        return role_of_fluid(draft, scene)
    if _by_its_kind(draft, scene, quantity) or (quantity in SETTABLE and brought_to(draft.main, scene)):
        return "set"
    if quantity == "turns" and _counted(draft.main, scene):
        return "measured"
    if quantity == "torque" and _under_a_duty(draft.main, scene):
        return "planned"
    by_nature = quantity in SET_BY_NATURE and not _as_found(draft.main, scene)
    if by_nature or was_set(draft.main, scene, amounts, quantity):
        return "set"
    if quantity == "ratio" and draft.thing is not None and draft.thing.kind == "fluid":
        return "set"
    topic = scene.context.topic
    going_on = topic is not None and topic.quantity == quantity and topic.role == "set"
    if going_on and not (_read_off(draft.main, scene) or _as_it_was(draft, scene)):
        return "set"
    planned = "plan" in scene.tokens[draft.main].stances
    if planned and (quantity == "temperature" or (quantity in MADE_TO and _to_be_made(draft.main, scene))):
        return "planned"
    return "measured"


def _by_its_kind(draft: Draft, scene: Scene, quantity: str) -> bool:
    """Whether a figure of this quantity is set where it stands: a charger's amps, a bath's heat, a new plug's gap."""
    if quantity in ("temperature", "current"):
        return _of_a_device(draft, scene) or _in_a_bath(draft, scene) or _heated_to(draft, scene)
    if quantity == "gap":
        return _as_fitted(draft.main, scene)
    return quantity == "voltage" and is_test_voltage(draft.main, scene)


PUT_OFF = frozenset({"torque", "gap", "turns", "angle"})


def _is_put_off(i: int, scene: Scene) -> bool:
    """`That wants torquing to sixty tomorrow`, `I'll set it to fifteen when it's back together`, `to do: gap 0.4`."""
    first = max((k for k in range(i) if scene.tokens[k].kind == "stop"), default=-1) + 1
    before, after = scene.tokens[first:i], scene.tokens[i + 1 : i + 6]
    if before and before[0].low == "to do":
        return True
    owed = [k for k, t in enumerate(before) if t.sense("must", "want", "plan")]
    if not owed or not any(t.sense("do", "doing", "setto") for t in before[owed[0] :]):
        return False
    return any(t.sense("later") for t in (*before, *after)) or any(t.sense("meanwhile") for t in after[:2])


def _under_a_duty(i: int, scene: Scene) -> bool:
    """`The nuts have to be gone over hot, a hundred and ten foot pounds`: nothing was pulled to that yet."""
    first = max((k for k in range(i) if scene.tokens[k].kind == "stop"), default=-1) + 1
    before = scene.tokens[first:i]
    owed = [k for k, t in enumerate(before) if t.low.startswith(DUTIES)]
    if not owed or any(t.sense("copula", "book", "reads") for t in before[-2:]):
        return False
    done = before[owed[0] + PASSIVE :]
    return not any(s.cls == "did" and "plan" not in t.stances for t in done for s in t.senses)


DUTIES = ("have to", "has to", "need", "must", "gotta be", "still to", "will have", "remember to", "wants to be")
PASSIVE = 4
"Tokens behind a duty in which stands what is to be done: `have to be gone over`."


def _as_found(i: int, scene: Scene) -> bool:
    amount = scene.tokens[i].amount
    turned = amount is not None and amount.unit == "turn"
    if i and scene.tokens[i - 1].low in GAVE_WAY:
        return True
    first = max(0, i - TURNED) if turned else max(scene.clause(i).start, i - 3)
    near = scene.tokens[first:i]
    if any(t.low.rpartition(" ")[2] in PULLED for t in scene.tokens[max(0, i - 4) : i]):
        return False  # `the last pull was sixty`, `they've all had sixty`
    if left_so(i, scene) or (turned and any(t.low.rpartition(" ")[2] in SLACK for t in near)):
        return True
    if turned and any(s.cls == "did" for t in near for s in t.senses):
        return False
    whose = scene.tokens[scene.clause(i).start : i] if turned else []
    return any(t.low in FOUND for t in near) or any(t.low in scene.book.owed["somebody"] for t in whose)


SLACK = frozenset("backlash play slack slop lash motion".split())
"`Half a turn of backlash`: nobody sets it so, unless he says so."


def _counted(i: int, scene: Scene) -> bool:
    """`Wind it in and count. One and a half turns.`: so it was found."""
    return bool(COUNTS & set(scene.context.said.lower().strip(" .").split())) and not scene.clause(i).start


COUNTS = frozenset({"count", "counted", "counting"})
GAVE_WAY = frozenset("got to|let go at|gave at|broke at|slipped at|came undone at|undid at|sheared at".split("|"))
PULLED = frozenset("pull pulls stage go pass click all both theyve".split())
"`That one got to fifty-five and kept turning`: so far it came."


def _read_off(i: int, scene: Scene) -> bool:
    """`it reads`, `opens at`, `is`: a word of reading in the clause before the number."""
    return any(t.sense("reads", "copula", "pronoun") for t in scene.tokens[scene.clause(i).start : i])


def _as_it_was(draft: Draft, scene: Scene) -> bool:
    """`New one thirty thick, old 24`, `buffer worn to a quarter`: an old or a worn part was measured, by nobody set."""
    near = scene.tokens[max(scene.clause(draft.main).start, draft.main - 3) : draft.main + 2]
    return any(t.low.partition(" ")[0] in WORN or t.sense("bad") for t in near)


WORN = frozenset("old worn other wear original".split())


def _of_a_device(draft: Draft, scene: Scene) -> bool:
    """`On the charger at six amps`: what a device named in the clause was set to."""
    words = DEVICES & set(draft.fields["subject"].lower().split())
    near = scene.tokens[max(0, draft.main - TURNED) : draft.main]
    named = any(words & set(t.low.split()) for t in near) or any(t.low in ON_CHARGE for t in near)
    return bool(words) and named


def _to_be_made(i: int, scene: Scene) -> bool:
    """`I'll drill it out to eight mil`: to what something is still to be made."""
    before = scene.tokens[scene.clause(i).start : i]
    return (
        bool(before)
        and before[-1].low in ("to", "for")
        and any(s.cls in ("do", "doing") and s.name in ("make", "repair") for t in before for s in t.senses)
    )


MADE_TO = frozenset({"length", "gap", "thread"})


def _in_a_bath(draft: Draft, scene: Scene) -> bool:
    """`Into the ultrasonic it all goes, twenty minutes at a hundred and forty`, `jets in cleaner 15 min 50c`."""
    i, baths = draft.main, scene.book.lists["planned_baths"]
    near = scene.tokens[max(0, i - TURNED) : i]
    if draft.fields["quantity"] != "temperature" or any(t.sense("copula") for t in near):
        return False
    if not any(t.amount is not None and "duration" in t.amount.quantities for t in near[-4:]):
        return False
    words = {w for t in near for w in t.low.split()} | set(scene.context.said.lower().strip(". ").split())
    return bool(baths & words)


def _heated_to(draft: Draft, scene: Scene) -> bool:
    """`Warmed the hub to 120c`, `baked at 90c 4 hrs`; what `warmed up` warmed by itself."""
    i = draft.main
    if draft.fields["quantity"] != "temperature":
        return False
    before = scene.tokens[max(scene.clause(i).start, i - TURNED) : i]
    heated = [t for t in before if t.low.split()[0] in scene.book.lists["heats"]]
    itself = any("up" in t.low.split() or t.sense("copula") for t in before)
    machine = draft.thing is not None and draft.thing.kind in ("machine", "fluid") and draft.thing.name != "oven"
    return bool(heated) and not itself and not machine


def _as_fitted(i: int, scene: Scene) -> bool:
    """`New plugs, thirty thou, both`: at what a new part was fitted."""
    before = scene.tokens[max(scene.clause(i).start, i - 6) : i]
    told = any(t.sense("reads", "copula", "book", "want", "must") and t.low != "at" for t in before)
    return not told and any(t.sense("new") for t in before)
