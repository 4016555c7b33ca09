"""Finds the amount (number and unit, a range of them, or a compound such as "four minutes twenty seconds") at a word."""

from __future__ import annotations

from dataclasses import dataclass, replace

from worklog_tui.extract.bounds import bound_of
from worklog_tui.extract.figures import VULGAR
from worklog_tui.extract.numerals import Numeral, and_fraction, numeral_at
from worklog_tui.extract.unit_words import unit_at
from worklog_tui.extract.words import Word
from worklog_tui.rulebook.units import Numerals, SaidUnit, Units


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


_FILL = frozenset({"full", "whole", "good", "solid", "clear", "bare", "more", "odd", "clean", "extra", "fewer"})
_LOOK = 16
_TO = frozenset({"to", "or", "through", "thru", "till", "til"})
_LEAD = frozenset({"maybe", "about", "say", "even", "like", "perhaps"})
_INSIDE = _FILL | _TO | _LEAD | {"of", "and"}
_EACH = frozenset({"second", "minute", "hour", "day", "week", "month", "year", "mile", "inch", "foot", "cell", "litre", "piece", "kilo", "share", "unit"})  # fmt: skip
_ONE_OF = frozenset({"another", "full", "whole"})
_SHARE = {"tenth": 10, "tenths": 10, "hundredth": 100, "hundredths": 100, "thousandth": 1000, "thousandths": 1000}
_NO_AMOUNT_AFTER = frozenset("£$€#")
_COLD = frozenset({"outside", "out", "here", "last", "overnight", "zero", "freezing", "this", "in", "that", "tonight"})
_INCHES = frozenset({"inch", "inches", "of", "in", "drill", "bit", "over", "under", "clearance", "gap", "off", "thick", "on", "or", "and", "to"})  # fmt: skip
_SMALL_SPANS = frozenset({"ft_lb", "in_lb", "N*m", "s", "min", "h", "day", "week", "month", "in", "mm", "lb", "kg", "turn", "pint", "qt", "gal", "L", "deg"})  # fmt: skip
_LONE = frozenset({"in", "ft", "mm", "turn", "pint", "qt", "gal", "L", "h", "min", "day", "week", "month", "year", "V", "ton"})  # fmt: skip
_FAMILY = {
    short: family
    for family in ("mile yd ft in", "km m dm cm mm", "year month week day h min s", "ton lb oz", "t kg g", "gal qt pint fl_oz", "L cl ml")
    for short in family.split()
}
"Units that are said together for one amount."


def amount_at(words: list[Word], i: int, numerals: Numerals, units: Units) -> Amount | None:
    """The longest amount that begins at word i, or None; a number alone is none."""
    low = words[i].low
    first = low[0]
    if not (low in numerals.starts or first.isdigit() or first in "+-." or first in VULGAR):
        if low == "between":
            return _between(words, i, numerals, units)
        if low in _ONE_OF and _next(words, i) in units.by_head:
            return _Reader(words, i, numerals, units).another()
        if low in units.by_head and _next(words, i) in numerals.join:
            return _Reader(words, i, numerals, units).unit_first()
        return None
    if not _unit_ahead(words, i, numerals, units):
        return None
    if i and words[i - 1].low in _NO_AMOUNT_AFTER:
        return None
    return _Reader(words, i, numerals, units).read()


def _next(words: list[Word], i: int) -> str:
    return words[i + 1].low if i + 1 < len(words) else ""


def _unit_ahead(words: list[Word], i: int, numerals: Numerals, units: Units) -> bool:
    """A unit may come before anything that cannot stand in an amount; most numbers of a talk are turned down here."""
    heads, within = units.by_head, numerals.within
    low = words[i].low
    if low[-1] == "k":
        return True
    after = _next(words, i)
    if (low.isdigit() and after.isdigit() and not words[i + 1].gap) or (low == "a" and after == "a"):
        return False
    for k in range(i + 1, min(i + _LOOK, len(words))):
        low = words[k].low
        if words[k].gap not in ("", "-", "(") and words[k - 1].low not in numerals.join:
            return False
        if (low in heads and (low != "a" or words[k].start == words[k - 1].end)) or low in _SHARE or low == "below":
            return True
        if not (low in within or low in _INSIDE or low[0] in "0123456789.-+" or low[0] in VULGAR):
            return False
    return False


def _between(words: list[Word], i: int, numerals: Numerals, units: Units) -> Amount | None:
    """ "between two and three mil": a range only with both ends."""
    if i + 1 >= len(words) or words[i + 1].low == "between":
        return None
    found = amount_at(words, i + 1, numerals, units)
    return replace(found, start=i) if found and found.low < found.high else None


