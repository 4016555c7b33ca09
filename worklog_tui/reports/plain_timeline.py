"""The timeline as plain text: the words of each line, and below them what was understood."""

from __future__ import annotations

from collections.abc import Sequence

from worklog_tui.logbook.timeline import TimelineLine, TimelineSession
from worklog_tui.reports.lines import heading, wrapped
from worklog_tui.reports.sentence import sentence
from worklog_tui.reports.when import session_title


def timeline_text(sessions: Sequence[TimelineSession], width: int) -> str:
    """All sessions; lines in which nothing was understood are shown by their words alone."""
    if not sessions:
        return "Nothing is in the log yet."
    rows: list[str] = []
    for one in sessions:
        rows += ["", *heading(session_title(one.number, one.session.start))]
        for line in one.lines:
            rows += _line(line, width)
    return "\n".join(rows[1:])


def _line(line: TimelineLine, width: int) -> list[str]:
    time = line.place.at or "-"
    rows = wrapped(line.note.words, width, f"{time:>8}  ")
    for fact in line.facts:
        rows += wrapped(sentence(fact), width, " " * 12, " " * 14)
    for fact in line.questions:
        rows += wrapped(f"perhaps: {sentence(fact)}", width, " " * 12, " " * 14)
    return rows
