"""What a number can be of: the nearest thing of its clause that has a measure."""

from __future__ import annotations

from worklog_tui.extract.measured.aimed import aimed_at, pointed
from worklog_tui.extract.scene import Scene
from worklog_tui.extract.things.subjects import Fits
from worklog_tui.extract.tokens import Thing


def nearest_measured(scene: Scene, i: int, fits: Fits) -> int | None:
    """The nearest thing before the number in its clause; one after it only where a word joins them or they stand
    together.
    """
    span = scene.clause(i)
    if _describes_next(scene, i):
        return i + 1
    if (owner := _of_which(scene, i)) is not None:
        return owner
    if not _is_time(scene, i) and (aimed := aimed_at(scene, i)) is not None:
        return aimed
    if (turned := _turned_on(scene, i)) is not None:
        return turned
    if (filled := _brings_up(scene, i)) is not None:
        return filled
    if (worn := _quality_of(scene, i, fits)) is not None:
        return worn
    last, torque = None, is_torque(scene, i)
    for k in reversed(scene.things(range(span.start, i))):
        if not fits(pointed(scene.tokens[k].thing)) or (not torque and put_away(scene, k)):  # type: ignore[arg-type]
            continue
        if not _aside(scene, k) and not _where(scene, k, i):
            return k
        last = k if last is None else last
    return last if last is not None else _joined(scene, i, fits)


def _is_time(scene: Scene, i: int) -> bool:
    amount = scene.tokens[i].amount
    return amount is not None and "duration" in amount.quantities


def is_torque(scene: Scene, i: int) -> bool:
    """`Head on, new rings, eighteen newton metres`: what was put on is what is tightened."""
    amount = scene.tokens[i].amount
    return amount is not None and amount.quantities[0] == "torque"


def put_away(scene: Scene, k: int) -> bool:
    """`Cap on, six and a half litres`: what was put back or taken off is not what the number behind it is of."""
    after = scene.tokens[k + 1 : k + 3]
    return len(after) == 2 and after[0].low in AWAY and after[1].kind in ("comma", "stop")


AWAY = frozenset({"on", "off", "out", "back", "back on", "back in", "in", "apart"})


def _turned_on(scene: Scene, i: int) -> int | None:
    """`Two turns off the differential nut`, `half a turn in on the idle screw`: the adjuster behind the turns."""
    amount = scene.tokens[i].amount
    if amount is None or amount.unit != "turn":
        return None
    for k in range(i + 1, min(i + 6, len(scene.tokens))):
        token = scene.tokens[k]
        if token.thing is not None:
            fits = token.thing.kind not in ("quality", "fluid", "tool", "machine")
            return k if fits and _low(scene, i + 1) in TURNED and _led_by(scene, i, k) else None
        if not (_low(scene, k) in TURNED or token.sense("article", "side")):
            return None
    return None


def _brings_up(scene: Scene, i: int) -> int | None:
    """`Three litres to bring the oil up to the mark`: the fluid behind the amount that went in."""
    amount, after = scene.tokens[i].amount, scene.tokens[i + 1 : i + 3]
    if amount is None or "volume" not in amount.quantities or [t.low for t in after[:1]] != ["to"]:
        return None
    behind = range(i + 2, min(i + 7, len(scene.tokens)))
    return next((k for k in behind if (t := scene.tokens[k].thing) is not None and t.kind == "fluid"), None)


TURNED = frozenset("off on of out in back from up down more to".split())


def _quality_of(scene: Scene, i: int, fits: Fits) -> int | None:
    """`thirty thou of wear on the ring`: of the part behind the word that says what was measured."""
    k = i + 1
    if scene.tokens[i].amount is None or k + 3 >= len(scene.tokens) or scene.tokens[k].low not in ("of", "end", "side"):
        return None
    quality = scene.tokens[k + 1]
    if not (quality.thing is not None and quality.thing.kind == "quality") and quality.low not in QUALITIES:
        return None
    if scene.tokens[k + 2].low not in ("on", "in", "at"):
        return None
    k += 3
    while k < len(scene.tokens) - 1 and scene.tokens[k].sense("article"):
        k += 1
    thing = scene.tokens[k].thing
    return k if thing is not None and measurable(thing) and _in_clause(scene, i, k) else None


QUALITIES = frozenset(
    ("wear play slop slack float lift run-out runout meat backlash shake lining clearance travel").split()
)


def _where(scene: Scene, k: int, i: int) -> bool:
    """`play at the rim`: a length or a gap is of what was named, not of the place where it was taken."""
    amount = scene.tokens[i].amount
    if amount is not None and amount.unit not in ("in", "mm", "um"):
        return False
    before = scene.tokens[k - 1].low if k else ""
    if before in ("the", "a", "my", "its") and k > 1:
        before = scene.tokens[k - 2].low
    return before in ("at", "in")


ASIDE = frozenset("to from under behind with by off over past near against into onto beside towards between".split())


def _aside(scene: Scene, k: int) -> bool:
    """`the distance of the electrode to the burner`: what a thing is measured from is not what is measured."""
    before = scene.tokens[k - 1].low if k else ""
    if before in ("the", "a", "my", "its") and k > 1:
        before = scene.tokens[k - 2].low
    return before in ASIDE


