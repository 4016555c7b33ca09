"""Viewers' comments: a question, a suggestion or chatter."""

from __future__ import annotations

from dataclasses import dataclass

from worklog_tui.model.items import Place


@dataclass(frozen=True, slots=True)
class Comment:
    """What one viewer wrote, with no name kept."""

    number: int
    "0-based position in the file."
    words: str


@dataclass(frozen=True, slots=True)
class CommentReading:
    """What a comment is, what it is about, and the line that already answers it."""

    comment: Comment
    kind: str
    "question, suggestion or chatter."
    about: str = ""
    answered: Place | None = None
    perhaps: bool = False
    "Whether that line is only the one most like the question: it is shown, and the question stays open."
