"""What a number without a unit is, and in which unit: by its size, by the test, by what was said, by the card."""

from __future__ import annotations

from collections.abc import Iterator

from worklog_tui.extract.card import Known, near_card, on_card
from worklog_tui.extract.measured.behind_arrow import behind_arrow
from worklog_tui.extract.measured.by_company import by_company
from worklog_tui.extract.measured.by_custom import by_custom, on_what_gets_hot, worn_by
from worklog_tui.extract.measured.by_times import crossed
from worklog_tui.extract.measured.counted import only_a_count
from worklog_tui.extract.measured.low_pressures import of_its_size
from worklog_tui.extract.measured.number_form import fraction, in_thousandths, spoken_decimal
from worklog_tui.extract.measured.quantity import believable, named_after, of_clearance, support, turns_at
from worklog_tui.extract.measured.sizes import sized
from worklog_tui.extract.measured.taken_with import gauge, taken_with
from worklog_tui.extract.scene import NONE, Draft, Scene, suggested_by
from worklog_tui.extract.talk.carry import carried, names_or_prices, said_just_before, stands_free
from worklog_tui.extract.talk.measuring import usual_unit
from worklog_tui.extract.talk.told_before import OF_IT, told_of
from worklog_tui.extract.tokens import Token
from worklog_tui.rulebook.quantities import Bare, Quantity

Value = float | tuple[float, float] | str
CARD_LEAST = 20.0
"A bare number from which on the same figure on the card tells what it is."
BARE_LINE = 1.2
"Support below which a number without a unit is left alone."


def bare_reading(token: Token, made: Draft, scene: Scene, told: str) -> tuple[str, Value, str] | None:
    """What a number without a unit is: the best supported quantity in which it is believable, in the unit said last
    or by its size.
    """
    assert token.value is not None
    if token.amount is None and sized(made.main, scene):
        return "length", token.value, "mm"
    if unit := crossed(made.main, scene):
        return "length", token.value, unit
    if worn_by(token, made, scene):
        scene.bare[made.main] = "length", "in", 1.0, token.value
        return "gap" if of_clearance(made.main, scene) else "length", token.value, "in"
    if (became := behind_arrow(made, scene)) is not None:
        scene.bare[made.main] = became[0], became[2], became[1] / token.value, became[1]
        return became
    if told in ("", "length", "gap", "turns") and (read := by_company(token, made, scene)) is not None:
        return ("gap", *read[1:]) if read[0] == "length" and of_clearance(made.main, scene) else read
    told = told or taken_with(made.main, scene)
    guessed = bool(made.rule.gives.get("bare")) and not _off_a_gauge(made.main, scene)
    whole = not spoken_decimal(scene.said(made.main, made.main))
    if (
        (guessed and whole and not stands_free(scene.tokens, made.main))
        or names_or_prices(scene, made.main)
        or _of_another_kind(made, scene)
    ):
        return None
    if told in ("", "length") and (unit := by_custom(token, made, scene)):
        name = "gap" if of_clearance(made.main, scene) else "length"
        return name, token.value if token.high is None else (token.value, token.high), unit
    if not told and on_what_gets_hot(made.main, scene):
        return "temperature", token.value, degrees(token.value, scene)
    best: tuple[float, str, Bare] | None = None
    for name in (told,) if told else _likely(made, scene):
        quantity = scene.book.quantities[name]
        found = _taken(token.value, name, quantity, made, scene, guessed, bool(told))
        if found is not None and (best is None or found[0] > best[0]):
            best = (found[0], name, found[1])
    if best is None or only_a_count(token, best[1], made, scene):
        return None
    sure = told or _its_own(best[1], made, guessed)
    if best[0] < BARE_LINE and not (sure and token.value != int(token.value)):
        return None
    return _taken_for(token, best[1], best[2], made, scene)


def _its_own(name: str, made: Draft, guessed: bool) -> bool:
    """Whether the quantity is what is usually measured on the thing that stands right by the number."""
    thing = made.thing
    return not guessed and thing is not None and made.thing_at is not None and thing.quantities[:1] == (name,)


