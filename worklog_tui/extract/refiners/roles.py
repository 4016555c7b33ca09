"""What a reading is for: read off the machine, what it should be, what it was set to, still to come, or a part's
label.
"""

from __future__ import annotations

from worklog_tui.extract.finders.naming import is_test_voltage
from worklog_tui.extract.scene import Draft, Scene
from worklog_tui.extract.tokens import Token

REACH = 9
SET_ACTIONS = frozenset({"adjust", "tighten", "fill"})
LABELS = frozenset(
    {"voltage", "current", "length", "thread", "volume", "pressure", "temperature", "resistance", "mass"}
)
SET_BY_NATURE = frozenset({"torque", "turns"})
FOUND = frozenset("was were wz ws found count counted only is still reads read".split())


def refine(drafts: list[Draft], scene: Scene) -> list[Draft]:
    """Readings with their role, where the rule did not give one."""
    amounts = {d.main for d in drafts if d.kind == "reading"}
    for draft in drafts:
        if draft.kind == "reading" and not draft.fields["role"]:
            draft.fields["role"] = _role(draft, scene, amounts)
            if draft.fields["quantity"] == "duration" and _is_ordered(scene):
                draft.fields["subject"] = "parts"
    return drafts


def _role(draft: Draft, scene: Scene, amounts: set[int]) -> str:
    quantity = draft.fields["quantity"]
    if _from_book(draft.main, scene, amounts):
        return "specified"
    if quantity == "duration":
        return _of_time(draft, scene)
    if _is_label(draft, scene) or _is_a(draft, scene):
        return "rated"
    if _on_plate(draft.main, scene) or _after_plate(draft, scene) or _is_size(draft, scene):
        return "rated"
    if quantity == "voltage" and is_test_voltage(draft.main, scene):
        return "set"
    if _was_set(draft.main, scene, amounts) or (quantity in SET_BY_NATURE and not _as_found(draft.main, scene)):
        return "set"
    if quantity == "volume" and any(t.low in HOLDS for t in scene.tokens[scene.clause(draft.main).start : draft.main]):
        return "specified"
    if quantity == "volume" and _went_in(draft.main, scene):
        return "set"
    if quantity == "ratio" and draft.thing is not None and draft.thing.kind == "fluid":
        return "set"
    topic = scene.context.topic
    if topic is not None and topic.quantity == quantity and topic.role == "set" and not _read_off(draft.main, scene):
        return "set"
    return (
        "planned"
        if "plan" in scene.tokens[draft.main].stances and quantity in ("temperature", "volume")
        else "measured"
    )


def _from_book(i: int, scene: Scene, amounts: set[int]) -> bool:
    """Whether a word of the book governs the number: before it with no other number between, or after the last one."""
    tokens = scene.tokens
    for k in range(i - 1, max(i - 1 - REACH, -1), -1):
        if tokens[k].kind == "stop":
            break
        if tokens[k].sense("book") and tokens[k].clause >= tokens[i].clause - 1:
            return True
        if k in amounts and not _listed(k, i, scene):
            break
        if tokens[k].sense("break"):
            break
    for k in range(i + 1, min(i + 1 + REACH, len(tokens))):
        if (
            tokens[k].kind == "stop"
            or tokens[k].clause != tokens[i].clause
            or tokens[k].low.startswith(("you", "they"))
        ):
            break
        if tokens[k].sense("book"):
            return not any(n > k and n < k + REACH and tokens[n].clause == tokens[k].clause for n in amounts)
    return False


def _listed(k: int, i: int, scene: Scene) -> bool:
    """`two inlet, four exhaust`: numbers of one list share what governs the first."""
    between = scene.tokens[k + 1 : i]
    return len(between) <= 4 and not any(t.sense("reads", "copula", "did") for t in between)


def _on_plate(i: int, scene: Scene) -> bool:
    """`the plate gives 22 amps`, `stamped 82`, `marked 415 volt`."""
    first = next((k for k in range(i - 1, -1, -1) if scene.tokens[k].kind == "stop"), -1)
    for k in range(max(first + 1, i - 14), i):
        token = scene.tokens[k]
        if token.sense("plate") or (
            token.thing is not None and token.thing.words.lower().endswith(("plate", "badge", "tag", "label"))
        ):
            return True
    return False


def _after_plate(draft: Draft, scene: Scene) -> bool:
    """Numbers told without a verb in the notes after `Motor plate.` are still read off it."""
    if draft.fields["quantity"] not in PLATE or any(t.sense("reads", "copula", "did", "setto") for t in scene.tokens):
        return False
    return any(s.name == "name plate" and s.age <= 1 for s in scene.context.things[:3])


PLATE = LABELS | {"speed"}
HOLDS = frozenset("holds takes capacity capacity's".split())
LOSSES = frozenset("drop loss difference rise step gap lag range spread leak".split())


