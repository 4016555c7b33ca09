"""Spoken parts of one: decimals behind a point, and fractions."""

from __future__ import annotations

from worklog_tui.extract.heard.figures import VULGAR, figure
from worklog_tui.extract.heard.words import Word
from worklog_tui.extract.numbers.cardinals import below_hundred, follows, low_at
from worklog_tui.rulebook.units import Numerals

Part = tuple[float, int, bool]
"Value, index of the word after it, and whether it is a number only with a unit behind it."
_RUN = 6  # figures behind a spoken point


def decimals(words: list[Word], i: int, n: Numerals, whole: bool) -> tuple[float, int] | None:
    """The figures behind a point: the value below one and the index after them; `whole`: a number stood before."""
    figures: list[str] = []
    while len(figures) < _RUN and follows(words, i):
        low = words[i].low
        if low in n.digit or low in n.nothing:
            figures.append(str(n.digit.get(low, 0)))
        elif low.isascii() and low.isdigit() and len(low) <= _RUN:
            figures.append(low)
        elif low in n.heard and (whole if not figures else figures[-1] == "0"):
            figures.append(str(n.heard[low]))
        elif (low in n.teen or low in n.ten) and all(f == "0" for f in figures):
            value, i = below_hundred(words, i, n) or (0, i)
            figures.append(str(value))
            break
        else:
            break
        i += 1
    if len(figures) > 1 and figures[-1] != "0" and len(figures[-1]) == 1 and _belongs_on(low_at(words, i), n):
        figures.pop()
        i -= 1
    return (float("0." + "".join(figures)), i) if figures else None


def _belongs_on(following: str, n: Numerals) -> bool:
    """The figure before this word begins the next number: "twelve point six one fifteen"."""
    return following in n.point or following in n.scale or following in n.teen or following in n.ten


def fraction_of_one(words: list[Word], i: int, n: Numerals) -> Part | None:
    """A fraction of one: "three quarters", "a half", "five sixteenths", "one thirty second", "half"."""
    low = words[i].low
    if low in ("half", "quarter"):
        return 1 / n.part[low], i + 1, True
    if low in n.article:
        top, end, named = 1, i + 1, True
    elif small := below_hundred(words, i, n):
        (top, end), named = small, False
    else:
        return None
    after = low_at(words, end)
    bottom = n.part.get(after, 0)
    if bottom:
        fits = top < bottom or (bottom == 2 and after == "halves")
        if not fits or (top > 1 and bottom in (2, 3, 5, 6) and not after.endswith("s")):
            return None
        return top / bottom, end + 1, named and bottom not in (2, 4)
    bottom = n.part_after_ten.get((after, low_at(words, end + 1)), 0) if after in n.ten else 0
    if bottom and top % 2 and top < bottom:
        return top / bottom, end + 2, named
    return None


def and_fraction(words: list[Word], i: int, n: Numerals) -> tuple[float, int] | None:
    """The fraction behind "and", and the index after it."""
    if low_at(words, i) not in n.join or not follows(words, i + 1):
        return None
    low = words[i + 1].low
    if low[0].isdigit() or low in VULGAR:
        found = figure(low)
        return (found[0], i + 2) if found and found[1] == "fraction" and found[0] < 1 else None
    if low in n.article and (share := n.share.get(low_at(words, i + 2))):
        return (1 / share, i + 3) if low_at(words, i + 3) != "of" else None
    fraction = fraction_of_one(words, i + 1, n)
    return fraction[:2] if fraction and fraction[0] < 1 else None
