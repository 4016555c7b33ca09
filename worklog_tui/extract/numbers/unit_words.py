"""Finds the unit that is said at a word, and decides whether a doubtful form is one here."""

from __future__ import annotations

from worklog_tui.extract.heard.words import Word
from worklog_tui.extract.numbers.numerals import Numeral
from worklog_tui.rulebook.units import Doubt, SaidUnit, Units

_LOOK_BACK = 3


def unit_at(words: list[Word], i: int, number: Numeral, begin: int, units: Units) -> tuple[SaidUnit, int] | None:
    """The longest unit whose words begin at i, after `number` that began at word `begin`; with the index after it.

    A pause may stand before the unit only when nothing stands before it in the amount (i is `begin`); a bracket may
    stand before a sure one ("20 (kg)").
    """
    if i >= len(words) or (words[i].gap not in ("", "-", "(") and i != begin):
        return None
    for said in units.by_head.get(words[i].low, ()):
        end = i + len(said.words)
        if end > len(words) or not _matches(words, i, said):
            continue
        if said.unit.short == "inH2O" and _lies(words, end, begin):
            continue
        if words[i].gap == "(" and (said.doubt or not _clause_ends(words, end)):
            continue
        if said.doubt is None or _holds(words, i, end, number, begin, said.doubt):
            return said, end
    return None


_DRAUGHT = frozenset("holds hold held holding reads read reading pulls pull draws drew blows gives gave makes".split())
"Verbs by which inches of water are a pressure, wherever it is."


def _lies(words: list[Word], end: int, begin: int) -> bool:
    """`Half an inch of water in the sump`: how deep it lies, no pressure."""
    return (
        end + 1 < len(words) and words[end].low == "in" and words[end + 1].low in ("the", "its", "my", "there")
        and not any(word.low in _DRAUGHT for word in words[max(0, begin - 4) : begin])
    )  # fmt: skip


def _matches(words: list[Word], i: int, said: SaidUnit) -> bool:
    if len(said.words) == 1:
        return True
    return all(words[i + k].low == w and words[i + k].gap in ("", "-") for k, w in enumerate(said.words) if k)


def in_figures(words: list[Word], begin: int) -> bool:
    """The number that begins here is written, not spelled."""
    low = words[begin].low
    return not low[0].isalpha()


def _holds(words: list[Word], i: int, end: int, number: Numeral, begin: int, doubt: Doubt) -> bool:
    """The surroundings let this form be a unit."""
    glued = words[i].start == words[i - 1].end
    if doubt.lone and _codelike(words, begin):
        return False
    value, whole = abs(number.value), number.value == int(number.value)
    following = words[end].low if end < len(words) and words[end].gap in ("", "-", "(") else ""
    if doubt.glued and not glued and following and following not in doubt.then:
        return False
    if doubt.digits and not in_figures(words, i - 1):
        return False
    if number.loose and number.value == 1:
        if not doubt.article and words[begin].low in ("a", "an"):
            return False
        if begin and words[begin - 1].low in doubt.not_a_after:
            return False
    if doubt.uncountable and not _is_uncountable(number, whole):
        return False
    if not doubt.least <= value <= doubt.most:
        return False
    if following and following in doubt.not_before and (not glued or len(words[i].low) == 1):
        return False
    if doubt.lone and following and words[end].gap == "-":
        return False
    if doubt.then and whole and not glued and following and following not in doubt.then:
        return False
    near = range(max(begin - _LOOK_BACK, 0), begin) if doubt.not_after else ()
    return not any(words[k].low in doubt.not_after for k in near)


def _is_uncountable(number: Numeral, whole: bool) -> bool:
    """Nobody has "point three bolts" or "two twelve bolts"; "three eighths bolts" are bolts."""
    if whole:
        return bool(number.parts) and number.value >= 100
    return number.form != "fraction" or number.value >= 2


def _codelike(words: list[Word], begin: int) -> bool:
    """The figure belongs to a code: another figure stands right before it, or letters are joined to it."""
    if not begin:
        return False
    before, gap = words[begin - 1].low, words[begin].gap
    return (not gap and before[-1].isdigit()) or (gap == "-" and before[0].isalpha() and not before.isdigit())


def _clause_ends(words: list[Word], end: int) -> bool:
    return end >= len(words) or words[end].gap not in ("", "-")
