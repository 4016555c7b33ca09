"""What one line of talk surely tells, as the tests write it down."""

from __future__ import annotations

from worklog_tui.extract import CONFIDENCE_LINE, read_session
from worklog_tui.model import Finding, Machine, Note, Work
from worklog_tui.rulebook import Rulebook


def done_and_found(book: Rulebook, machine: Machine, line: str) -> list[tuple[str, str]]:
    """(action or condition, of what) of the work and the findings of a line."""
    said = read_session(book, machine, [Note("n", "s", line, track="captions")])
    return [
        (f.action if isinstance(f, Work) else f.condition, f.part)
        for f in said
        if isinstance(f, (Work, Finding)) and f.confidence >= CONFIDENCE_LINE
    ]
