"""Finds the number that begins at a word, spoken or in figures.

Every step looks a bounded number of words ahead; a numeral takes at most twelve.
"""

from __future__ import annotations

from dataclasses import dataclass

from worklog_tui.extract.figures import VULGAR, figure
from worklog_tui.extract.words import Word
from worklog_tui.rulebook.units import Numerals

_RUN = 6  # figures behind a spoken point


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


def _joined(words: list[Word], i: int) -> bool:
    """Word i goes on without a pause."""
    return i < len(words) and words[i].gap in ("", "-")


def _low(words: list[Word], i: int) -> str:
    """Word i, or nothing when a pause stands before it."""
    return words[i].low if i < len(words) and words[i].gap in ("", "-") else ""


def _figures(words: list[Word], i: int, n: Numerals) -> Numeral | None:
    found = figure(words[i].low)
    if found is None:
        return None
    value, form, parts = found
    if form in ("fraction", "ordinal"):
        return Numeral(value, i + 1, form)
    after = _low(words, i + 1)
    if not after:
        return Numeral(value, i + 1, form, parts=parts)
    if form == "digits":
        if after in n.point and (run := _decimals(words, i + 2, n, True)):
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
    after = _low(words, end)
    scale = n.scale.get(after) or n.dozen.get(after)
    if scale and value < scale * 10 and not parts:
        return Numeral(value * scale, end + 1, form)
    return Numeral(value, end, form, parts=parts)


def _spoken(words: list[Word], i: int, n: Numerals) -> Numeral | None:
    low = words[i].low
    if low in n.minus:
        return _minus(words, i, n)
    if low in n.point:
        run = _decimals(words, i + 1, n, False)
        if run is None or (words[i].gap in ("", "-") and i and words[i - 1].low in n.no_point_after):
            return None
        return _scaled(words, run[0], run[1], "decimal", n)
    if fraction := _fraction(words, i, n):
        return _of_many(words, fraction, n)
    if low in n.couple or (low in n.article and _low(words, i + 1) in n.couple):
        return Numeral(2.0, i + 1 + (low in n.article), "words", True)
    if low in n.nothing:
        return _nothing(words, i, n)
    if ordinal := _ordinal(words, i, n):
        return ordinal
    if whole := _cardinal(words, i, n):
        return _extended(words, whole, n)
    if low in n.article or low in n.single:
        return Numeral(1.0, i + 1, "words", True)
    return None


def _minus(words: list[Word], i: int, n: Numerals) -> Numeral | None:
    if not _joined(words, i + 1) or words[i + 1].low in n.minus or words[i + 1].low in n.article:
        return None
    positive = numeral_at(words, i + 1, n)
    if positive is None or positive.form == "ordinal" or (i and numeral_ends(words, i - 1, n)):
        return None
    return Numeral(-positive.value, positive.end, positive.form)


def numeral_ends(words: list[Word], i: int, n: Numerals) -> bool:
    """Word i is a figure or a number word: what follows "ten minus" is no negative number."""
    low = words[i].low
    return low[0].isdigit() or low in n.digit or low in n.teen or low in n.ten


def _extended(words: list[Word], whole: Numeral, n: Numerals) -> Numeral:
    """A spoken whole number with what may follow it: decimals, a fraction, a scale."""
    after = _low(words, whole.end)
    if after in n.point and (run := _decimals(words, whole.end + 1, n, True)):
        return _scaled(words, whole.value + run[0], run[1], "decimal", n)
    if mixed := and_fraction(words, whole.end, n):
        return _scaled(words, whole.value + mixed[0], mixed[1], "fraction", n)
    if after in n.dozen:
        return Numeral(whole.value * n.dozen[after], whole.end + 1, "words")
    return whole


def _nothing(words: list[Word], i: int, n: Numerals) -> Numeral | None:
    low = words[i].low
    if _low(words, i + 1) in n.point and (run := _decimals(words, i + 2, n, True)):
        return Numeral(run[0], run[1], "decimal")
    if low == "ought":
        return None
    return Numeral(0.0, i + 1, "words", low in n.loose)


