"""Units carried over: in `thirty mil, and it should be twelve` the twelve are millimetres too."""

from __future__ import annotations

from worklog_tui.extract.amounts import Amount
from worklog_tui.extract.scene import Scene
from worklog_tui.extract.tokens import Token
from worklog_tui.rulebook.quantities import Bare

THOU = frozenset({"thou", "thousandth", "thousandths"})
NEAREST, FARTHEST = 0.15, 7.0
"How many times the value before a bare number may be."
ENDS = frozenset(
    ("and to at on in by so now when with or but again before after then is instead cold hot all both").split()
)


def scale_of(amount: Amount) -> float:
    """What a bare number beside this amount is multiplied by."""
    return 0.001 if amount.said in THOU else 1.0


def carried(scene: Scene, i: int, name: str) -> Bare | None:
    """How a quantity takes the bare number at token i by the amount said last: of this sentence, else of the running
    test.
    """
    value = scene.tokens[i].value or 0.0
    before = next(
        (t.amount for t in reversed(scene.tokens[:i]) if t.amount is not None and name in t.amount.quantities), None
    )
    if before is not None:
        return _like(value, before.unit, scale_of(before), before.low)
    topic = scene.context.topic
    if topic is not None and topic.quantity == name and topic.unit and topic.value:
        return _like(value, topic.unit, topic.scale, topic.value)
    return None


def _like(value: float, unit: str, scale: float, last: float) -> Bare | None:
    if last and NEAREST <= value * scale / last <= FARTHEST:
        return Bare(unit, value, value, scale)
    return None


def stands_free(tokens: list[Token], i: int) -> bool:
    """Whether the number counts nothing: it ends its clause, or a small word or a state of the test follows."""
    if i + 1 >= len(tokens):
        return True
    after = tokens[i + 1]
    if after.kind in ("stop", "comma", "number", "amount"):
        return True
    if after.thing is not None and after.thing.kind == "quality":
        return True
    return after.low in ENDS or bool(after.sense("how", "good", "bad", "degree", "copula", "break", "pronoun"))


NAMED = frozenset(
    "number no hole position pos notch gear ends ending model serial page size setting step slot channel part chapter "
    "year series type class grade".split()
)
MONEY = frozenset(
    "quid dollar dollars bucks buck euro euros cents pence price cost costs paid pay cheap fiver tenner".split()
)


def names_or_prices(tokens: list[Token], i: int) -> bool:
    """Whether the bare number is a name (`hole 4`, `part number ends four`) or a sum of money (`coils are forty`)."""
    before = [t.low for t in tokens[max(0, i - 2) : i]]
    if before and (before[-1] in NAMED or (before[-1].split()[-1:] and before[-1].split()[-1] in NAMED)):
        return True
    return any(t.low in MONEY for t in tokens[max(0, i - 14) : i + 14])