def _taken_for(token: Token, name: str, bare: Bare, made: Draft, scene: Scene) -> tuple[str, Value, str] | None:
    """The reading of a number that is taken for a quantity; it is remembered for the numbers behind it."""
    assert token.value is not None
    divided = fraction(scene.said(made.main, made.main))
    if divided and name not in FRACTIONS:
        return None
    value = round(token.value * bare.factor, 9)
    scene.bare[made.main] = name, bare.unit, bare.factor, value
    if divided and name in ("gap", "length"):
        return name, token.value, "in"  # a fraction is of an inch
    unit = degrees(value, scene) if (name, bare.unit) == ("temperature", "deg") else bare.unit
    return name, value if token.high is None else (value, round(token.high * bare.factor, 9)), unit


def _likely(made: Draft, scene: Scene) -> Iterator[str]:
    """The quantities that anything speaks for: words and amounts before, the thing, the running test, the card."""
    hints = set(scene.suggested(made.main)) | {q for q, _, _, _ in scene.card()}
    hints |= {q for t in scene.tokens[: made.main] if t.amount is not None for q in t.amount.quantities}
    behind = scene.tokens[made.main + 1 : made.main + 5]
    hints |= {q for t in behind[:3] for q in suggested_by(scene.book, t)}
    hints |= {q for t in behind if t.amount is not None for q in t.amount.quantities}
    hints |= {scene.topic_before(made.main) or "", scene.context.topic.quantity if scene.context.topic else ""}
    last = said_just_before(scene)
    if last is not None:
        hints.add(last.quantity)
    hints |= {figure.quantity for figure in scene.context.figures}
    if made.thing is not None:
        hints |= set(made.thing.quantities) | scene.book.suggests.get(made.thing.name, NONE)
        hints |= {"volume"} if made.thing.kind == "fluid" else set()
    if scene.machine.fuel == "none" and scene.topic_before(made.main) != "compression":
        hints.discard("compression")  # no engine, no cylinders to test
    return (name for name in scene.book.quantities if name in hints)


FRACTIONS = frozenset({"gap", "length", "turns", "volume"})
"Quantities of which people write `3/8`."


def _card_unit(known: Known, name: str) -> str:
    return next((u for q, u, _, _ in known if q == name), "")


def _like_card(known: Known, value: float) -> bool:
    """Whether the card gives a speed of about this size; nothing else is said in so many hundreds."""
    return any(q == "speed" and 0.6 * low <= value <= 1.6 * high and value >= 300 for q, _, low, high in known)


def _off_a_gauge(i: int, scene: Scene) -> bool:
    """`240 on the tach`, `sixty on the gauge`: the instrument that it was read off stands behind the number."""
    return any(t.thing is not None and t.thing.system == "instruments and gauges" for t in gauge(i, scene)) or bool(
        taken_with(i, scene)
    )


def _of_another_kind(made: Draft, scene: Scene) -> bool:
    """Beside an amount of what no log of readings holds (microfarads, watts) a bare number is of the same kind."""
    first = scene.clause(made.main).start - 8
    before = next((t.amount for t in reversed(scene.tokens[max(first, 0) : made.main]) if t.amount is not None), None)
    return before is not None and not any(q in scene.book.quantities for q in before.quantities)


def _taken(
    value: float, name: str, quantity: Quantity, made: Draft, scene: Scene, guessed: bool, told: bool
) -> tuple[float, Bare] | None:
    """How well a quantity takes a bare number, and in which unit; None when it does not."""
    bare = carried(scene, made.main, name)
    if bare is None and not guessed and (told_there := told_of(name, made, scene))[0] >= OF_IT:
        bare = told_there[1]
    if (bare is None and value and not quantity.bare) or (name == "pressure" and turns_at(value, made)):
        return None
    known = scene.card()
    score = support(name, made, scene)
    if value == 0 and not guessed and (unit := _unit_of_topic(name, scene) or _unit_of_none(name, scene)):
        bare = Bare(unit, 0, 0)
    if bare is not None:
        score += 1.3
    elif not guessed and value >= CARD_LEAST and (unit := on_card(known, name, value)):
        bare, score = Bare(unit, value, value), score + 1.3
    elif not guessed and name == "speed" and _like_card(known, value):
        bare, score = Bare("rpm", value, value), score + 1.25
    elif quantity.bare and (score > 0 or told):
        unit = _unit_of_topic(name, scene) or _card_unit(known, name)
        unit = unit or usual_unit(quantity, made.main, scene)
        if name == "length" and value >= THOUSANDTHS and not told and not _dimension_named(quantity, made, scene):
            return None
        if name in SMALL and in_thousandths(scene.said(made.main, made.main)) and not _metric_shop(unit, scene):
            unit = "in"
        bare = _fits(quantity, value, unit)
    bare = of_its_size(bare, value, name, made, scene) if bare is not None else None
    if bare is None or not believable(value * bare.factor, bare.unit, quantity):
        return None
    if near_card(known, name, round(value * bare.factor, 9), bare.unit):
        score += 0.8
    elif guessed and carried(scene, made.main, name) is None and not _under_test(name, made, scene):
        return None
    return score, bare