def _below_hundred(words: list[Word], i: int, n: Numerals) -> tuple[int, int] | None:
    """One to ninety-nine, and the index after it."""
    low = words[i].low
    if low in n.digit:
        return n.digit[low], i + 1
    if low in n.teen:
        return n.teen[low], i + 1
    if low in n.ten:
        ones = n.digit.get(_low(words, i + 1))
        return (n.ten[low] + ones, i + 2) if ones else (n.ten[low], i + 1)
    return None


def _cardinal(words: list[Word], i: int, n: Numerals) -> Numeral | None:
    """A spoken whole number: "a hundred and forty", "twelve hundred", "seven thousand", "two ten", "one oh five"."""
    low = words[i].low
    if low in n.article or (low in n.scale and not low.endswith("s")):
        at = i + 1 if low in n.article else i
        scale = _low(words, at) if at > i else low
        if scale in n.dozen:
            return Numeral(float(n.dozen[scale]), at + 1, "words")
        return _with_scale(words, 1, at, n) if scale in n.scale and not scale.endswith("s") else None
    small = _below_hundred(words, i, n)
    if small is None:
        return None
    value, end = small
    if _low(words, end) in n.scale:
        return _with_scale(words, value, end, n)
    return _pair(words, value, end, n) or Numeral(float(value), end, "words", low in n.loose and end == i + 1)


def _with_scale(words: list[Word], times: int, at: int, n: Numerals) -> Numeral:
    """`times` hundreds, thousands or millions, with what follows in falling scales."""
    total, group, end = 0, times, at
    limit = 10**15
    while (scale := n.scale.get(_low(words, end) if end > at else words[end].low, 0)) and scale < limit:
        if scale == 100:
            group *= 100
            end += 1
            rest = _rest(words, end, n, 100)
            if rest:
                group, end = group + rest[0], rest[1]
            limit = 10**15 if group < 10**6 and total == 0 else limit
            if _low(words, end) not in n.scale or n.scale[_low(words, end)] == 100:
                break
            continue
        total, limit = total + group * scale, scale
        end += 1
        rest = _rest(words, end, n, 1000)
        if rest is None:
            group = 0
            break
        group, end = rest
    return Numeral(float(total + group), end, "words")


def _rest(words: list[Word], end: int, n: Numerals, limit: int) -> tuple[int, int] | None:
    """What follows a scale word, with or without "and"."""
    at = end
    if at < len(words) and words[at].low in n.join and words[at].gap in ("", "-"):
        at += 1
        if at >= len(words) or words[at].gap not in ("", "-", ","):
            return None
    elif not _joined(words, at):
        return None
    small = _below_hundred(words, at, n)
    if small is None:
        return None
    value, after = small
    following = _low(words, after)
    if following in n.part:
        return None  # "a hundred and three quarters" is read by the caller
    scale = n.scale.get(following, 0)
    if scale == 100:
        if limit == 100 or value >= 10:
            return None
        more = _rest(words, after + 1, n, 100)
        return (value * 100 + more[0], more[1]) if more else (value * 100, after + 1)
    return None if scale and limit == 1000 and scale == 1000 else (value, after)


def _pair(words: list[Word], a: int, end: int, n: Numerals) -> Numeral | None:
    """Two numbers said one after the other for one: "one twenty" is 120, "twenty two fifty" 2250, "one oh five" 105."""
    after = _low(words, end)
    if after in n.nothing and after not in ("zero", "ought"):
        ones = n.digit.get(_low(words, end + 1))
        if ones and _low(words, end + 2) not in n.point:
            return Numeral(float(100 * a + ones), end + 2, "words", parts=(float(a), float(ones)))
        return None
    if after not in n.teen and after not in n.ten:
        return None
    second = _below_hundred(words, end, n)
    assert second is not None
    b, last = second
    following = _low(words, last)
    if last == end + 2 and (following in n.teen or following in n.ten or following in n.scale):
        b, last = b // 10 * 10, end + 1  # "one twenty one forty" is 120 and 140
        following = ""
    if following in n.scale or following in n.part or (following in n.point and b < 20):
        return None
    return Numeral(float(100 * a + b), last, "words", parts=(float(a), float(b)))


