"""Finds the number that begins at a word, spoken or in figures.

Every step looks a bounded number of words ahead; a numeral takes at most twelve.
"""

from __future__ import annotations

from dataclasses import dataclass

from worklog_tui.extract.heard.figures import VULGAR, figure
from worklog_tui.extract.heard.words import Word
from worklog_tui.extract.numbers.broken_numbers import and_fraction, decimals, fraction_of_one
from worklog_tui.extract.numbers.cardinals import cardinal, follows, low_at
from worklog_tui.rulebook.units import Numerals


@dataclass(frozen=True, slots=True)
class Numeral:
    """A number: its value and the index of the word after it.

    `form` is digits, words, fraction, decimal or ordinal. `loose`: a number only with a unit after it or in a list
    ("one", "a", "half"). `parts`: the two numbers that were said one after the other ("two ten" is 210 of 2 and 10).
    """

    value: float
    end: int
    form: str
    loose: bool = False
    parts: tuple[float, ...] = ()


def numeral_at(words: list[Word], i: int, numerals: Numerals) -> Numeral | None:
    """The longest numeral that begins at word i, or None."""
    low = words[i].low
    first = low[0]
    if first.isdigit() or first in "+-." or first in VULGAR:
        return _figures(words, i, numerals)
    if low not in numerals.starts:
        return None
    return _spoken(words, i, numerals)


def _figures(words: list[Word], i: int, n: Numerals) -> Numeral | None:
    found = figure(words[i].low)
    if found is None:
        return None
    value, form, parts = found
    if form in ("fraction", "ordinal"):
        return Numeral(value, i + 1, form)
    after = low_at(words, i + 1)
    if not after:
        return Numeral(value, i + 1, form, parts=parts)
    if form == "digits":
        if after in n.point and (run := decimals(words, i + 2, n, True)):
            return _scaled(words, value + run[0], run[1], "decimal", n)
        more = figure(after) if after[0].isdigit() or after in VULGAR else None
        if more and more[1] == "fraction" and more[0] < 1:
            return Numeral(value + more[0], i + 2, "fraction")
        if mixed := and_fraction(words, i + 1, n):
            return _scaled(words, value + mixed[0], mixed[1], "fraction", n)
    return _scaled(words, value, i + 1, form, n, parts)


def _scaled(
    words: list[Word], value: float, end: int, form: str, n: Numerals, parts: tuple[float, ...] = ()
) -> Numeral:
    """A number with "hundred", "thousand", "million" or "dozen" behind it."""
    after = low_at(words, end)
    scale = n.scale.get(after) or n.dozen.get(after)
    if scale and value < scale * 10 and not parts:
        return Numeral(value * scale, end + 1, form)
    return Numeral(value, end, form, parts=parts)


def _spoken(words: list[Word], i: int, n: Numerals) -> Numeral | None:
    low = words[i].low
    if low in n.minus:
        return _minus(words, i, n)
    if low in n.point:
        run = decimals(words, i + 1, n, False)
        if run is None or (words[i].gap in ("", "-") and i and words[i - 1].low in n.no_point_after):
            return None
        return _scaled(words, run[0], run[1], "decimal", n)
    if part := fraction_of_one(words, i, n):
        return _of_many(words, Numeral(part[0], part[1], "fraction", part[2]), n)
    if low in n.couple or (low in n.article and low_at(words, i + 1) in n.couple):
        return Numeral(2.0, i + 1 + (low in n.article), "words", True)
    if low in n.nothing:
        return _nothing(words, i, n)
    if ordinal := _ordinal(words, i, n):
        return ordinal
    if whole := cardinal(words, i, n):
        value, end, parts = whole
        return _extended(words, Numeral(value, end, "words", low in n.loose and end == i + 1, parts), n)
    if low in n.article or low in n.single:
        return Numeral(1.0, i + 1, "words", True)
    return None


def _minus(words: list[Word], i: int, n: Numerals) -> Numeral | None:
    if not follows(words, i + 1) or words[i + 1].low in n.minus or words[i + 1].low in n.article:
        return None
    if i > 1 and words[i - 1].low == "or" and words[i - 2].low == "plus":
        return None
    positive = numeral_at(words, i + 1, n)
    if positive is None or positive.form == "ordinal" or (i and numeral_ends(words, i - 1, n)):
        return None
    return Numeral(-positive.value, positive.end, positive.form)


def numeral_ends(words: list[Word], i: int, n: Numerals) -> bool:
    """Word i is a figure or a number word: what follows "ten minus" is no negative number."""
    low = words[i].low
    return low[0].isdigit() or low in n.digit or low in n.teen or low in n.ten or low in n.scale


def _extended(words: list[Word], whole: Numeral, n: Numerals) -> Numeral:
    """A spoken whole number with what may follow it: decimals, a fraction, a scale."""
    after = low_at(words, whole.end)
    if after in n.point and (run := decimals(words, whole.end + 1, n, True)):
        return _scaled(words, whole.value + run[0], run[1], "decimal", n)
    if mixed := and_fraction(words, whole.end, n):
        return _scaled(words, whole.value + mixed[0], mixed[1], "fraction", n)
    if after in n.dozen:
        return Numeral(whole.value * n.dozen[after], whole.end + 1, "words")
    return whole


def _nothing(words: list[Word], i: int, n: Numerals) -> Numeral | None:
    low = words[i].low
    if low_at(words, i + 1) in n.point and (run := decimals(words, i + 2, n, True)):
        return Numeral(run[0], run[1], "decimal")
    if low == "ought":
        return None
    return Numeral(0.0, i + 1, "words", low in n.loose)


def _ordinal(words: list[Word], i: int, n: Numerals) -> Numeral | None:
    low = words[i].low
    if low in n.ordinal:
        return Numeral(float(n.ordinal[low]), i + 1, "ordinal", low in n.loose)
    if low in n.ten and 0 < (ones := n.ordinal.get(low_at(words, i + 1), 0)) < 10:
        return Numeral(float(n.ten[low] + ones), i + 2, "ordinal")
    return None


def _of_many(words: list[Word], fraction: Numeral, n: Numerals) -> Numeral:
    """ "half a dozen", "half a million"."""
    if low_at(words, fraction.end) in n.article:
        after = low_at(words, fraction.end + 1)
        many = n.dozen.get(after) or n.scale.get(after)
        if many:
            return Numeral(fraction.value * many, fraction.end + 2, "words")
    return fraction