def joined_after(scene: Scene, i: int) -> int | None:
    """A thing behind the number that a word joins to it, whatever it is."""
    if _describes_next(scene, i):
        return i + 1
    owner = _of_which(scene, i)
    return owner if owner is not None else _joined(scene, i, measurable)


def _joined(scene: Scene, i: int, fits: Fits) -> int | None:
    """The thing behind the number that a word joins to it: `thirty-two in the rear tyre`, `two left on the pads`."""
    span = scene.clause(i)
    for k in range(i + 1, min(i + FAR_BEHIND, span.stop)):
        token = scene.tokens[k]
        if scene.opens_note(k) and k == i + 1:
            return None
        if token.thing is not None:
            between = scene.tokens[i + 1 : k]
            led = _led_by(scene, i, k)
            joined = all(t.sense("all") for t in between) or led
            near = k < i + 4 or (led and not any(t.sense("copula", "did", "good", "bad") for t in between))
            return k if joined and near and fits(token.thing) and not _begins_a_clause(scene, i, k) else None
        if token.kind in ("comma", "amount", "number") or token.low in ("and", "but", "so"):
            return None
    return None


FAR_BEHIND = 8


def _led_by(scene: Scene, i: int, k: int) -> bool:
    """Whether a word that joins stands before the thing at token k, small words passed over."""
    n = k - 1
    small = ("article", "all", "side", "new", "objectword")
    while n > i and scene.tokens[n].sense(*small) and _low(scene, n) not in JOINING:
        n -= 1
    return n > i and (_low(scene, n) in JOINING or (_low(scene, n) == "as" and _low(scene, n - 1) == "far"))


def _low(scene: Scene, k: int) -> str:
    """A token without the mark of a word that belongs to a verb before it."""
    return scene.tokens[k].low.removeprefix("\u2026")


def _of_which(scene: Scene, i: int) -> int | None:
    """`half a pint of water`, `ten thou of shim`, `twelve volts at the coil`: what the amount is said of."""
    amount = scene.tokens[i].amount
    if amount is None and scene.tokens[i].value is None:
        return None
    leads = {"of"} if amount is not None else set()
    volts = amount is not None and amount.quantities[0] == "voltage"
    tested = scene.context.topic is not None and scene.context.topic.quantity == "voltage"
    if volts or (amount is None and tested):
        leads |= {"across", "at", "on"}
    k = i + 1
    if k >= len(scene.tokens) or scene.tokens[k].low not in leads:
        return None
    k += 1
    while k < len(scene.tokens) and k < i + 4 and scene.tokens[k].sense("article", "new", "objectword"):
        k += 1
    thing = scene.tokens[k].thing if k < len(scene.tokens) else None
    if thing is None or thing.kind in ("quality", "machine", "unknown") or not _in_clause(scene, i, k):
        return None
    at_it = thing.kind == "fastener" and scene.tokens[i + 1].low != "of"  # `fourteen three at the stud`
    part = thing.kind not in ("tool", "fastener") and measurable(thing)
    return k if thing.kind == "fluid" or at_it or part else None


def _in_clause(scene: Scene, i: int, k: int) -> bool:
    return scene.tokens[k].clause == scene.tokens[i].clause


def _begins_a_clause(scene: Scene, i: int, k: int) -> bool:
    """`Five minutes, the stat's open`: a thing with a verb of its own is not what the number is of."""
    if k == i + 1 and scene.tokens[i].amount is not None:
        return False
    after = scene.tokens[k + 1] if k + 1 < len(scene.tokens) else None
    owns = scene.text[max(0, scene.tokens[k].end - 2) : scene.tokens[k].end] in ("'s", "\u2019s")
    return owns or (
        after is not None and bool(after.sense("copula", "did", "does")) and scene.tokens[k - 1].low != "both"
    )


HELD = frozenset({"torque", "thread", "turns"})
"Quantities of fasteners."
ADJECTIVES = (
    " volt", " amp", " inch", " foot", " litre", " gallon", " watt", " millimeter", " millimetre", " mil",
    "-inch", "-volt", "-amp",
)  # fmt: skip


def _describes_next(scene: Scene, i: int) -> bool:
    """`a forty-one inch belt`, `the six volt coil`: a unit in the singular right before a part belongs to its name."""
    if i + 1 >= len(scene.tokens) or scene.opens_note(i + 1):
        return False
    if scene.tokens[i].kind == "thread":
        after = scene.tokens[i + 1].thing
        return after is not None and after.kind not in ("quality", "fluid", "tool", "unknown")
    thing, amount = scene.tokens[i + 1].thing, scene.tokens[i].amount
    if thing is None or amount is None or thing.kind in ("quality", "fluid", "tool", "unknown"):
        return False
    return scene.said(i, i).lower().endswith(ADJECTIVES) and amount.low > 1


JOINING = frozenset("on of in for at across to from through between off into".split())


def measurable(thing: Thing) -> bool:
    """Whether a thing is measured at all: no tool, no instrument, no fastener, no unknown name."""
    if thing.kind in ("tool", "unknown", "fastener"):
        return False
    return thing.system != "instruments and gauges" or any(word in thing.name for word in SENSORS)


SENSORS = ("thermocouple", "probe", "sender", "sensor", "transmitter")
"Instruments that are measured themselves."
