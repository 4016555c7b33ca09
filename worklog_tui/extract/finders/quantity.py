"""What a number measures: by its unit, by what it is of, by the words near it, by the running test."""

from __future__ import annotations

from worklog_tui.extract.scene import Draft, Scene
from worklog_tui.extract.tokens import Token
from worklog_tui.rulebook.quantities import Bare, Quantity

Value = float | tuple[float, float] | str


def quantity_of(candidates: tuple[str, ...], made: Draft, scene: Scene) -> str:
    """The likeliest of the quantities that a unit can mean; the unit's own order decides ties."""
    best, most = "", -1.0
    for n, name in enumerate(candidates):
        score = _support(name, made, scene) - 0.01 * n
        if score > most:
            best, most = name, score
    return best


def _support(name: str, made: Draft, scene: Scene) -> float:
    quantity = scene.book.quantities.get(name)
    score = 0.0
    thing = made.thing
    if thing is not None:
        if thing.quantities and thing.quantities[0] == name:
            score += 2.0
        elif name in thing.quantities:
            score += 1.0
        if quantity and thing.name in quantity.near:
            score += 2.0
    if quantity:
        score += 1.5 * _near(quantity, made.main, scene)
    topic = scene.context.topic
    if topic is not None and topic.quantity == name:
        score += 0.8
    return score


def _near(quantity: Quantity, i: int, scene: Scene) -> bool:
    """Whether a word of the quantity stands in the clause of token i."""
    for k in scene.clause(i):
        token = scene.tokens[k]
        if token.low in quantity.near or token.thing is not None and token.thing.name in quantity.near:
            return True
    return False


def bare_reading(token: Token, made: Draft, scene: Scene, told: str) -> tuple[str, Value, str] | None:
    """What a number without a unit is: the quantity of its subject or of the running test, in the unit that its size allows."""
    assert token.value is not None
    topic = scene.context.topic
    names = [told] if told else []
    if made.thing is not None and not told:
        names += [q for q in made.thing.quantities if "subject" not in made.filled or (topic and topic.quantity == q)]
    if topic is not None and not told and topic.quantity not in names:
        names.append(topic.quantity)
    for name in names:
        quantity = scene.book.quantities.get(name)
        if quantity is None:
            continue
        unit = _unit_of_topic(name, scene) or _unit_of_card(quantity, scene)
        for value in (token.value, *_pair_readings(token)):
            if bare := _fits(quantity, value, unit):
                return name, round(value * bare.factor, 9), bare.unit
    return None


def _pair_readings(token: Token) -> tuple[float, ...]:
    return ()


def _fits(quantity: Quantity, value: float, unit: str) -> Bare | None:
    """How the quantity takes a bare value: in the wanted unit if its size allows, else in the first that does."""
    fitting = [b for b in quantity.bare if b.low <= value <= b.high]
    return next((b for b in fitting if b.unit == unit), fitting[0] if fitting else None)


def _unit_of_topic(name: str, scene: Scene) -> str:
    topic = scene.context.topic
    return topic.unit if topic is not None and topic.quantity == name else ""


def _unit_of_card(quantity: Quantity, scene: Scene) -> str:
    """The unit in which the machine card gives this quantity."""
    for value in scene.machine.specified:
        if value.quantity == quantity.name and value.unit:
            return value.unit
        if any(key in value.subject for key in quantity.card):
            for unit in quantity.units:
                if unit in value.text.replace(",", " ").split():
                    return unit
    return ""
