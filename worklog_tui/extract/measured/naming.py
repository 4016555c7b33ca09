"""The subject of a reading in words: the thing with its number or side, or what the quantity is usually of."""

from __future__ import annotations

from worklog_tui.extract.matching import Match
from worklog_tui.extract.measured.durations import of_time
from worklog_tui.extract.measured.habits import habit
from worklog_tui.extract.measured.plates import of_plate
from worklog_tui.extract.measured.switching import switch_point
from worklog_tui.extract.measured.times import of_running
from worklog_tui.extract.measured.valves import may_be_valve, valve_at
from worklog_tui.extract.scene import Draft, Scene
from worklog_tui.extract.things.side_words import AXES, SIDES
from worklog_tui.extract.things.subjects import side_behind, sides_from, stands_alone, which_at, with_which
from worklog_tui.extract.tokens import Thing
from worklog_tui.model import Reading


def subject_words(made: Draft, match: Match, scene: Scene, quantity: str) -> str:
    """The subject in the speaker's words, with which one it is; sets the draft's thing where another one is meant."""
    said = None if side_behind(scene, made.main) else match.slots.get("which")
    which, k = (_slot(scene, said), said) if said is not None else which_at(scene, made.main)
    which = "" if which in ("in", "ex") and quantity != "gap" else ENDS_OWNED.get(which, which)
    thing, topic = made.thing, scene.context.topic
    filled = "subject" in made.filled
    going_on = topic is not None and topic.quantity == quantity
    going_on = going_on and not _of_the_book(scene, made.main) and not _of_others(scene, made.main, OTHERS)
    if filled and not which and going_on:
        which = (thing.which if thing is not None else "") or _said_last(scene, made.main) or scene.context.which
        which = which if quantity in TOLD_APART and not (which.isdigit() and _only_one(thing)) else ""
    if filled and not which and thing is not None and _another_of(said_last := _said_last(scene, made.main), thing):
        which = said_last  # `left front lining, nearly new. Right front is, oh, a sixteenth`
    newer = bool(which) and (made.thing_at is None or k > made.thing_at)
    which = VALVE_OF[which] if which in VALVE_OF and quantity == "gap" and _of_valves(thing) else which
    usual = (
        _compression(made, scene, which, newer) if quantity == "compression" else _usual(made, scene, quantity, which)
    )
    if usual:
        return usual
    if filled and topic and topic.quantity == quantity and topic.words and thing is None:
        return with_which(topic.words, which)
    if thing is None:
        return f"cylinder {which}" if which.isdigit() else which
    if thing.which and newer and thing.words.endswith(" " + thing.which):
        return with_which(one_of_them(thing).removesuffix(" " + thing.which), which)
    return thing.words if not which or (thing.which and not newer) else with_which(one_of_them(thing), which)


def _only_one(thing: Thing | None) -> bool:
    """Whether there is but one: the oil pressure is of no cylinder."""
    return thing is not None and thing.kind in ("quality", "fluid") and thing.name.split()[0] in ("oil", "water")


def one_of_them(thing: Thing) -> str:
    """The words of a thing as of one of them: `Plugs` told by `left` is the left plug."""
    words = thing.words.removeprefix("and ")
    words = words[:1].lower() + words[1:] if words[1:2].islower() else words
    many = words.endswith("s") and not words.endswith("ss") and thing.name and not thing.name.endswith("s")
    return words[:-1] if many and thing.name != "valve" else words  # `inlet` is said of all of them


def _another_of(which: str, thing: Thing) -> bool:
    """Whether a side tells another one of what the thing is one of: `right front`, of a left front lining."""
    sides = set(which.lower().split())
    return bool(sides) and any(sides & axis and set(thing.words.lower().split()) & axis - sides for axis in AXES)


def _slot(scene: Scene, k: int) -> str:
    """Which one a marker in a rule's slot names; sides that stand together are told together: `left front 22`."""
    return scene.tokens[k].which or sides_from(scene, k)[0] or scene.tokens[k].low


def _compression(made: Draft, scene: Scene, which: str, newer: bool) -> str:
    """Compression is of a cylinder, or of all of them."""
    thing = made.thing
    if which.isdigit() and (newer or thing is None or thing.per != "cylinder"):
        return f"cylinder {which}"
    if thing is not None and thing.kind == "quality" and thing.which.lower() in ENDS_OF_ENGINE and not newer:
        return f"{thing.which.lower()} cylinder"
    if which in ENDS_OF_ENGINE and (thing is None or thing.per != "cylinder" or thing.kind == "quality"):
        return f"{which} cylinder"
    if thing is not None and thing.kind == "quality" and thing.which.isdigit() and not which:
        return f"cylinder {thing.which}"
    if which:
        return ""
    if scene.machine.cylinders == 1:
        return "cylinder 1"
    if thing is not None and thing.per == "cylinder" and thing.kind == "part":
        return thing.words
    return _cylinder_told(made, scene) or "all cylinders"


def _cylinder_told(made: Draft, scene: Scene) -> str:
    """The cylinder that the last value of a running test was told of, in this note or the two before: what is read
    next is of it too, where no word tells another one, or all of them, and the book is not quoted.
    """
    booked = _of_the_book(scene, made.main) or made.rule.gives.get("role") == "specified"
    if booked or _of_others(scene, made.main, OTHERS | NEXT):
        return ""
    older = set(scene.context.notes[:-2])
    told = (f for f in reversed(scene.context.recent) if isinstance(f, Reading) and f.main.note not in older)
    last = next((f.subject for f in told if f.quantity == "compression" and f.role == "measured"), "")
    return last if last.startswith("cylinder ") else ""