def _metric_shop(unit: str, scene: Scene) -> bool:
    """Whether millimetres are all that was told so far."""
    told = {*scene.context.units, *(f.unit for f in scene.context.figures)}
    return unit == "mm" and "mm" in told and "in" not in told


SMALL, THOUSANDTHS = ("length", "gap"), 0.2
"Inches up to which a bare decimal may be a length of a thing that lengths are measured on."


def _dimension_named(quantity: Quantity, made: Draft, scene: Scene) -> bool:
    """Whether a word such as bore, wear or run-out stands by a bare number, or is what is being measured."""
    topic = scene.topic_before(made.main) or (scene.context.topic.quantity if scene.context.topic else "")
    named = quantity.name in scene.suggested(made.main) or named_after(quantity, made.main, scene)
    return named or topic == quantity.name


def _under_test(name: str, made: Draft, scene: Scene) -> bool:
    """A number with decimals under the test that was just announced, or any behind an instrument that was put on:
    nothing else is said so.
    """
    said = scene.topic_before(made.main)
    topic = said or (scene.context.topic.quantity if scene.context.topic else "")
    if topic != name:
        return False
    said_so = scene.said(made.main, made.main)
    if spoken_decimal(said_so) or ((scene.tokens[made.main].value or 0.0) % 1 and said_so.split()[-1] in DIGITS):
        return True
    return said == name and (scene.tokens[made.main].value or 0.0) >= CARD_LEAST and _instrument_on(made.main, scene)


DIGITS = frozenset("one two three four five six seven eight nine".split())
"`Twelve one`: the decimals of a voltmeter."


def _instrument_on(i: int, scene: Scene) -> bool:
    """Whether an instrument, and no other part with a measure of its own, is named before the number."""
    return any(
        t.thing is not None and t.thing.system == "instruments and gauges" for t in scene.tokens[:i]
    ) and not any(t.amount is not None for t in scene.tokens[:i])


def _fits(quantity: Quantity, value: float, unit: str) -> Bare | None:
    """How the quantity takes a bare value: in the wanted unit if its size allows, else in the first that does."""
    fitting = [b for b in quantity.bare if b.low <= value <= b.high]
    return next((b for b in fitting if b.unit == unit), fitting[0] if fitting else None)


def degrees(value: float, scene: Scene) -> str:
    """Whose degrees a temperature is in that only says so: of the running test, the machine card, else by its size."""
    unit = _unit_of_topic("temperature", scene)
    unit = unit or next((u for q, u, _, _ in scene.card() if q == "temperature"), "")
    bare = _fits(scene.book.quantities["temperature"], value, "")
    return unit if unit not in ("", "deg") else bare.unit if bare else "degC"


def _unit_of_none(name: str, scene: Scene) -> str:
    """`I got zero`, under a test of which no figure has been told: in the unit of the card, else the usual one."""
    topic = scene.context.topic
    if topic is None or topic.quantity != name:
        return ""
    bare = scene.book.quantities[name].bare
    return _card_unit(scene.card(), name) or (bare[0].unit if bare else "")


def _unit_of_topic(name: str, scene: Scene) -> str:
    topic = scene.context.topic
    return topic.unit if topic is not None and topic.quantity == name else ""
