"""What a number can be of: the nearest thing of its clause that has a measure."""

from __future__ import annotations

from worklog_tui.extract.scene import Scene
from worklog_tui.extract.subjects import Fits
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
    before = [k for k in scene.things(span) if k < i and fits(scene.tokens[k].thing)]  # type: ignore[arg-type]
    if (worn := _quality_of(scene, i, fits)) is not None:
        return worn
    meant = [k for k in before if not _aside(scene, k) and not _where(scene, k, i)] or before
    return meant[-1] if meant else _joined(scene, i, fits)


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
    (
        "wear play slop slack float lift run-out runout meat backlash shake lining clearance travel"
    ).split()
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
    span = scene.clause(i)
    for k in range(i + 1, min(i + 4, span.stop)):
        token = scene.tokens[k]
        if token.thing is not None:
            joined = all(t.sense("all") for t in scene.tokens[i + 1 : k]) or any(
                t.low in JOINING for t in scene.tokens[i + 1 : k]
            )
            return k if joined and fits(token.thing) and not _begins_a_clause(scene, i, k) else None
        if token.kind in ("comma", "amount", "number"):
            return None
    return None


def _of_which(scene: Scene, i: int) -> int | None:
    """`half a pint of water`, `ten thou of shim`, `twelve volts at the coil`: what the amount is said of."""
    amount = scene.tokens[i].amount
    if amount is None and scene.tokens[i].value is None:
        return None
    leads = {"of"} if amount is not None else set()
    if amount is not None and amount.quantities[0] == "voltage":
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
    return k if thing.kind == "fluid" or (thing.kind not in ("tool", "fastener") and measurable(thing)) else None


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
    " volt",
    " amp",
    " inch",
    " foot",
    " litre",
    " gallon",
    " watt",
    " millimeter",
    " millimetre",
    " mil",
    "-inch",
    "-volt",
    "-amp",
)


def _describes_next(scene: Scene, i: int) -> bool:
    """`a forty-one inch belt`, `the six volt coil`: a unit in the singular right before a part belongs to its name."""
    if i + 1 >= len(scene.tokens):
        return False
    if scene.tokens[i].kind == "thread":
        after = scene.tokens[i + 1].thing
        return after is not None and after.kind not in ("quality", "fluid", "tool", "unknown")
    thing, amount = scene.tokens[i + 1].thing, scene.tokens[i].amount
    if thing is None or amount is None or thing.kind in ("quality", "fluid", "tool", "unknown"):
        return False
    return scene.said(i, i).lower().endswith(ADJECTIVES) and amount.low > 1


JOINING = frozenset("on of in for at across to from through between".split())


def measurable(thing: Thing) -> bool:
    """Whether a thing is measured at all: no tool, no instrument, no fastener, no unknown name."""
    if thing.kind in ("tool", "unknown", "fastener"):
        return False
    return thing.system != "instruments and gauges" or any(word in thing.name for word in SENSORS)


SENSORS = ("thermocouple", "probe", "sender", "sensor", "transmitter")
"Instruments that are measured themselves."
