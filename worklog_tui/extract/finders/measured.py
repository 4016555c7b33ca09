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
    before = [k for k in scene.things(span) if k < i and fits(scene.tokens[k].thing)]  # type: ignore[arg-type]
    if before:
        return before[-1]
    for k in range(i + 1, min(i + 4, span.stop)):
        token = scene.tokens[k]
        if token.thing is not None:
            joined = all(t.sense("article", "all") for t in scene.tokens[i + 1 : k]) or any(
                t.low in JOINING for t in scene.tokens[i + 1 : k]
            )
            return k if joined and fits(token.thing) else None
        if token.kind in ("comma", "amount", "number"):
            return None
    return None


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
    return thing.kind not in ("tool", "unknown", "fastener") and thing.system != "instruments and gauges"
