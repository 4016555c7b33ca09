"""Whether a line tells what a comment asks for: the figure, the day, the deed, the reason, how it came out."""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence
from functools import lru_cache

from worklog_tui.logbook.comment_words import CommentWords, Wanted, holds_any
from worklog_tui.logbook.told_lines import ToldLines, stems
from worklog_tui.logbook.words import SIDES, raw_words
from worklog_tui.model import Fact, Reading, Work

_FITS, LACKS, _MEASURED, _WHAT = 1.5, 2.0, 0.5, 2.0
"What was asked for is there, or is not; a measure was read there; it was the measure asked for."
_FURTHER = 0.5
"What else was asked for counts so much."
_ASKING = re.compile(r"\b(?:whats?|which|hows?)((?: [\w/%-]+){1,4})")
_NUMBER = re.compile(
    r"\d|\b(?:two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|thir|four|fif|six|seven|eigh|nine)"
    r"(?:teen|ty)?\b|\b(?:twenty|thirty|forty|fifty|hundred|thousand|thou)\b"
)


def wanted_in(words: CommentWords, sentence: str) -> list[Wanted]:
    """What the sentence of a question asks for; a want that names its kind comes first: how much does it weigh."""
    soon = {word for row in _ASKING.findall(sentence) for word in row.split()}
    said = {n: _longest(words.wants[n], sentence) for n in sorted(words.may_say("wants", sentence))}
    found = [
        one
        for n, one in enumerate(words.wants)
        if (said.get(n) and not _within_another(said[n], said.values()))
        or one.near & soon
        or (one.asks and one.asks.search(sentence))
    ]
    must = [one for one in found if one.must]
    return [one for one in must if one.quantities or one.pattern or one.holds] or must or found


def _longest(one: Wanted, sentence: str) -> str:
    """The longest of the phrases of a want that a sentence holds; empty when it holds none."""
    spaced = f" {sentence} "
    if not holds_any(spaced, one.says):
        return ""
    return max((phrase for phrase in one.says if f" {phrase} " in spaced), key=len)


def _within_another(phrase: str, phrases: Iterable[str]) -> bool:
    return any(phrase != other and f" {phrase} " in f" {other} " for other in phrases)


def fitting(
    lines: ToldLines, note: str, wanted: Sequence[Wanted], facts: Sequence[Fact], named: bool, told: bool = True
) -> float | None:
    """What it speaks for a line that it holds what is wanted; None when it must and does not.

    `facts` are those of the line about the thing; `named` tells whether its words name the thing, or, where not `told`,
    whether only a line shortly before does: what is read there of another thing by its name is then no answer.
    """
    if not wanted:
        return 0.0
    readings = lines.readings(note)
    mine = [f for f in readings if _unnamed(lines, note, f)]
    fits: list[float] = []
    for one in wanted:
        of_it = [f for f in facts if isinstance(f, Reading) and f.quantity in one.quantities]
        near = named and any(f.quantity in one.quantities for f in (readings if told else mine))
        if of_it or near or _holds(lines, note, one):
            worth = _FITS + _MEASURED * (one.number and bool(readings)) + _WHAT * bool(of_it) + bool(near)
            fits.append(worth)
    if not fits:
        return None if any(one.must for one in wanted) else -LACKS
    return max(fits) + _FURTHER * (sum(fits) - max(fits))


def holds_wanted(lines: ToldLines, note: str, wanted: Sequence[Wanted], told: bool = True) -> bool:
    """Whether a line holds what is asked for, of whatever thing; where it does not tell of it, of none by its name."""
    read = {fact.quantity for fact in lines.readings(note) if told or _unnamed(lines, note, fact)}
    return any(_holds(lines, note, one) or not read.isdisjoint(one.quantities) for one in wanted)


def _unnamed(lines: ToldLines, note: str, fact: Reading) -> bool:
    """Whether the words of a line do not name what was read there: it may be of the thing told of before."""
    return stems(fact.subject).isdisjoint(lines.words[note])


def _holds(lines: ToldLines, note: str, one: Wanted) -> bool:
    if not one.holds.isdisjoint(lines.words[note]):
        return True
    if one.actions and any(isinstance(f, Work) and f.action in one.actions for f in lines.by_note.get(note, ())):
        return True
    number = one.number and not one.quantities
    text = lines.text[note].lower() if number or one.pattern else ""
    return (number and bool(_NUMBER.search(text))) or bool(one.pattern and one.pattern.search(text))


def otherwise(lines: ToldLines, words: CommentWords, note: str, comment: str, facts: Sequence[Fact]) -> bool:
    """Whether a line tells of it cold where it is asked of hot, or names no side where one is asked of."""
    others, asked = _sides(words.opposites, comment)
    held = raw_words(lines.text[note])
    if any(other in held and one not in held for one, other in others):
        return True
    if len(asked) != 1:
        return False
    told = {SIDES[w] for row in (held, *(raw_words(fact.about) for fact in facts)) for w in row if w in SIDES}
    return bool(told) and asked.isdisjoint(told)


@lru_cache(maxsize=8)
def _sides(opposites: tuple[tuple[str, str], ...], comment: str) -> tuple[tuple[tuple[str, str], ...], frozenset[str]]:
    """Of each two opposites the one that a comment names alone, before the other; and the sides that it names."""
    said = set(comment.split())
    both = ((one, other) for pair in opposites for one, other in (pair, pair[::-1]))
    named = tuple((one, other) for one, other in both if one in said and other not in said)
    return named, frozenset(SIDES[w] for w in said if w in SIDES)