def _decimals(words: list[Word], i: int, n: Numerals, whole: bool) -> tuple[float, int] | None:
    """The figures behind a point: the value below one and the index after them; `whole`: a number stood before."""
    figures: list[str] = []
    while len(figures) < _RUN and _joined(words, i):
        low = words[i].low
        if low in n.digit or low in n.nothing:
            figures.append(str(n.digit.get(low, 0)))
        elif low.isascii() and low.isdigit() and len(low) <= _RUN:
            figures.append(low)
        elif low in n.heard and (whole if not figures else figures[-1] == "0"):
            figures.append(str(n.heard[low]))
        elif (low in n.teen or low in n.ten) and all(f == "0" for f in figures):
            value, i = _below_hundred(words, i, n) or (0, i)
            figures.append(str(value))
            break
        else:
            break
        i += 1
    if len(figures) > 1 and figures[-1] != "0" and len(figures[-1]) == 1 and _belongs_on(_low(words, i), n):
        figures.pop()
        i -= 1
    return (float("0." + "".join(figures)), i) if figures else None


def _belongs_on(following: str, n: Numerals) -> bool:
    """The figure before this word begins the next number: "twelve point six one fifteen"."""
    return following in n.point or following in n.scale or following in n.teen or following in n.ten


def _fraction(words: list[Word], i: int, n: Numerals) -> Numeral | None:
    """A fraction of one: "three quarters", "a half", "five sixteenths", "one thirty second", "half"."""
    low = words[i].low
    if low in ("half", "quarter"):
        return Numeral(1 / n.part[low], i + 1, "fraction", True)
    if low in n.article:
        top, end, named = 1, i + 1, True
    elif small := _below_hundred(words, i, n):
        (top, end), named = small, False
    else:
        return None
    after = _low(words, end)
    bottom = n.part.get(after, 0)
    if bottom:
        fits = top < bottom or (bottom == 2 and after == "halves")
        if not fits or (top > 1 and bottom in (2, 3, 5, 6) and not after.endswith("s")):
            return None
        return Numeral(top / bottom, end + 1, "fraction", named and bottom not in (2, 4))
    bottom = n.part_after_ten.get((after, _low(words, end + 1)), 0) if after in n.ten else 0
    if bottom and top % 2 and top < bottom:
        return Numeral(top / bottom, end + 2, "fraction", named)
    return None


def _of_many(words: list[Word], fraction: Numeral, n: Numerals) -> Numeral:
    """ "half a dozen", "half a million"."""
    if _low(words, fraction.end) in n.article:
        after = _low(words, fraction.end + 1)
        many = n.dozen.get(after) or n.scale.get(after)
        if many:
            return Numeral(fraction.value * many, fraction.end + 2, "words")
    return fraction


def and_fraction(words: list[Word], i: int, n: Numerals) -> tuple[float, int] | None:
    """The fraction behind "and", and the index after it."""
    if _low(words, i) not in n.join or not _joined(words, i + 1):
        return None
    low = words[i + 1].low
    if low[0].isdigit() or low in VULGAR:
        found = figure(low)
        return (found[0], i + 2) if found and found[1] == "fraction" and found[0] < 1 else None
    fraction = _fraction(words, i + 1, n)
    return (fraction.value, fraction.end) if fraction and fraction.value < 1 else None


def _ordinal(words: list[Word], i: int, n: Numerals) -> Numeral | None:
    low = words[i].low
    if low in n.ordinal:
        return Numeral(float(n.ordinal[low]), i + 1, "ordinal", low in n.loose)
    if low in n.ten and 0 < (ones := n.ordinal.get(_low(words, i + 1), 0)) < 10:
        return Numeral(float(n.ten[low] + ones), i + 2, "ordinal")
    return None
