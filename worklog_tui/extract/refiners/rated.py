"""Whether a number is the size or the label of a part: what stands on its plate, what it is bought by."""

from __future__ import annotations

from worklog_tui.extract.measured.counted import IT_IS
from worklog_tui.extract.measured.number_form import fraction
from worklog_tui.extract.measured.sizes import sized
from worklog_tui.extract.refiners.booked import MINE
from worklog_tui.extract.scene import Draft, Scene
from worklog_tui.extract.taken.marks import marks
from worklog_tui.extract.talk.carry import THOU
from worklog_tui.extract.tokens import Thing, Token

LABELS = frozenset({"voltage", "current", "length", "volume", "pressure", "temperature", "resistance", "mass"})
PLATE = LABELS | {"speed"}
LOSSES = frozenset("drop loss difference rise step gap lag range spread leak".split())
BOUGHT_BY = LABELS - {"volume", "resistance", "mass"}
SOLD = frozenset("kit spare borrowed replacement bought size sized order ordered came genuine sent".split())
CUT_TO_SIZE = frozenset("hose rope wire cable belt pipe tube tubing bearing seal capacitor fuse bulb chain".split())
"What is bought by its size (common practice)."
STORED = frozenset("drawer tin box bin bag shelf jar packet donor scrap".split())
TAKEN_ON_IT = ("defl", "slack", "play", "free", "give", "sag", "left", "wear", "worn", "too ", "short", "long")
"What stands behind a figure that was taken on a belt, and is no size of it."


def is_rated(draft: Draft, scene: Scene) -> bool:
    """Whether the number is a part's label, or the size that it is bought by."""
    if draft.fields["quantity"] == "thread":
        return _thread_in_hand(draft, scene)
    return (
        _is_label(draft, scene) or _is_a(draft, scene) or _on_plate(draft.main, scene) or _after_plate(draft, scene)
        or _is_size(draft, scene) or _is_capacity(draft, scene) or sized(draft.main, scene) != ""
    )  # fmt: skip


def _thread_in_hand(draft: Draft, scene: Scene) -> bool:
    """A thread on the machine is measured; the one of a part that is new, wanted or out of the drawer is its size."""
    span = scene.clause(draft.main)
    first = max(0, span.start - 6)
    near = scene.tokens[first : min(draft.main + 6, len(scene.tokens))]
    if any(STORED & set(t.low.split()) for t in near):
        return True
    return any(t.sense("new", "want") or SOLD & set(t.low.split()) for t in near if t.low not in ("real", "used"))


def _is_capacity(draft: Draft, scene: Scene) -> bool:
    """`half-inch capacity`: what the machine takes."""
    after = scene.tokens[draft.main + 1].low if draft.main + 1 < len(scene.tokens) else ""
    return draft.fields["quantity"] == "length" and after == "capacity"


def _on_plate(i: int, scene: Scene) -> bool:
    """`the plate gives 22 amps`, `stamped 82`, `marked 415 volt`."""
    behind = scene.tokens[i + 1] if i + 1 < len(scene.tokens) else None
    if behind is not None and behind.low in ("stamped", "marked", "rated"):
        return True
    if behind is not None and behind.sense("plate") and behind.low.startswith("on the "):
        return True
    first = next((k for k in range(i - 1, -1, -1) if scene.tokens[k].kind == "stop"), -1)
    for k in range(max(first + 1, i - PLATE_REACH), i):
        token = scene.tokens[k]
        if token.low.startswith("on the ") and k and scene.tokens[k - 1].kind in ("number", "amount"):
            return False  # `1500 on the plate and it went to 1750`
        if "plate" in token.classes or (token.thing is not None and _is_label_thing(token.thing)):
            return not _compared(scene, k, i)
    return False


def _is_label_thing(thing: Thing) -> bool:
    """`Motor plate`, `plate on the motor`; an inlet plate or a wear plate has no figures on it."""
    words = thing.own.lower() if thing.of is not None else thing.words.lower()
    before = words.removesuffix("plate").split()
    if words.endswith("plate") and before:
        return before[-1].removesuffix("'s") in PLATED
    return words.endswith(("plate", "badge", "tag", "label"))


PLATED = frozenset(
    "motor engine pump generator alternator dynamo compressor fan machine gearbox transformer welder heater blower "
    "starter winch hoist saw lathe mill drill press name data rating maker makers serial brass tin the".split()
)
"What has a plate with figures, and how such a plate is called."


PLATE_REACH = 26
"Tokens behind the word plate among which its figures stand."


def _compared(scene: Scene, k: int, i: int) -> bool:
    """`It is marked 270 and measures 171`, `the plate says four and I'm getting six`: what is read after the label is
    measured.
    """
    first = next((n for n in range(k + 1, i) if scene.tokens[n].kind in ("number", "amount")), i)
    if any(t.low in IT_IS or t.low in MINE or t.sense("person") for t in scene.tokens[first + 1 : i]):
        return True
    taken = [t.low for t in scene.tokens[k + 1 : i]]
    later = any(w in ("reads", "reading") for w in taken[1:])  # `plate reads 1440` is the plate's
    return later or any(w in ("measures", "measured", "tests", "mikes", "miked", "mikes at", "miked at") for w in taken)


def _is_row(scene: Scene) -> bool:
    """`Pump motor .75 kW 400 V 2 A 1410`: power and volts side by side, and no verb, stand on plates only."""
    units = {t.amount.unit for t in scene.tokens if t.amount is not None}
    return bool(units & POWER) and "V" in units


POWER = frozenset({"kW", "W", "hp"})


