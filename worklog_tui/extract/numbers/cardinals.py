"""Spoken whole numbers: "a hundred and forty", "twelve hundred", "two ten", "one oh five"."""

from __future__ import annotations

from worklog_tui.extract.heard.words import Word
from worklog_tui.rulebook.units import Numerals

Whole = tuple[float, int, tuple[float, ...]]
"Value, index of the word after it, and the two numbers that were said one after the other for it."


def follows(words: list[Word], i: int) -> bool:
    """Word i goes on without a pause."""
    return i < len(words) and words[i].gap in ("", "-")


def low_at(words: list[Word], i: int) -> str:
    """Word i, or nothing when a pause stands before it."""
    return words[i].low if i < len(words) and words[i].gap in ("", "-") else ""


def below_hundred(words: list[Word], i: int, n: Numerals) -> tuple[int, int] | None:
    """One to ninety-nine, and the index after it."""
    low = words[i].low
    if low in n.digit:
        return n.digit[low], i + 1
    if low in n.teen:
        return n.teen[low], i + 1
    if low in n.ten:
        ones = n.digit.get(low_at(words, i + 1))
        return (n.ten[low] + ones, i + 2) if ones else (n.ten[low], i + 1)
    return None


def cardinal(words: list[Word], i: int, n: Numerals) -> Whole | None:
    """A spoken whole number: "a hundred and forty", "twelve hundred", "seven thousand", "two ten", "one oh five"."""
    low = words[i].low
    if low in n.article or (low in n.scale and not low.endswith("s")):
        at = i + 1 if low in n.article else i
        scale = low_at(words, at) if at > i else low
        if scale in n.dozen:
            return float(n.dozen[scale]), at + 1, ()
        return _with_scale(words, 1, at, n) if scale in n.scale and not scale.endswith("s") else None
    small = below_hundred(words, i, n)
    if small is None:
        return None
    value, end = small
    if low_at(words, end) in n.scale:
        return _with_scale(words, value, end, n)
    return _pair(words, value, end, n) or (float(value), end, ())


def _with_scale(words: list[Word], times: int, at: int, n: Numerals) -> Whole:
    """`times` hundreds, thousands or millions, with what follows in falling scales."""
    total, group, end, limit = 0, times, at, 10**15
    scale = n.scale[words[at].low]
    while scale and scale < limit:
        end += 1
        rest = _rest(words, end, n, 100 if scale == 100 else 1000)
        if scale == 100:
            group = group * 100 + (rest[0] if rest else 0)
        else:
            total, limit, group = total + group * scale, scale, rest[0] if rest else 0
        end = rest[1] if rest else end
        scale = n.scale.get(low_at(words, end), 0) if group else 0
        scale = 0 if scale == 100 else scale
    return float(total + group), end, ()


def _rest(words: list[Word], end: int, n: Numerals, limit: int) -> tuple[int, int] | None:
    """What follows a scale word, with or without "and"."""
    at = end
    if at < len(words) and words[at].low in n.join and words[at].gap in ("", "-"):
        at += 1
        if at >= len(words) or words[at].gap not in ("", "-", ","):
            return None
    elif not follows(words, at):
        return None
    small = below_hundred(words, at, n)
    if small is None:
        return None
    value, after = small
    following = low_at(words, after)
    if following in n.part:
        return None  # "a hundred and three quarters" is read by the caller
    scale = n.scale.get(following, 0)
    if scale == 100:
        if limit == 100 or value >= 10:
            return None
        more = _rest(words, after + 1, n, 100)
        return (value * 100 + more[0], more[1]) if more else (value * 100, after + 1)
    return None if scale and limit == 1000 and scale == 1000 else (value, after)


def _pair(words: list[Word], a: int, end: int, n: Numerals) -> Whole | None:
    """Two numbers said one after the other for one: "one twenty" is 120, "twenty two fifty" 2250, "one oh five" 105."""
    after = low_at(words, end)
    if after in n.nothing:
        return _with_nought(words, a, end, n)
    if after not in n.teen and after not in n.ten:
        return None
    second = below_hundred(words, end, n)
    assert second is not None
    b, last = second
    following = low_at(words, last)
    if last == end + 2 and (following in n.teen or following in n.ten or following in n.scale):
        b, last = b // 10 * 10, end + 1  # "one twenty one forty" is 120 and 140
        following = ""
    if following in n.scale or following in n.part or (following in n.point and b < 20):
        return None
    if a >= 10 and following in n.no_pair_before:
        return None
    return float(100 * a + b), last, (float(a), float(b))


def _with_nought(words: list[Word], a: int, end: int, n: Numerals) -> Whole | None:
    """ "one oh five", "one zero five", "seven-zero"."""
    ones = n.digit.get(low_at(words, end + 1))
    if ones and low_at(words, end + 2) not in n.point:
        return float(100 * a + ones), end + 2, (float(a), float(ones))
    if a < 10 and words[end].gap == "-":
        return float(10 * a), end + 1, ()
    return None
