"""Which session a note belongs to: the one that is open, or a new one after some quiet hours."""

from __future__ import annotations

from worklog_tui.model import Instant, Session
from worklog_tui.store.sessions import LastNote


def session_at(last: LastNote | None, instant: Instant | None, quiet_hours: float) -> Session | None:
    """The session that a note of that instant joins; None when a new one begins.

    A clock that was put back by less than the quiet hours goes on in the same session.
    """
    if last is None or last.instant is None or instant is None:
        return None
    gap = abs((instant.moment() - last.instant.moment()).total_seconds())
    return last.session if gap < quiet_hours * 3600 else None
