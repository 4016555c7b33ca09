"""Mis-heard words: what speech to text made of trade words is taken back, where the surroundings bear it out."""

from __future__ import annotations

import re

from worklog_tui.extract.heard.words import Word
from worklog_tui.rulebook.misheard import Misheard, Row

REACH = 8
_PAIR = re.compile(r"\d{1,2}:\d+(?:\.\d+)?")


def clean(words: list[Word], misheard: Misheard, around: frozenset[str]) -> list[Word]:
    """The words with mis-heard ones put right; `around` are words that count as standing near (the machine's kind)."""
    out: list[Word] = []
    firsts, taken, size = misheard.firsts, 0, len(words)
    for i in [i for i, word in enumerate(words) if word[0] in firsts or ":" in word[0]]:  # most words are neither
        if i < taken:
            continue
        word = words[i]
        low, row = word[0], None
        if low in firsts and (found := misheard.get(low)) is not None:
            longer, alone = found
            rows = longer.get(words[i + 1][0], alone) if longer and i + 1 < size else alone
            row = _row(words, i, rows, around) if rows else None
        if row is not None:
            heard, meant, _ = row
            out += words[taken:i]
            taken = i + len(heard)
            last = words[taken - 1]
            out.append(Word(meant[0], word.start, last.end if len(meant) == 1 else word.end, word.gap))
            out.extend(Word(more, min(word.end, last.start), last.end, "") for more in meant[1:])
        elif ":" in low:
            out += (*words[taken:i], *_pair(words, i))
            taken = i + 1
    return out + words[taken:] if taken else words


def _row(words: list[Word], i: int, rows: tuple[Row, ...], around: frozenset[str]) -> Row | None:
    """The first of the rows that was heard at word i and fits what stands near."""
    for row in rows:
        heard, _, near = row
        if _heard(words, i, heard) and (not near or _near(words, i, near, around)):
            return row
    return None


def _heard(words: list[Word], i: int, heard: tuple[str, ...]) -> bool:
    if i + len(heard) > len(words):
        return False
    rest = range(1, len(heard))  # the first word is that of the index
    return all(words[i + k].low == heard[k] and words[i + k].gap in ("", "-") for k in rest)


def _near(words: list[Word], i: int, wanted: frozenset[str], around: frozenset[str]) -> bool:
    if wanted & around:
        return True
    return any(w.low in wanted or w.low.rstrip("s") in wanted for w in words[max(i - REACH, 0) : i + REACH + 1])


def _pair(words: list[Word], i: int) -> list[Word]:
    """`1:90 2:95` in a typed list: which one, then its value; a single `9:40` stays a time."""
    word = words[i]
    if not _PAIR.fullmatch(word.low) or not any(
        _PAIR.fullmatch(words[k].low) for k in (i - 1, i + 1) if 0 <= k < len(words)
    ):
        return [word]
    left, _, right = word.low.partition(":")
    cut = word.start + len(left)
    return [Word(left, word.start, cut, word.gap), Word(right, cut + 1, word.end, ":")]
