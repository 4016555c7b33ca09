"""Ranges: "eighteen to twenty foot pounds", "100-125 psi", "six seven thou", "a day or two", "12 volts to 14"."""

from __future__ import annotations

from dataclasses import replace

from worklog_tui.extract.numbers.amount_tails import with_tail
from worklog_tui.extract.numbers.measures import Look, Measure
from worklog_tui.extract.numbers.numerals import Numeral

TO = frozenset({"to", "or", "through", "thru", "till", "til"})
LEAD = frozenset({"maybe", "about", "say", "even", "like", "perhaps"})
_SMALL_SPANS = frozenset({
    "ft_lb", "in_lb", "N*m", "s", "min", "h", "day", "week", "month", "in", "mm", "lb", "kg", "turn", "pint", "qt",
    "gal", "L", "deg",
})  # fmt: skip
'Units of which nobody says thousands: "eleven twelve foot pounds" is a range.'

Ends = tuple[Measure, float]
"The measure of the high end, and the low end in its unit."


def both_ends(look: Look, begin: int, first: Numeral) -> Ends | None:
    """Two numbers with one unit behind the second."""
    at = _second_number(look, begin, first.end)
    second = look.numeral(at) if at else None
    if (
        second is None
        or second.form == "ordinal"
        or second.loose
        or (first.loose and first.value == 1 and look.words[begin].low != "one")
    ):
        return None
    if at == first.end and not look.words[at].gap and not _neighbours(first, second):
        return None
    low, scale = first.value, look.n.scale.get(look.words[second.end - 1].low, 1)
    if scale in (100, 1000) and low < 1000 and low * scale < second.value:
        low *= scale  # "two to three thousand"
    measure = look.measured(second, at)
    if measure is None or low >= second.value:
        return None
    tail = with_tail(look, second, measure)
    if look.is_rate(tail.end) or tail.number <= low:
        return None
    return tail, low * tail.said.scale


def other_end(look: Look, begin: int, first: Measure) -> Ends | None:
    """A second end behind a first one that has the unit too: "5 mm to 8 mm", "a day or two", "12 volts to 14"."""
    at = _second_number(look, begin, first.end)
    if not at or (at == first.end and look.words[at].gap != "-"):
        return None
    second = look.numeral(at)
    if second is None or second.form == "ordinal":
        return None
    measure = look.measured(second, at)
    if measure is None:
        if second.loose or not first.number < second.value <= 3 * first.number or not look.closes(second.end):
            return None
        measure = Measure(second.value, first.said, second.end)
    unit, other = first.said.unit, measure.said.unit
    if unit.dimension != other.dimension:
        return None
    low = first.value if unit is other else look.units.convert(first.value, unit.short, other.short)
    return (measure, low) if low < measure.value else None


def said_as_two(number: Numeral, first: Measure) -> Ends | None:
    """ "eleven twelve foot pounds", "thirty forty psi": a pair that is a range and no number of hundreds."""
    if len(number.parts) != 2 or number.form != "words":
        return None
    a, b = number.parts
    tens = a % 10 == 0 and b % 10 == 0
    if not (10 <= a < b <= 2 * a and (tens or first.said.unit.short in _SMALL_SPANS)):
        return None
    return replace(first, number=b), a * first.said.scale


def _second_number(look: Look, begin: int, end: int) -> int:
    """Where the second number of a range would begin, or 0."""
    low = look.low(end)
    if low in TO or (low == "and" and begin and look.words[begin - 1].low == "between"):
        return end + 2 if look.low(end + 1) in LEAD else end + 1
    if low in LEAD and look.words[end].gap == "-":
        return end + 1
    return end if low else 0


def _neighbours(first: Numeral, second: Numeral) -> bool:
    """ "six seven thou", "ten fifteen minutes": neighbours said in one breath."""
    if not (first.form == second.form == "words" and 2 <= first.value < second.value < 100):
        return False
    return second.value <= first.value + 2 or (first.value >= 10 and second.value <= 2 * first.value)
