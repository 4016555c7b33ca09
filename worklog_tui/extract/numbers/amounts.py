"""Finds the amount at a word: number and unit, a range of them, or a compound such as "four minutes twenty seconds"."""

from __future__ import annotations

from dataclasses import dataclass, replace

from worklog_tui.extract.heard.figures import VULGAR
from worklog_tui.extract.heard.words import Word
from worklog_tui.extract.numbers.amount_tails import with_tail
from worklog_tui.extract.numbers.bounds import bound_of
from worklog_tui.extract.numbers.broken_numbers import and_fraction
from worklog_tui.extract.numbers.coded import coded
from worklog_tui.extract.numbers.measures import Look, Measure
from worklog_tui.extract.numbers.numerals import Numeral, numeral_at, numeral_ends
from worklog_tui.extract.numbers.ranges import both_ends, other_end, said_as_two
from worklog_tui.extract.numbers.unit_ahead import next_word, unit_ahead
from worklog_tui.extract.numbers.unit_words import unit_at
from worklog_tui.rulebook.units import Numerals, Units


@dataclass(frozen=True, slots=True)
class Amount:
    """How much of what: low and high in `unit` (equal when no range); words start to end.

    `said` is the canonical said unit ("thou" for a value in inches); `quantities` what it can be, the likeliest first;
    `bound` is "", under, over or about; `rough`: called inexact; `unit_said`: the unit stands in the words.
    """

    low: float
    high: float
    unit: str
    said: str
    quantities: tuple[str, ...]
    start: int
    end: int
    bound: str = ""
    rough: bool = False
    change: bool = False
    unit_said: bool = True


_ONE_OF = frozenset({"another", "full", "whole"})
LEADS = _ONE_OF | {"between", "all"}
"Words that are no number and that an amount can begin with."
_LEFT = frozenset({
    "for", "on", "charge", "soak", "soaked", "soaking", "charging", "oil", "cleaner", "running", "ran", "sat", "heat",
    "trickle",
})  # fmt: skip
_NO_AMOUNT_AFTER = frozenset("£$€#")
_LONE = frozenset({
    "in", "ft", "mm", "turn", "pint", "qt", "gal", "L", "h", "min", "day", "week", "month", "year", "V", "ton",
})  # fmt: skip
_COLD = frozenset("outside out here last overnight zero freezing this in that tonight".split())
_OF_INCH = frozenset({
    "proud", "below", "above", "wide", "deep", "high", "low", "tight", "slack", "loose", "shy", "more", "less", "play",
    "undersize", "oversize", "larger", "smaller", "narrower", "wider", "out",
    "inch", "inches", "of", "in", "drill", "bit", "over", "under", "clearance", "gap", "off", "thick", "on", "or",
    "and", "to",
})  # fmt: skip


def amount_at(
    words: list[Word], i: int, numerals: Numerals, units: Units, number: Numeral | None = None
) -> Amount | None:
    """The longest amount that begins at word i, or None; a number alone is none. With the `number` there, where it was
    read already.
    """
    low = words[i].low
    first = low[0]
    if not (low in numerals.starts or first in "0123456789+-." or first in VULGAR):
        if low == "between":
            return _between(words, i, numerals, units)
        if low == "all" and i and words[i - 1].low in _LEFT:
            return _all_day(Look(words, numerals, units), i)
        if low in _ONE_OF and next_word(words, i) in units.by_head:
            return _another(Look(words, numerals, units), i)
        if low == "volt" and (not i or words[i].gap not in ("", "-")):
            return _volt_first(Look(words, numerals, units), i)
        if low in units.by_head and next_word(words, i) in numerals.join:
            return _unit_first(Look(words, numerals, units), i)
        return None
    if first.isdigit() and not low.isdigit() and (value := coded(low)):
        said = next(s for forms in units.by_head.values() for s in forms if s.unit.short == value[1])
        return _amount(Look(words, numerals, units), i, Measure(value[0] / said.scale, said, i + 1))
    if not unit_ahead(words, i, numerals, units) or (i and words[i - 1].low in _NO_AMOUNT_AFTER):
        return None
    return _at_number(Look(words, numerals, units), i, number)


def _between(words: list[Word], i: int, numerals: Numerals, units: Units) -> Amount | None:
    """ "between two and three mil": a range only with both ends."""
    if i + 1 >= len(words) or words[i + 1].low == "between":
        return None
    found = amount_at(words, i + 1, numerals, units)
    return replace(found, start=i) if found and found.low < found.high else None


def _at_number(look: Look, begin: int, number: Numeral | None) -> Amount | None:
    number = number or numeral_at(look.words, begin, look.n)
    if number is None or (number.loose and _is_per(look, begin)):
        return None
    if number.form == "ordinal" and (part := look.part_of(number, begin)):
        return _amount(look, begin, part)
    if number.form == "ordinal" or _is_thirty_seconds(look, begin, number):
        return _seconds(look, begin, number)
    first = look.measured(number, begin)
    if first is None:
        ends = both_ends(look, begin, number)
        return _amount(look, begin, *ends) if ends else _kilo(look, begin, number) or _below_zero(look, begin, number)
    if two := said_as_two(number, first):
        return _amount(look, begin, *two)
    return _with_rest(look, begin, number, first)


