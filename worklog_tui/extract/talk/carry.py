"""Units carried over: in `thirty mil, and it should be twelve` the twelve are millimetres too."""

from __future__ import annotations

from worklog_tui.extract.numbers.amounts import Amount
from worklog_tui.extract.scene import Scene
from worklog_tui.extract.things.sides import side_behind_at
from worklog_tui.extract.tokens import Token
from worklog_tui.model import Reading
from worklog_tui.rulebook.quantities import Bare

THOU = frozenset({"thou", "thousandth", "thousandths"})
BESIDE = frozenset({"duration", "angle"})
"Quantities that are told beside a test; what is running tells the next number, not they."
NEAREST, FARTHEST = 0.15, 7.0
"How many times the value before a bare number may be."
ENDS = frozenset(
    (
        "for and to at on in by so now when with without or but again before after then is instead cold hot all "
        "both each apart either per rather do okay ok right alright hm hmm yeah yes yep oh well there here "
        "thats that's it its it's i we you they what lovely good fine perfect spot dead bang exactly still "
        "same no"
    ).split()
)


def scale_of(amount: Amount) -> float:
    """What a bare number beside this amount is multiplied by."""
    return 0.001 if amount.said in THOU else 1.0


def carried(scene: Scene, i: int, name: str) -> Bare | None:
    """How a quantity takes the bare number at token i by the amount said last: of this sentence, else of the running
    test.
    """
    value = scene.tokens[i].value or 0.0
    amounts = scene.amounts()
    if amounts and (before := next((a for k, a in reversed(amounts) if k < i and name in a.quantities), None)):
        pull = name == "mass" and before.unit == "psi"  # pounds on a spring balance
        return _like(value, "lb" if pull else before.unit, scale_of(before), before.low)
    if (ahead := amount_ahead(scene, i)) is not None and name in ahead.quantities:
        return _like(value, ahead.unit, scale_of(ahead), ahead.low)
    if (taken := taken_before(scene, i)) is not None and taken[0] == name:
        return _like(value, taken[1], taken[2], taken[3])
    if name == "pressure" and _of_another(scene, i):
        return None
    topic = scene.context.topic
    if topic is not None and topic.quantity == name and topic.unit and topic.value:
        return _like(value, topic.unit, topic.scale, topic.value)
    last = said_just_before(scene)
    if last is not None and last.quantity == name and not isinstance(last.value, str) and (
        topic is None or topic.age > 0 or name not in BESIDE
    ):  # fmt: skip
        low = last.value[0] if isinstance(last.value, tuple) else last.value
        scale = 0.001 if last.unit == "in" and low < 0.2 and value > 0.5 else 1.0
        return _like(value, last.unit, scale, low)
    return None


def of_mercury_last(scene: Scene) -> bool:
    """Whether the last figure told was inches of mercury."""
    figures = scene.context.figures
    return bool(figures) and figures[0].unit == "inHg"


def _of_another(scene: Scene, i: int) -> bool:
    """Whether inches of mercury were told last, and something stands before the number that has no vacuum."""
    return of_mercury_last(scene) and any(
        token.thing is not None and "vac" not in token.low for token in scene.tokens[:i]
    )


def taken_before(scene: Scene, i: int) -> tuple[str, str, float, float] | None:
    """What the last bare number of the sentence was taken for: `left should be thirty-five, she's eleven`."""
    if not scene.bare:
        return None
    return next((scene.bare[k] for k in range(i - 1, max(-1, i - 1 - NEAR_BY), -1) if k in scene.bare), None)


NEAR_BY = 10
"Tokens before a bare number in which one was told that it may be set beside."


def amount_ahead(scene: Scene, i: int) -> Amount | None:
    """`Twelve, then twenty-four newton metres`: the amount that a list goes on to."""
    for token in scene.tokens[i + 1 : i + 1 + AHEAD] if scene.amounts() else ():
        if token.amount is not None:
            return token.amount
        if not (token.kind in ("number", "comma") or token.low in GOES_ON):
            return None
    return None


AHEAD = 4
GOES_ON = frozenset({"then", "and", "and then", "+", "to start", "or"})


def said_just_before(scene: Scene) -> Reading | None:
    """The last reading of the sentences before in this very note."""
    for fact in reversed(scene.context.recent):
        if fact.main.note in scene.context.notes:
            return None
        if isinstance(fact, Reading):
            return fact
    return None


def _like(value: float, unit: str, scale: float, last: float) -> Bare | None:
    if last and NEAREST <= value * scale / last <= FARTHEST:
        return Bare(unit, value, value, scale)
    if last >= THOUSANDS and unit in HUNDREDS and NEAREST_HUNDRED <= value * 100 / last <= 1 / NEAREST_HUNDRED:
        return Bare(unit, value, value, 100.0)  # `twenty-one fifty, and the plate says twenty-two`
    return None


THOUSANDS, NEAREST_HUNDRED = 1000.0, 0.6
HUNDREDS = frozenset({"rpm", "psi"})
"Units of which people say the hundreds alone (common practice)."


def stands_free(tokens: list[Token], i: int) -> bool:
    """Whether the number counts nothing: it ends its clause, or a small word or a state of the test follows."""
    if i + 1 >= len(tokens):
        return True
    after = tokens[i + 1]
    if after.kind in ("stop", "comma", "number", "amount"):
        return True
    if after.thing is not None and after.thing.kind == "quality":
        return True
    if after.low == "new":
        return i + 2 >= len(tokens) or tokens[i + 2].kind in ("stop", "comma") or tokens[i + 2].low in ("and", "when")
    if after.low in ("all right", "on the button", "on the nose", "on the dot"):
        return True
    if after.low in ("instead of", "rather than", "without", "apart", "apiece"):
        return True
    if after.sense("book") and not after.sense("plan", "must"):
        return True  # `twenty the book says`
    if after.sense("plate"):
        return True  # `against five on the plate`
    if side_behind_at(tokens, i):
        return True
    return after.low in ENDS or bool(after.sense(*CLOSING))


CLOSING = ("how", "good", "bad", "degree", "copula", "break", "pronoun", "proper")
"Classes of words that begin something else behind a number."


NAMED = frozenset(
    "number no hole position pos notch gear ends ending model serial page size setting step slot channel part chapter "
    "year series type class grade".split()
)


def names_or_prices(scene: Scene, i: int) -> bool:
    """Whether the bare number is a name (`hole 4`, `part number ends four`) or a sum of money (`coils are forty`)."""
    tokens, money = scene.tokens, scene.book.lists["money"]
    before = [t.low for t in tokens[max(0, i - 2) : i]]
    marked = i > 0 and tokens[i - 1].kind == "which"  # `number two ninety`
    if before and not marked and (before[-1] in NAMED or (before[-1].split()[-1:] and before[-1].split()[-1] in NAMED)):
        return True
    return not scene.lows().isdisjoint(money) and any(t.low in money for t in tokens[max(0, i - 14) : i + 14])
