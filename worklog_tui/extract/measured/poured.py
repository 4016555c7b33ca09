"""`Two hundred and fifty mil` of a fluid are millilitres."""

from __future__ import annotations

from worklog_tui.extract.numbers.amounts import Amount
from worklog_tui.extract.scene import Draft, Scene

LEAST, MOST = 4.0, 5000.0
VESSELS = frozenset("jar jug bottle cup can tin beaker syringe measuring".split())
POURED = frozenset("drained poured topped filled caught bled syringed squirted added sucked collected".split())
FLUID = frozenset("oil petrol fuel diesel gas coolant water fluid paraffin mix antifreeze atf".split())


def poured(amount: Amount, made: Draft, scene: Scene) -> bool:
    """Whether an amount in `mil` is of a fluid: one is named behind it, or it is caught, poured or timed."""
    if amount.said != "mil" or not LEAST <= amount.low <= MOST:
        return False
    span = scene.clause(made.main)
    after = scene.tokens[made.main + 1 : min(made.main + 4, span.stop)]
    words = {w for t in scene.tokens[max(0, span.start - 12) : span.stop] for w in t.low.split()}
    if any(FLUID & set(t.low.split()) for t in after):
        return True
    flows = bool(words & (VESSELS | POURED)) or "flow" in words or _flowing(scene)
    return flows and amount.low >= LEAST


def _flowing(scene: Scene) -> bool:
    """Whether fluid is being caught: it was named as a flow in the last notes."""
    return any("flow" in s.words.lower() and s.age <= 2 for s in scene.context.things[:4])


def spread_of(amount: Amount) -> float | tuple[float, float]:
    """The value, or both ends of its range."""
    return amount.low if amount.low == amount.high else (amount.low, amount.high)
