"""A quick no: whether a unit can follow the number that begins at a word."""

from __future__ import annotations

from worklog_tui.extract.heard.figures import VULGAR
from worklog_tui.extract.heard.words import Word
from worklog_tui.extract.numbers.measures import FILL, SHARES
from worklog_tui.extract.numbers.ranges import LEAD, TO
from worklog_tui.rulebook.units import Numerals, Units

_LOOK_AHEAD = 16
INSIDE = FILL | TO | LEAD | {"of", "and", "bit"}
"Words that may stand between a number and its unit."


def next_word(words: list[Word], i: int) -> str:
    """The word after word i, or nothing."""
    return words[i + 1].low if i + 1 < len(words) else ""


def unit_ahead(words: list[Word], i: int, numerals: Numerals, units: Units) -> bool:
    """A unit may come before anything that cannot stand in an amount; most numbers of a talk are turned down here."""
    heads, within = units.by_head, numerals.within
    low, after = words[i].low, next_word(words, i)
    if low[-1] == "k":
        return True
    if (low.isdigit() and after.isdigit() and not words[i + 1].gap) or (low == "a" and after in ("a", "of")):
        return False
    for k in range(i + 1, min(i + _LOOK_AHEAD, len(words))):
        word = words[k]
        low = word.low
        if word.gap not in ("", "-", "(") and words[k - 1].low not in numerals.join:
            return False
        if (low in heads and (low != "a" or words[k - 1].low[-1].isdigit())) or low in SHARES or low == "below":
            return True
        if not (low in within or low in INSIDE or low[0] in "0123456789.-+" or low[0] in VULGAR):
            return False
    return False
