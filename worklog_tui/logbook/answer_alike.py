"""The line most like a question, where none tells of the thing: by words, what is asked for, what went before.

The weights are judgement, measured on invented comments that they were not made for.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Sequence

from worklog_tui.logbook.answer_deeds import done_asked, tells_deed
from worklog_tui.logbook.answer_fits import holds_wanted, otherwise
from worklog_tui.logbook.comment_topics import Asked
from worklog_tui.logbook.comment_words import CommentWords, Wanted, holds_any
from worklog_tui.logbook.told_lines import ToldLines, stems
from worklog_tui.logbook.words import raw_words
from worklog_tui.model import Place

ENOUGH = 0.4
"What such a line must weigh; all words shared weigh 1."
NAMED = 0.5
"So much of what it is about the line must name, or those before it."
_HOLDS, _BEFORE = 0.3, 0.5
"That it holds what is asked for; that the lines before it name all that it is about."
_BACK = 2
"So many lines before it say what a line is about."


def most_alike(
    lines: ToldLines, words: CommentWords, asked: Asked, comment: str, wanted: Sequence[Wanted]
) -> Place | None:
    """The line most like the question, the earliest of equals; None when none is like it enough."""
    if asked.topic is not None and (asked.topic.must or not asked.topic.answer):
        return None
    alike = lines.likeness(stems(comment) - words.small.polite)
    about = stems(asked.about) - words.small.polite - words.small.everywhere
    verb, whole = done_asked(words, asked.sentence), sum(lines.weight_of(word) for word in about)
    weighed: list[tuple[float, int, Place]] = []
    for note, before in _told_before(lines, alike, about).items():
        likeness = alike.get(note, 0.0) + _BEFORE * before
        holds = likeness + _HOLDS >= ENOUGH and holds_wanted(lines, note, wanted, bool(about & lines.words[note]))
        if wanted and not holds:
            continue
        if verb and not tells_deed(lines, note, verb, (), before > 0 or bool(about & lines.words[note])):
            continue
        if otherwise(lines, words, note, comment, ()):
            continue
        told = sum(lines.weight_of(word) for word in about & lines.words[note])
        if whole and before + told / whole < NAMED:
            continue
        worth = likeness + _HOLDS * holds
        if worth >= ENOUGH and not appeals(lines, words, note):
            place = lines.history.place(note)
            weighed.append((round(worth, 6), -place.order, place))
    return max(weighed, key=lambda one: one[:2])[2] if weighed else None


def _told_before(lines: ToldLines, alike: dict[str, float], about: frozenset[str]) -> dict[str, float]:
    """The notes that share words, and those right after such as name what it is about.

    With each: how much of what it is about the lines before name, and it does not; from 0 to 1.
    """
    whole = sum(lines.weight_of(word) for word in about)
    told: dict[str, set[str]] = defaultdict(set)
    for note in alike:
        named, after = about & lines.words[note], lines.after.get(note)
        for _ in range(_BACK if named else 0):
            if after is not None:
                told[after] |= named
                after = lines.after.get(after)
    found = dict.fromkeys(alike, 0.0)
    for note, words in told.items():
        found[note] = sum(lines.weight_of(word) for word in words - lines.words[note]) / whole
    return found


def appeals(lines: ToldLines, words: CommentWords, note: str) -> bool:
    """Whether the person asks his viewers in this line or the next."""
    return any(
        holds_any(f" {' '.join(raw_words(text)).replace(chr(39), '')} ", words.appeals)
        for text in lines.with_next(note)
    )