def _with_rest(look: Look, begin: int, number: Numeral, first: Measure) -> Amount | None:
    whole = with_tail(look, number, first)
    if look.is_rate(whole.end) and not (whole.said.unit.dimension == "length" and look.along(whole.end)):
        return None
    if ends := other_end(look, begin, whole):
        return None if look.is_rate(ends[0].end) else _amount(look, begin, *ends)
    return _amount(look, begin, whole)


def _is_per(look: Look, begin: int) -> bool:
    """The "an" of "five litres an hour", "four hundred holes an hour", "nineteen ninety nine a month" is no number."""
    words = look.words
    if not begin or words[begin].low not in look.n.article or words[begin].gap or not look.is_rate(begin):
        return False
    return numeral_ends(words, begin - 1, look.n) or (begin > 1 and _counts(words, begin, look))


def _counts(words: list[Word], begin: int, look: Look) -> bool:
    """Before the article stands a number with what it counts."""
    thing = words[begin - 1].low
    counted = thing in look.units.by_head or (len(thing) > 3 and thing.endswith("s"))
    return counted and not words[begin - 1].gap and numeral_ends(words, begin - 2, look.n)


# ---- amounts that do not begin with their number


def _unit_first(look: Look, begin: int) -> Amount | None:
    """ "inch and a half", "turn and a quarter": the one is not said."""
    if len(look.words[begin].low) < 3:
        return None
    found = unit_at(look.words, begin, Numeral(1.0, begin, "words"), begin, look.units)
    if found is None or found[0].unit.short not in _LONE:
        return None
    more = and_fraction(look.words, found[1], look.n)
    if more is None or look.unit_follows(more[1]):
        return None
    return _amount(look, begin, Measure(1 + more[0], found[0], more[1]))


def _volt_first(look: Look, begin: int) -> Amount | None:
    """ "volt seven" where a line begins: the "a" stood at the end of the line before, or was not said."""
    one = Measure(1.0, look.units.by_head["volt"][0], begin + 1)
    whole = with_tail(look, Numeral(1.0, begin, "words"), one)
    return _amount(look, begin, whole) if whole is not one else None


def _another(look: Look, begin: int) -> Amount | None:
    """ "another hour", "full turn"."""
    one = Numeral(1.0, begin + 1, "words", True)
    measure = look.measured(one, begin)
    return _with_rest(look, begin, one, measure) if measure and measure.said.unit.short in _LONE else None


def _all_day(look: Look, begin: int) -> Amount | None:
    """ "on charge all night", "soaked for all week"."""
    one = Numeral(1.0, begin + 1, "words")
    found = look.measured(one, begin)
    if (
        found is None
        or found.said.unit.short not in ("day", "week", "month")
        or look.words[begin + 1].low.endswith("s")
    ):
        return None
    return replace(_amount(look, begin, found), rough=True)


# ---- seconds, thousands, cold


def _is_thirty_seconds(look: Look, begin: int, number: Numeral) -> bool:
    """ "a thirty second run" is half a minute; "a thirty second of an inch" is not."""
    last = number.end - 1
    if number.form != "fraction" or last - begin != 2 or look.words[begin].low not in look.n.article:
        return False
    after = look.low(number.end)
    return look.words[last].low == "second" and not look.words[last].gap and bool(after) and after not in _OF_INCH


def _seconds(look: Look, begin: int, number: Numeral) -> Amount | None:
    """ "a twenty second ramp": the ordinal is a number of seconds."""
    last = number.end - 1
    tens = look.n.ten.get(look.words[last - 1].low) if last > begin else None
    if tens is None or look.words[last].low != "second":
        return None
    found = unit_at(look.words, last, Numeral(float(tens), last, "words"), begin, look.units)
    return _amount(look, begin, Measure(float(tens), *found)) if found and look.low(found[1]) else None


def _kilo(look: Look, begin: int, number: Numeral) -> Amount | None:
    """ "5.2k" by itself is ohms."""
    if look.words[begin].low[-1] != "k" or number.end != begin + 1:
        return None
    after = look.low(number.end)
    if not (look.closes(number.end) or (after[0].isdigit() and after[-1] == "k")):
        return None
    said = next(s for s in look.units.by_head["k"] if s.words == ("k",))
    return _amount(look, begin, Measure(number.value / 1000, said, number.end))


def _below_zero(look: Look, begin: int, number: Numeral) -> Amount | None:
    """ "thirty below", "ten below zero"."""
    if look.low(number.end) != "below" or number.loose or number.form == "fraction":
        return None
    after = look.low(number.end + 1)
    if after not in _COLD if after else number.value % 5:
        return None
    end = number.end + (2 if after in ("zero", "freezing") else 1)
    return Amount(-number.value, -number.value, "deg", "degrees", ("temperature",), begin, end, unit_said=False)


def _amount(look: Look, begin: int, measure: Measure, low: float | None = None) -> Amount:
    """The amount of a measure; `low` is the other end of a range, in the unit."""
    value, end, said = measure.value, measure.end, measure.said
    if low is None and look.low(end) == "below" and look.low(end + 1) in ("zero", "freezing"):
        value, end = -value, end + 2
    bound, rough = bound_of(look.words, begin, end)
    value = _clean(value)
    return Amount(
        value if low is None else _clean(low),
        value,
        said.unit.short,
        said.name,
        said.quantities,
        begin,
        end,
        bound,
        rough,
    )


def _clean(value: float) -> float:
    """Without the dust of binary fractions: 35 thou are 0.035."""
    return float(f"{value:.12g}")