@dataclass(frozen=True, slots=True)
class _Measure:
    """One number with its unit: `number` as said, `value` in the unit, which ends at `end`."""

    number: float
    said: SaidUnit
    end: int

    @property
    def value(self) -> float:
        return self.number * self.said.scale


class _Reader:
    """One look at the words from `begin` on; every step is bounded."""

    def __init__(self, words: list[Word], begin: int, numerals: Numerals, units: Units) -> None:
        self.words, self.begin, self.n, self.units = words, begin, numerals, units

    def low(self, i: int) -> str:
        """Word i, or nothing when a pause stands before it."""
        return self.words[i].low if i < len(self.words) and self.words[i].gap in ("", "-") else ""

    def numeral(self, i: int) -> Numeral | None:
        return numeral_at(self.words, i, self.n) if self.low(i) else None

    # ---- what may stand at a number

    def read(self) -> Amount | None:
        number = numeral_at(self.words, self.begin, self.n)
        if number is None:
            return None
        if number.form == "ordinal" or self._seconds_read_as_fraction(number):
            return self._seconds(number)
        first = self.measured(number, self.begin)
        if first is None:
            return self._range(number) or self._kilo(number) or self._below_zero(number)
        if spoken := self._said_as_two(number, first):
            return spoken
        return self._with_tail(number, first)

    def measured(self, number: Numeral, begin: int) -> _Measure | None:
        """The unit behind a number, with what may stand between: "two full turns", "half an hour", "point eight of an ohm"."""
        end = number.end
        word = self.low(end)
        if found := unit_at(self.words, end, number, begin, self.units):
            if word not in _SHARE or len(found[0].words) > 1:
                return _Measure(number.value, *found)
        if word in _FILL and (found := unit_at(self.words, end + 1, number, begin, self.units)):
            return _Measure(number.value, *found)
        if word in _SHARE:
            return self._share(number, begin, number.value / _SHARE[word], end)
        if number.form in ("fraction", "decimal"):
            return self._of_one(number, begin, number.value, end)
        return None

    def _of_one(self, number: Numeral, begin: int, value: float, end: int) -> _Measure | None:
        """ "of a volt", "an hour"."""
        of = self.low(end) == "of"
        at = end + of
        article = self.low(at) in self.n.article
        if not (of or article):
            return None
        found = unit_at(self.words, at + article, number, begin, self.units)
        return _Measure(value, *found) if found else None

    def _share(self, number: Numeral, begin: int, value: float, end: int) -> _Measure | None:
        """Tenths and the like: "six tenths of a thou", "two tenths volt", else what the fitter means by them alone."""
        if of := self._of_one(number, begin, value, end + 1):
            return of
        direct = unit_at(self.words, end + 1, number, begin, self.units)
        if direct and direct[0].unit.dimension != "time":
            return _Measure(value, *direct)
        alone = unit_at(self.words, end, number, begin, self.units)
        return _Measure(number.value, *alone) if alone else None

    def unit_first(self) -> Amount | None:
        """ "inch and a half", "turn and a quarter": the one is not said."""
        one = Numeral(1.0, self.begin, "words")
        if self.words[self.begin].low in ("m", "l", "h", "v", "in"):
            return None
        found = unit_at(self.words, self.begin, one, self.begin, self.units)
        if found is None or found[0].unit.short not in _LONE:
            return None
        more = and_fraction(self.words, found[1], self.n)
        if more is None or self._unit_follows(more[1]):
            return None
        return self._amount(_Measure(1 + more[0], found[0], more[1]))

    def _unit_follows(self, i: int) -> bool:
        low = self.low(i)
        return len(low) > 1 and low in self.units.by_head and low not in ("in", "per", "of")

    def another(self) -> Amount | None:
        """ "another hour", "a whole day" without its article, "full turn"."""
        one = Numeral(1.0, self.begin + 1, "words", True)
        measure = self.measured(one, self.begin)
        known = measure and measure.said.unit.short in _LONE
        return self._with_tail(one, measure) if known and measure else None

    # ---- ranges

    def _range(self, first: Numeral) -> Amount | None:
        """Two numbers with one unit: "eighteen to twenty foot pounds", "100-125 psi", "six seven thou"."""
        at = self._second_number(first.end)
        second = self.numeral(at) if at else None
        if second is None or second.form == "ordinal" or second.loose:
            return None
        low = first.value
        if at == first.end and self.words[at].gap == "" and not self._next_to(first, second):
            return None
        if low * 1000 <= second.value and self._scale_of(second) == 1000 and low < 1000:
            low *= 1000
        elif low * 100 < second.value and self._scale_of(second) == 100 and low < 100:
            low *= 100
        measure = self.measured(second, at)
        if measure is None or low >= second.value:
            return None
        tail = self._tail(second, measure)
        if self._is_rate(tail.end):
            return None
        return self._amount(tail, low * tail.said.scale) if tail.number > low else None

    def _second_number(self, end: int) -> int:
        """Where the second number of a range begins, or 0."""
        low = self.low(end)
        if low in _TO or (low == "and" and self.begin and self.words[self.begin - 1].low == "between"):
            return end + 2 if self.low(end + 1) in _LEAD else end + 1
        return end if low else 0

    def _next_to(self, first: Numeral, second: Numeral) -> bool:
        """ "six seven thou": small neighbours said in one breath."""
        whole = first.form == second.form == "words" and first.value >= 1
        return whole and first.value < second.value <= first.value + 2 and second.value < 100

    def _scale_of(self, number: Numeral) -> int:
        return self.n.scale.get(self.words[number.end - 1].low, 1)

    def _said_as_two(self, number: Numeral, first: _Measure) -> Amount | None:
        """ "eleven twelve foot pounds", "thirty forty psi": a pair that is a range and no number of hundreds."""
        if len(number.parts) != 2 or number.form != "words":
            return None
        a, b = number.parts
        tens = a % 10 == 0 and b % 10 == 0
        if not (10 <= a < b <= 2 * a and (tens or first.said.unit.short in _SMALL_SPANS)):
            return None
        return self._amount(replace(first, number=b), a * first.said.scale)

    # ---- what may follow a unit

    def _with_tail(self, number: Numeral, first: _Measure) -> Amount | None:
        whole = self._tail(number, first)
        if self._is_rate(whole.end):
            return None
        if whole.end == first.end or whole.said is first.said:
            second = self._other_end(number, whole)
            if second:
                return None if self._is_rate(second.end) else second
        return self._amount(whole)

    def _tail(self, number: Numeral, first: _Measure) -> _Measure:
        """ "an inch and a quarter", "four minutes twenty seconds", "six foot two", "a volt seven"."""
        if number.form not in ("words", "digits"):
            return first
        more = and_fraction(self.words, first.end, self.n)
        if more and not self._unit_follows(more[1]):
            return _Measure(first.number + more[0], first.said, more[1])
        return self._compound(first) or self._short_second(first) or first

    def _compound(self, first: _Measure) -> _Measure | None:
        """Two or three units for one amount, the smaller after the larger."""
        found = self._smaller(first)
        return (found and self._smaller(found)) or found

    def _smaller(self, first: _Measure) -> _Measure | None:
        unit = first.said.unit
        if unit.short not in _FAMILY:
            return None
        at = first.end + (self._at(first.end) == "and")
        if at >= len(self.words) or self.words[at].gap not in ("", "-", ","):
            return None
        number = numeral_at(self.words, at, self.n)
        second = self.measured(number, at) if number and number.form != "ordinal" and not number.loose else None
        if second is None or _FAMILY.get(second.said.unit.short) != _FAMILY[unit.short]:
            return None
        big, small = unit.factor * first.said.scale, second.said.unit.factor * second.said.scale
        if not 0 < small < big or (second.number * small >= big and self.words[at].gap == ","):
            return None
        if second.said.unit is unit:  # "fourteen inches and thirty thou"
            return _Measure(first.value + second.value, replace(first.said, scale=1.0), second.end)
        total = self.units.convert(first.value, unit.short, second.said.unit.short) + second.value
        return _Measure(round(total / second.said.scale, 9), second.said, second.end)

    def _at(self, i: int) -> str:
        return self.words[i].low if i < len(self.words) else ""

    def _short_second(self, first: _Measure) -> _Measure | None:
        """The smaller unit is not said: "six foot two", "an hour twenty", "one volt two"."""
        said = self.words[first.end - 1].low
        joined = said in ("hour", "hours") and self.low(first.end) in self.n.join
        number = self.numeral(first.end + joined)
        if number is None or (number.form != "words" and not joined) or first.number != int(first.number) or number.parts:
            return None
        if unit_at(self.words, number.end, number, first.end, self.units) or self.low(number.end) in _TO:
            return None
        value = number.value
        if joined and not (value % 5 == 0 and self._closes(number.end)):
            return None
        if said == "foot" and 1 <= value < 12:
            return _Measure(first.number * 12 + value, self._plain("in"), number.end)
        if said in ("hour", "hours") and 5 <= value < 60 and not number.loose:
            return _Measure(first.number * 60 + value, self._plain("min"), number.end)
        if said == "volt" and 1 <= value <= 9 and first.number <= 3:
            return _Measure(first.number + value / 10, first.said, number.end)
        return None

    def _plain(self, short: str) -> SaidUnit:
        """The canonical form of a unit."""
        return next(s for s in self.units.by_head[{"in": "inch", "min": "minutes"}[short]] if s.unit.short == short)

    def _is_rate(self, end: int) -> bool:
        """ "five litres an hour" is no volume."""
        low = self.low(end)
        return low == "per" or (low in ("a", "an", "each", "every") and self.low(end + 1) in _EACH)

    def _other_end(self, number: Numeral, first: _Measure) -> Amount | None:
        """A range whose first end has the unit too: "5 mm to 8 mm", "a day or two", "12 volts to 14"."""
        at = self._second_number(first.end)
        if not at or at == first.end and self.words[at].gap != "-":
            return None
        second = self.numeral(at)
        if second is None or second.form == "ordinal":
            return None
        measure = self.measured(second, at)
        if measure is None:
            near = first.number < second.value <= 3 * first.number
            if not near or not self._closes(second.end) or second.loose:
                return None
            measure = _Measure(second.value, first.said, second.end)
        unit, other = first.said.unit, measure.said.unit
        if unit.dimension != other.dimension:
            return None
        low = first.value if unit is other else self.units.convert(first.value, unit.short, other.short)
        return self._amount(measure, low) if low < measure.value else None

    def _closes(self, end: int) -> bool:
        """Nothing that could be counted follows."""
        low = self.low(end)
        return not low or low in ("on", "at", "for", "is", "and", "in", "to", "before", "of", "but", "so", "with", "the", "then", "when", "now")  # fmt: skip

    # ---- seconds, thousands, cold

    def _seconds_read_as_fraction(self, number: Numeral) -> bool:
        """ "a thirty second run" is half a minute; "a thirty second of an inch" is not."""
        last = number.end - 1
        return (
            number.form == "fraction"
            and last - self.begin == 2
            and self.words[last].low == "second"
            and self.words[last].gap == ""
            and self.words[self.begin].low in self.n.article
            and bool(self.low(number.end))
            and self.low(number.end) not in _INCHES
        )

    def _seconds(self, number: Numeral) -> Amount | None:
        """ "a twenty second ramp": the ordinal is a number of seconds."""
        last = number.end - 1
        tens = self.n.ten.get(self.words[last - 1].low) if last > self.begin else None
        if tens is None or self.words[last].low != "second":
            return None
        spoken = Numeral(float(tens), last, "words")
        found = unit_at(self.words, last, spoken, self.begin, self.units)
        return self._amount(_Measure(spoken.value, *found)) if found and self.low(found[1]) else None

    def _kilo(self, number: Numeral) -> Amount | None:
        """ "5.2k" by itself is ohms."""
        low = self.words[self.begin].low
        if low[-1] != "k" or number.end != self.begin + 1 or not self._closes(number.end):
            return None
        said = next(s for s in self.units.by_head["k"] if s.words == ("k",))
        return self._amount(_Measure(number.value / 1000, said, number.end))

    def _below_zero(self, number: Numeral) -> Amount | None:
        """ "thirty below", "ten below zero"."""
        if self.low(number.end) != "below" or number.loose or number.form == "fraction":
            return None
        after = self.low(number.end + 1)
        if after and after not in _COLD or not after and number.value % 5:
            return None
        end = number.end + (2 if after in ("zero", "freezing") else 1)
        unit = self.units.by_short["deg"]
        return Amount(
            -number.value, -number.value, unit.short, "degrees", ("temperature",), self.begin, end, unit_said=False
        )

    def _amount(self, measure: _Measure, low: float | None = None) -> Amount:
        """The amount of a measure; `low` is the other end of a range, in the unit."""
        value, end, said = measure.value, measure.end, measure.said
        if "temperature" in said.quantities and self.low(end) == "below" and low is None:
            if self.low(end + 1) in ("zero", "freezing"):
                value, end = -value, end + 2
        bound, rough = bound_of(self.words, self.begin, end)
        value = _clean(value)
        return Amount(
            value if low is None else _clean(low), value, said.unit.short, said.name, said.quantities,
            self.begin, end, bound, rough,
        )  # fmt: skip


def _clean(value: float) -> float:
    """Without the dust of binary fractions: 35 thou are 0.035."""
    return float(f"{value:.12g}")
