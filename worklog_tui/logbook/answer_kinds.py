"""Whether a line tells of what a question is for, where that is a property of a thing and not how it stands.

That the log tells of the limit switch is no answer to whether it is a new one, and how long the worn brushes are none
to how long new ones would be.
"""

from __future__ import annotations

import re

from worklog_tui.logbook.comment_topics import Asked
from worklog_tui.logbook.comment_words import CommentWords
from worklog_tui.logbook.told_lines import ToldLines

_IS_IT = re.compile(
    r"^(?:and |so |but )?(?:is|are|was|were|isnt|arent|wasnt) (?:the|that|this|those|these|your|it|they)\b"
)
_HOW_MUCH = re.compile(r"^(?:and |so |but )?(?:how|what|whats)\b")
_WHEN_NEW = re.compile(r"\b(?:when|from|if) (?:its |theyre |it was |they were |they are )?new\b|\b(?:a )?new ones?\b")


def of_such_a_kind(lines: ToldLines, words: CommentWords, asked: Asked, note: str) -> bool:
    """Whether a line may answer: it names a property where one is asked for, a new one where a new one's size is."""
    if _HOW_MUCH.search(asked.sentence) and _WHEN_NEW.search(asked.sentence):
        return _of_new(lines, note)
    said = set(asked.sentence.split()) if _IS_IT.match(asked.sentence) else set()
    told = lines.spaced[note].split()
    return all(
        said.isdisjoint(group) or not group.isdisjoint(told) for group in (words.small.newness, words.small.stuffs)
    )


def _of_new(lines: ToldLines, note: str) -> bool:
    """Whether a line speaks of a new one, or of what a figure should be."""
    said = f" {lines.spaced[note]} "
    return " new " in said or any(one.role in ("specified", "rated") for one in lines.readings(note))