def _after_plate(draft: Draft, scene: Scene) -> bool:
    """Numbers told without a verb in the notes after `Motor plate.` are still read off it."""
    if draft.fields["quantity"] not in PLATE or any(t.sense("reads", "copula", "did", "setto") for t in scene.tokens):
        return False
    if scene.once(("row of a plate",), lambda: _is_row(scene)):
        return True
    if any(t.thing is not None and t.thing.system == "instruments and gauges" for t in scene.tokens):
        return False  # `clamp: 3.9a`
    if any(mark.slot in TAKEN_RUNNING and mark.value not in ON_PLATES for mark in marks(scene)):
        return False  # `2.1a off load, 3.4 with the clutch in`
    return any(s.name == "name plate" and s.age <= 1 for s in scene.context.things[:2])


TAKEN_RUNNING = frozenset({"load", "motion", "driven", "heat"})
ON_PLATES = frozenset({"full load", "in star", "in delta"})
"How a machine stands when its figures are taken, and of this what plates tell too (IEC 60034-1, from memory)."


def _is_a(draft: Draft, scene: Scene) -> bool:
    """`the stat's a one eighty`, `a 75 psi`: an article before a number of more than one names the size of a part."""
    i = draft.main
    token = scene.tokens[i]
    if draft.fields["quantity"] not in BOUGHT_BY or not i or scene.tokens[i - 1].low not in ("a", "an"):
        return False
    if draft.fields["quantity"] == "length" and not _of_a_size(i, scene):
        return False
    after = scene.tokens[i + 1] if i + 1 < len(scene.tokens) else None
    if after is not None and (after.low in LOSSES or (after.thing is not None and after.thing.kind == "quality")):
        return False
    low = token.amount.low if token.amount else token.value or 0.0
    return (low > 1 or draft.fields["quantity"] == "length") and draft.thing is not None


def _of_a_size(i: int, scene: Scene) -> bool:
    """`the kit is a one inch`: the article and a unit in the singular end the clause."""
    before = scene.tokens[i - 2] if i > 1 else None
    said = scene.said(i, i).lower()
    return before is not None and bool(before.sense("copula")) and said.endswith(("inch", "mil", "mm", "millimetre"))


def _says_bought(token: Token) -> bool:
    """`new`, `need`, `ordered`, `kit`: a word of what is bought, alone or in the name of a thing."""
    if token.low in SOLD or token.sense("new", "want"):
        return True
    if "did" in token.classes and any(s.cls == "did" and s.name == "order" for s in token.senses):
        return True
    return token.thing is not None and bool((SOLD | {"new"}) & set(token.low.split()))


def _is_size(draft: Draft, scene: Scene) -> bool:
    """`new relief valve, 200 psi`, `top hose, inch and a half`: the size or label of what is bought or in the hand."""
    amount = scene.tokens[draft.main].amount
    if amount is not None and amount.said in THOU and draft.fields["quantity"] == "length":
        return False  # nobody buys by the thou
    if draft.main and scene.tokens[draft.main - 1].low == "to":
        return False  # `cut the new shaft to two hundred`
    bare = scene.tokens[draft.main].kind == "number" and not fraction(scene.said(draft.main, draft.main))
    if draft.fields["quantity"] not in BOUGHT_BY or bare:
        return False
    span = scene.clause(draft.main)
    before = scene.tokens[max(span.start - 6, 0) : draft.main]
    bought = any(_says_bought(token) for token in before)
    if bought and any(t.low in ("one", "new one", "a new one") for t in before[-4:]) and _no_verb(draft.main, scene):
        return True  # `needs a new one, inch and a half`
    if draft.thing is None:
        return False
    if any(scene.tokens[k].sense("reads", "copula", "setto", "how") for k in range(span.start, draft.main)):
        return False
    if bought:
        return "subject" not in draft.filled
    at = draft.thing_at
    behind = scene.tokens[draft.main + 1].low if draft.main + 1 < len(scene.tokens) else ""
    if behind.startswith(TAKEN_ON_IT) or behind == "of":
        return False
    if draft.fields["quantity"] != "length" or at is None or not CUT_TO_SIZE & set(scene.tokens[at].low.split()[-1:]):
        return False
    return all(t.kind == "comma" or t.sense("article") for t in scene.tokens[at + 1 : draft.main])


def _is_meter(token: Token) -> bool:
    """Whether a token, or a colon behind it, is of an instrument."""
    return token.low in (":", "=") or (token.thing is not None and token.thing.system == "instruments and gauges")


def _no_verb(i: int, scene: Scene) -> bool:
    """Whether the number ends its clause."""
    return i + 1 >= len(scene.tokens) or scene.tokens[i + 1].kind in ("stop", "comma")


def _is_label(draft: Draft, scene: Scene) -> bool:
    """`a 12 volt battery`, `8 mm bolts`: the amount stands right before the name of a part."""
    after = draft.main + 1
    spoken = draft.fields["quantity"] == "speed" and draft.main > 0 and scene.tokens[draft.main - 1].low in ("a", "an")
    if not (draft.fields["quantity"] in LABELS or spoken) or after >= len(scene.tokens):
        return False
    token = scene.tokens[after]
    if scene.opens_note(after):
        return False  # `with the lamps on thirteen four / winch brake had`
    said = scene.said(draft.main, draft.last).lower()
    amount = scene.tokens[draft.main].amount
    if draft.main and _is_meter(scene.tokens[draft.main - 1]):
        return False  # `clamp: 3.9a motor`
    if said.endswith((" volt", " amp")) and amount is not None and amount.low > 1:
        return True
    return (
        token.kind == "thing" and token.thing is not None and token.thing.kind not in ("quality", "fluid")
        and draft.thing_at == after
    )  # fmt: skip
