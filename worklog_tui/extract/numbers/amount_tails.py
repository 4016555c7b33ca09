"""What belongs to the amount behind a unit: "an inch and a quarter", "four minutes twenty seconds", "a volt seven"."""

from __future__ import annotations

from dataclasses import replace

from worklog_tui.extract.numbers.broken_numbers import and_fraction
from worklog_tui.extract.numbers.measures import Look, Measure
from worklog_tui.extract.numbers.numerals import Numeral, numeral_at
from worklog_tui.extract.numbers.unit_words import unit_at

_FAMILIES = (
    "mile yd ft in", "km m dm cm mm", "year month week day h min s", "ton lb oz", "t kg g", "gal qt pint fl_oz",
    "L cl ml",
)  # fmt: skip
_FAMILY = {short: family for family in _FAMILIES for short in family.split()}
"Units that are said together for one amount."
_CANONICAL = {"in": "inch", "min": "minutes"}


def with_tail(look: Look, number: Numeral, first: Measure) -> Measure:
    """The measure with all that belongs to it."""
    if number.form not in ("words", "digits"):
        return first
    more = and_fraction(look.words, first.end, look.n)
    if more and not look.unit_follows(more[1]):
        return Measure(first.number + more[0], first.said, more[1])
    return _compound(look, first) or _short_second(look, first) or first


def _compound(look: Look, first: Measure) -> Measure | None:
    """Two or three units for one amount, the smaller after the larger."""
    found = _smaller(look, first)
    return (found and _smaller(look, found)) or found


def _smaller(look: Look, first: Measure) -> Measure | None:
    unit, words = first.said.unit, look.words
    if unit.short not in _FAMILY:
        return None
    at = first.end + (look.at(first.end) in look.n.join)
    if at >= len(words) or words[at].gap not in ("", "-", ","):
        return None
    number = numeral_at(words, at, look.n)
    second = look.measured(number, at) if number and number.form != "ordinal" and not number.loose else None
    if second is None or _FAMILY.get(second.said.unit.short) != _FAMILY[unit.short]:
        return None
    big, small = unit.factor * first.said.scale, second.said.unit.factor * second.said.scale
    if not 0 < small < big or (second.number * small >= big and words[at].gap == ","):
        return None
    if second.said.unit is unit:  # "fourteen inches and thirty thou"
        return Measure(first.value + second.value, replace(first.said, scale=1.0), second.end)
    total = look.units.convert(first.value, unit.short, second.said.unit.short) + second.value
    return Measure(round(total / second.said.scale, 9), second.said, second.end)


def _short_second(look: Look, first: Measure) -> Measure | None:
    """The smaller unit is not said: "six foot two", "an hour twenty", "one volt two"."""
    said = look.words[first.end - 1].low
    if said not in ("foot", "hour", "hours", "volt", "volts") or first.number != int(first.number):
        return None
    joined = said in ("hour", "hours") and look.low(first.end) in look.n.join
    number = look.numeral(first.end + joined)
    if number is None or (number.form != "words" and not joined) or number.parts:
        return None
    if unit_at(look.words, number.end, number, first.end, look.units) or look.low(number.end) in ("to", "or"):
        return None
    value = number.value
    if joined and not (value % 5 == 0 and look.closes(number.end)):
        return None
    if said == "foot":
        return _in_smaller(look, first, 12, value, "in", number.end) if 1 <= value < 12 else None
    if said in ("volt", "volts"):
        small = 1 <= value <= 9 and (first.number <= 3 if said == "volt" else look.closes(number.end))
        return Measure(first.number + value / 10, first.said, number.end) if small else None
    return _in_smaller(look, first, 60, value, "min", number.end) if 5 <= value < 60 else None


def _in_smaller(look: Look, first: Measure, times: int, value: float, short: str, end: int) -> Measure:
    said = next(s for s in look.units.by_head[_CANONICAL[short]] if s.unit.short == short)
    return Measure(first.number * times + value, said, end)
