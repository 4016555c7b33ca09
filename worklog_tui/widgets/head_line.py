"""The head line: which machine, which session, and how far it is."""

from __future__ import annotations

from datetime import datetime

from textual.widgets import Static

from worklog_tui.model import Session
from worklog_tui.widgets.literal import literal
from worklog_tui.widgets.log_rows import Log


class HeadLine(Static):
    """One line at the top."""

    DEFAULT_CSS = """
    HeadLine { height: 1; width: 1fr; text-style: bold; }
    """

    def __init__(self) -> None:
        super().__init__("", markup=False)
        self.said = ""
        "What stands there, as plain text."

    def show(self, machine: str, log: Log, session: Session | None, now: datetime) -> None:
        """Show where things stand; `session` is the one that a note of this window was kept in."""
        text = ", ".join(filter(None, (machine, _session(log, session, now), _notes(log))))
        if text != self.said:
            self.said = text
            self.update(literal(text))


def _session(log: Log, session: Session | None, now: datetime) -> str:
    if session is not None and session.start is not None:
        minutes = int((now - session.start.moment()).total_seconds()) // 60
        return f"session {log.number(session.uid)}, {max(minutes, 0)} min"
    return f"{log.sessions} {'session' if log.sessions == 1 else 'sessions'}" if log.sessions else ""


def _notes(log: Log) -> str:
    return f"{log.notes} {'note' if log.notes == 1 else 'notes'}" if log.notes else "no notes yet"