def _of_others(scene: Scene, i: int, words: frozenset[str]) -> bool:
    """Whether the clause up to the number tells of others than the last one, or of all of them."""
    return any(not words.isdisjoint(t.low.split()) for t in scene.tokens[scene.clause(i).start : i])


OTHERS = frozenset("all both each every others rest".split())
NEXT = frozenset("first next last other four six they them".split())
"Words that no more go on with the cylinder that was told last."


def _usual(made: Draft, scene: Scene, quantity: str, which: str) -> str:
    """What a quantity is usually of, where the words name something else or nothing; empty when it may be anything."""
    thing = made.thing
    side = which.lower().split()[-1] if which else ""
    if quantity == "gap" and may_be_valve(thing) and (found := valve_at(scene, made.main)) is not None:
        made.thing, made.thing_at = Thing(found[0], "valve", "part", quantities=("gap",)), None
        made.filled.discard("subject")
        return found[0]
    rocker = "subject" in made.filled and thing is not None and thing.name == "rocker"  # its cover was taken off
    if quantity == "gap" and side in VALVES and (rocker or not _of_valves(thing)):
        words = " ".join((*which.split()[:-1], VALVES[side]))
        made.thing, made.thing_at = Thing(words, VALVES[side].removesuffix("s"), "part"), None
        made.filled.discard("subject")
        return words
    if quantity == "pressure" and (switching := switch_point(scene, made.main)):
        made.thing, made.thing_at = None, None
        made.filled.discard("subject")
        return switching
    mere_test = thing is None or thing.kind == "quality" or "leak" in thing.words.lower()
    if quantity == "leakage" and which.isdigit() and mere_test:
        return f"cylinder {which}"
    if quantity in OF_ONE_THING and (thing is None or thing.name not in OF_ONE_THING[quantity]):
        return f"cell {which}" if quantity == "density" and which.isdigit() else OF_ONE_THING[quantity][0]
    if quantity == "voltage" and is_test_voltage(made.main, scene):
        made.filled.discard("subject")
        return "insulation test"
    amount = scene.tokens[made.main].amount
    if amount is not None and amount.unit == "Hz" and (thing is None or thing.kind in ("machine", "unknown")):
        return "frequency"
    if words := of_plate(made, scene, quantity):
        return words
    if words := habit(made, scene, quantity):
        made.filled.discard("subject") if which else None
        return with_which(words, which)
    if quantity == "duration" and (words := of_time(made, scene)):
        return words
    if of_running(made, scene, quantity):
        made.thing, made.thing_at = scene.engine(), None
        made.filled.add("subject")
        return made.thing.words
    return ""


def _of_valves(thing: Thing | None) -> bool:
    """Whether a thing is a valve or what opens it; a rocker cover is none."""
    if thing is None or "cover" in thing.name:
        return False
    return any(word in thing.name for word in ("valve", "tappet", "rocker", "lash"))


def only_names_the_test(thing: Thing, scene: Scene) -> bool:
    """`gap`, `volts`: a word for the quantity alone, not for what it is of."""
    return thing.kind == "quality" and " " not in (thing.own or thing.name) and thing.name in scene.book.topics


def _said_last(scene: Scene, i: int) -> str:
    """The marker of which one that was said last in this sentence before token i."""
    for k in reversed(scene.once(("told apart",), lambda: _told_apart(scene))):
        token = scene.tokens[k]
        if k >= i:
            continue
        if token.kind == "which":
            return token.which
        if token.sense("side") and token.low in SIDES and stands_alone(scene, k):
            return sides_from(scene, k)[0]
        if token.thing is not None and token.thing.which:
            return token.thing.which
    return ""


def _told_apart(scene: Scene) -> list[int]:
    """The tokens that may say which one."""
    return [
        k for k, t in enumerate(scene.tokens)
        if t.kind == "which" or "side" in t.classes or (t.thing is not None and t.thing.which)
    ]  # fmt: skip


def _of_the_book(scene: Scene, i: int) -> bool:
    """What the book says is of all of them, not of the one that was measured last."""
    return any(t.sense("book") for t in scene.tokens[scene.clause(i).start : i])


TOLD_APART = frozenset("compression gap pressure resistance angle turns volume temperature voltage density".split())
"Quantities that are taken of one after another of several."
TEST_VOLTS = frozenset({250.0, 500.0, 1000.0})
"Volts of an insulation tester (IEC 61557-2, from memory)."


def is_test_voltage(i: int, scene: Scene) -> bool:
    """`insulation at five hundred volts`: what the tester was set to."""
    amount = scene.tokens[i].amount
    if amount is None or amount.unit != "V" or amount.low not in TEST_VOLTS:
        return False
    near = scene.tokens[max(0, i - 10) : i + 10]
    return any(t.low in TESTED for t in near) or any(
        word in t.low for t in near for word in ("insul", "megger", "frame", "earth test", "meg test")
    )


TESTED = frozenset({"ins", "insn", "ir", "megged"})
"What shorthand calls such a test."
VALVE_OF = {"in": "inlet", "ex": "exhaust"}
VALVES = {
    "in": "inlet valve", "inlet": "inlet valve", "intake": "intake valve", "inlets": "inlet valves",
    "ex": "exhaust valve", "intakes": "intake valves", "exhaust": "exhaust valve", "exhausts": "exhaust valves",
}  # fmt: skip


OF_ONE_THING = {
    "run_time": ("hour meter",), "density": ("battery", "cell", "coolant", "fuel", "battery cell", "traction battery"),
}  # fmt: skip
"What a quantity is of, whatever else was named; the first is the usual one (common practice)."
ENDS_OWNED = {"fronts": "front", "backs": "back", "rears": "rear", "lefts": "left"}
"`Front's ninety, back's eighty-four`: the end with its verb."
ENDS_OF_ENGINE = frozenset("left right left-hand right-hand lh rh front rear back nearside offside".split())
