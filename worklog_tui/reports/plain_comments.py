"""Viewers' comments as plain text: what is asked, by how many, and where the answer lies."""

from __future__ import annotations

from collections.abc import Sequence

from worklog_tui.model import CommentReading
from worklog_tui.reports.lines import heading, wrapped
from worklog_tui.reports.when import where

_TITLES = (("question", "Viewers' questions"), ("suggestion", "Viewers' suggestions"))


def comments_text(comments: Sequence[CommentReading], width: int) -> str:
    """Questions and suggestions, the same one from many once; chatter is only counted."""
    rows: list[str] = []
    for kind, title in _TITLES:
        asked: dict[str, list[CommentReading]] = {}
        for one in comments:
            if one.kind == kind:
                asked.setdefault(one.about or one.comment.words, []).append(one)
        if asked:
            rows += ["", *heading(f"{title} ({len(asked)})")]
            for about, same in asked.items():
                rows += _asked(about, same, width)
    chatter = sum(one.kind == "chatter" for one in comments)
    rows += ["", f"{chatter} more say nothing that needs an answer."] if chatter else []
    return "\n".join(rows[1:])


def _asked(about: str, same: Sequence[CommentReading], width: int) -> list[str]:
    many = f", {len(same)} viewers" if len(same) > 1 else ""
    first = same[0]
    answer = f"answered in {where(first.answered)}" if first.answered else "not answered yet"
    answer = f"perhaps {answer}" if first.perhaps else answer
    return wrapped(f"{about} ({answer}{many})", width, "  - ", "    ")