def _is_a(draft: Draft, scene: Scene) -> bool:
    """`the stat's a one eighty`, `a 75 psi`: an article before a number of more than one names the size of a part."""
    i = draft.main
    token = scene.tokens[i]
    if draft.fields["quantity"] not in BOUGHT_BY - {"length"} or not i or scene.tokens[i - 1].low not in ("a", "an"):
        return False
    after = scene.tokens[i + 1] if i + 1 < len(scene.tokens) else None
    if after is not None and (after.low in LOSSES or (after.thing is not None and after.thing.kind == "quality")):
        return False
    low = token.amount.low if token.amount else token.value or 0.0
    return low > 1 and draft.thing is not None and "subject" not in draft.filled


BOUGHT_BY = LABELS - {"volume", "resistance", "mass"}
SOLD = frozenset("kit spare borrowed replacement bought size sized order ordered came genuine".split())
CUT_TO_SIZE = frozenset("hose rope wire cable belt pipe tube tubing bearing seal capacitor fuse bulb chain".split())
"What is bought by its size (common practice)."


def _says_bought(token: Token) -> bool:
    """`new`, `need`, `ordered`, `kit`: a word of what is bought, alone or in the name of a thing."""
    if token.low in SOLD or token.sense("new", "want"):
        return True
    if any(s.cls == "did" and s.name == "order" for s in token.senses):
        return True
    return token.thing is not None and bool((SOLD | {"new"}) & set(token.low.split()))


def _is_size(draft: Draft, scene: Scene) -> bool:
    """`new relief valve, 200 psi`, `top hose, inch and a half`: the size or label of what is bought or in the hand."""
    if draft.fields["quantity"] not in BOUGHT_BY or draft.thing is None or scene.tokens[draft.main].kind == "number":
        return False
    span = scene.clause(draft.main)
    if any(scene.tokens[k].sense("reads", "copula", "setto", "how") for k in range(span.start, draft.main)):
        return False
    before = scene.tokens[max(span.start - 6, 0) : draft.main]
    if any(_says_bought(token) for token in before):
        return "subject" not in draft.filled
    at = draft.thing_at
    if draft.fields["quantity"] != "length" or at is None or not CUT_TO_SIZE & set(scene.tokens[at].low.split()[-1:]):
        return False
    return all(t.kind == "comma" or t.sense("article") for t in scene.tokens[at + 1 : draft.main])


def _as_found(i: int, scene: Scene) -> bool:
    return any(t.low in FOUND for t in scene.tokens[max(scene.clause(i).start, i - 3) : i])


def _read_off(i: int, scene: Scene) -> bool:
    """`it reads`, `opens at`, `is`: a word of reading in the clause before the number."""
    return any(t.sense("reads", "copula", "pronoun") for t in scene.tokens[scene.clause(i).start : i])


def _went_in(i: int, scene: Scene) -> bool:
    """`1 litre in`, `fresh petrol 1 litre`: a fluid that was put in, not let out."""
    span = scene.clause(i)
    after = [t.low for t in scene.tokens[i + 1 : min(i + 4, span.stop)]]
    return "in" in after or any(scene.tokens[k].sense("new") for k in range(span.start, i))


BATHS = frozenset(
    "dip soak bath cleaner ultrasonic ultra oven freezer lamp charger charge vinegar ultrasnc acid rust solvent".split()
)


def _is_ordered(scene: Scene) -> bool:
    return any(s.name == "order" for t in scene.tokens for s in t.senses if s.cls in ("did", "doing"))


def _of_time(draft: Draft, scene: Scene) -> str:
    stances = scene.tokens[draft.main].stances
    span = scene.clause(draft.main)
    before = scene.tokens[span.start : draft.main]
    if any(t.sense("did") or t.low in ("had", "took", "been", "ran", "after", "later", "was") for t in before):
        return "measured"
    if _is_ordered(scene) or any(
        (t.thing is not None and t.thing.kind == "tool") or BATHS & set(t.low.split()) for t in before
    ):
        return "planned"
    return (
        "planned"
        if "plan" in stances or any(t.low in ("give", "leave", "let", "wait", "another") for t in before)
        else "measured"
    )


def _is_label(draft: Draft, scene: Scene) -> bool:
    """`a 12 volt battery`, `8 mm bolts`: the amount stands right before the name of a part."""
    after = draft.main + 1
    if draft.fields["quantity"] not in LABELS or after >= len(scene.tokens):
        return False
    token = scene.tokens[after]
    said = scene.said(draft.main, draft.last).lower()
    if said.endswith((" volt", " amp")) and not said.startswith(("one ", "a ")):
        return True
    return (
        token.kind == "thing" and token.thing is not None and token.thing.kind not in ("quality", "fluid")
        and draft.thing_at == after
    )  # fmt: skip


def _was_set(i: int, scene: Scene, amounts: set[int]) -> bool:
    tokens = scene.tokens
    for k in range(i - 1, max(i - 1 - REACH, -1), -1):
        if tokens[k].kind == "stop" or k in amounts or tokens[k].sense("break"):
            return False
        if any(s.cls in ("did", "doing", "does", "do") and s.name in SET_ACTIONS for s in tokens[k].senses):
            return True
        if tokens[k].sense("setto"):
            return True
        if tokens[k].sense("reads") and tokens[k].low not in ("at", "now", "is", "was", "are", "up to", "down to"):
            return False
    return False
