"""A number with its unit, and what may stand between: "two full turns", "half an hour", "six tenths of a thou"."""

from __future__ import annotations

from dataclasses import dataclass

from worklog_tui.extract.heard.words import Word
from worklog_tui.extract.numbers.numerals import Numeral, numeral_at
from worklog_tui.extract.numbers.unit_words import unit_at
from worklog_tui.rulebook.units import Numerals, SaidUnit, Units

FILL = frozenset("full whole good solid clear bare more odd clean extra fewer".split())
SHARES = {"tenth": 10, "tenths": 10, "hundredth": 100, "hundredths": 100, "thousandth": 1000, "thousandths": 1000}
MEAT = frozenset(
    (
        "wear play slop slack float lift meat lining tread backlash shake clearance travel brush rust "
        "sludge gap end side"
    ).split()
)
"What a sixteenth is told of."
STANDS = frozenset("proud low high deep wide shy tight slack loose below above undersize oversize".split())
"How something stands by a sixteenth: `a full thirty-second proud`."
_EACH = frozenset({
    "second", "minute", "hour", "day", "week", "month", "year", "mile", "inch", "foot", "cell", "litre", "piece",
    "kilo", "share", "unit",
})  # fmt: skip
_LENGTHS = frozenset({"foot", "metre", "meter", "yard", "inch"})
_CLOSING = frozenset({
    "on", "at", "for", "is", "and", "in", "to", "before", "of", "but", "so", "with", "the", "then", "when", "now",
    "later", "after", "under", "over", "off", "out", "either", "left", "ago", "max", "tops", "each", "all", "or",
    "cold", "hot",
})  # fmt: skip


@dataclass(frozen=True, slots=True)
class Measure:
    """One number with its unit: `number` as said, `end` the index of the word after the unit."""

    number: float
    said: SaidUnit
    end: int

    @property
    def value(self) -> float:
        """The value in the unit."""
        return self.number * self.said.scale


@dataclass(frozen=True, slots=True)
class Look:
    """A look at words for measures; every question looks a bounded number of words ahead."""

    words: list[Word]
    n: Numerals
    units: Units

    def low(self, i: int) -> str:
        """Word i, or nothing when a pause stands before it."""
        return self.words[i].low if i < len(self.words) and self.words[i].gap in ("", "-") else ""

    def at(self, i: int) -> str:
        """Word i, after whatever pause."""
        return self.words[i].low if i < len(self.words) else ""

    def numeral(self, i: int) -> Numeral | None:
        """The numeral that begins at word i, or None past the end."""
        return numeral_at(self.words, i, self.n) if self.low(i) else None

    def unit_follows(self, i: int) -> bool:
        """A unit of two letters or more may begin at word i."""
        low = self.low(i)
        return len(low) > 1 and low in self.units.by_head and low not in ("in", "per", "of")

    def closes(self, end: int) -> bool:
        """Nothing that could be counted stands at word `end`."""
        low = self.low(end)
        return not low or low in _CLOSING

    def is_rate(self, end: int) -> bool:
        """ "five litres an hour" is no volume."""
        low = self.low(end)
        return low == "per" or (low in ("a", "an", "each", "every") and self.low(end + 1) in _EACH)

    def along(self, end: int) -> bool:
        """ "four thou per foot" is how a thing leans: a length, told over so much of it."""
        return self.low(end + 1) in _LENGTHS

    def measured(self, number: Numeral, begin: int) -> Measure | None:
        """The measure of a number that began at word `begin`, or None when no unit follows."""
        end = number.end
        word = self.low(end)
        found = unit_at(self.words, end, number, begin, self.units)
        if found and (word not in SHARES or len(found[0].words) > 1):
            return Measure(number.value, *found)
        if word == "and" and self.low(end + 1) == "a" and self.low(end + 2) == "bit":  # "six and a bit amps"
            found = unit_at(self.words, end + 3, number, begin, self.units)
            return Measure(number.value, *found) if found else None
        if word == "of" and self.low(end - 1) in self.n.couple:  # "a couple of thou"
            found = unit_at(self.words, end + 1, number, begin, self.units)
            told = found is not None and found[0].unit.dimension == "length" and self._of_meat(found[1])
            return Measure(number.value, *found) if found and told else None
        if word in FILL and (found := unit_at(self.words, end + 1, number, begin, self.units)):
            return Measure(number.value, *found)
        if word in SHARES:
            return self._share(number, begin, number.value / SHARES[word], end)
        if number.form in ("fraction", "decimal"):
            return self._of_one(number, begin, number.value, end)
        return None

    def part_of(self, order: Numeral, begin: int) -> Measure | None:
        """ "sixteenth of an inch", "tenth of a volt", "eighth inch": an ordinal that is a part of one."""
        part = Numeral(1 / order.value, order.end, "fraction") if order.value >= 3 else None
        if part is None or part.end != begin + 1 + (order.value > 20):
            return None
        if order.value in (8, 16, 32, 64) and self.low(order.end) in ("inch", "in", '"'):
            return self.measured(part, begin)
        if (
            order.value in (8, 16, 32, 64)
            and self.low(order.end) in STANDS
            and begin
            and (self.words[begin - 1].low in FILL | {"a", "an"})
        ):
            return self._inches(part)
        if self.low(order.end) != "of":
            return None
        if (found := self._of_one(part, begin, part.value, part.end)) is not None:
            return found
        return self._of_an_inch(part) if order.value in (8, 16, 32, 64) else None

    def _of_meat(self, i: int) -> bool:
        """ "of wear", "play": what a small length is told of."""
        return self.low(i + (self.low(i) == "of")) in MEAT

    def _of_an_inch(self, part: Numeral) -> Measure | None:
        """ "a sixteenth of lining left": such a part of nothing that is counted is one of an inch."""
        return self._inches(part) if self.low(part.end + 1) in MEAT else None

    def _inches(self, part: Numeral) -> Measure | None:
        inch = next((u for u in self.units.by_head.get("inch", ()) if u.words == ("inch",)), None)
        return Measure(part.value, inch, part.end) if inch is not None else None

    def _of_one(self, number: Numeral, begin: int, value: float, end: int) -> Measure | None:
        """ "of a volt", "an hour", "of inch"."""
        of = self.low(end) == "of"
        article = self.low(end + of) in self.n.article
        if not (of or article):
            return None
        found = unit_at(self.words, end + of + article, number, begin, self.units)
        return Measure(value, *found) if found else None

    def _share(self, number: Numeral, begin: int, value: float, end: int) -> Measure | None:
        """Tenths and the like: "six tenths of a thou", "two tenths volt", else what the fitter means by them alone."""
        if of := self._of_one(number, begin, value, end + 1):
            return of
        direct = unit_at(self.words, end + 1, number, begin, self.units)
        if direct and direct[0].unit.dimension != "time":
            return Measure(value, *direct)
        alone = unit_at(self.words, end, number, begin, self.units)
        return Measure(number.value, *alone) if alone else None
