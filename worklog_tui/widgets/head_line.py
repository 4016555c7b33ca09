"""The head line: which machine, which session, and how far it is."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from datetime import datetime
from typing import TYPE_CHECKING

from textual.widgets import Static

from worklog_tui.widgets.days import month, weekday
from worklog_tui.widgets.literal import literal

if TYPE_CHECKING:
    from worklog_tui.logbook.wait import Wait
    from worklog_tui.model import OpenItem, Session
    from worklog_tui.model.clip import Clip
    from worklog_tui.widgets.log_rows import Log


CLOCK = 8
"Cells that the time of day takes with the room before it; where there is less it is left out."
LEAST = 12
"Signs of the machine's name that are always told."


class HeadLine(Static):
    """One line at the top."""

    DEFAULT_CSS = """
    HeadLine { height: 1; width: 1fr; text-style: bold; }
    """

    def __init__(self) -> None:
        super().__init__("", markup=False)
        self.said = ""
        "What stands there, as plain text."
        self._shown: Callable[[], None] = lambda: None

    def on_resize(self) -> None:
        """The room is another one: the same, cut anew."""
        self._shown()

    def show(
        self, machine: str, log: Log, session: Session | None, now: datetime, film: str = "", waits: str = ""
    ) -> None:  # fmt: skip
        """Show where things stand; `session` is the one that a note of this window was kept in."""
        self._shown = lambda: self.show(machine, log, session, now, film, waits)
        rest = in_room((_session(log, session, now), film, waits, _notes(log)), self.size.width - LEAST - 2)
        text = f"{shortened(machine, max(self.size.width - len(rest) - 2, LEAST))}, {rest}"
        room = self.size.width - len(text)
        text += f"{now:%H:%M}".rjust(room) if room >= CLOCK else ""
        if text != self.said:
            self.said = text
            self.update(literal(text))


def in_room(told: tuple[str, str, str, str], room: int) -> str:
    """Session, film, waits and notes in so many cells: what has no room is left out whole, the film last of all."""
    session, _, waits, notes = told
    kept = [one for one in told if one]
    for least in (notes, waits, session):
        if len(", ".join(kept)) > room > 0 and least:
            kept.remove(least)
    return ", ".join(kept)


def lasted(minutes: int) -> str:
    """How long, such as `40 min` or `2 h 05 min`."""
    return f"{minutes} min" if minutes < 60 else f"{minutes // 60} h {minutes % 60:02} min"


def shortened(name: str, room: int) -> str:
    """The name, or as much of it as there is room for."""
    return name if len(name) <= room else f"{name[: room - 1].rstrip()}…"


def _session(log: Log, session: Session | None, now: datetime) -> str:
    if session is not None and session.start is not None:
        minutes = int((now - session.start.moment()).total_seconds()) // 60
        return f"session {log.number(session.uid)}, {lasted(max(minutes, 0))}"
    return f"{log.sessions} {'session' if log.sessions == 1 else 'sessions'}" if log.sessions else ""


def film_told(clip: Clip | None, now: datetime) -> str:
    """`film 12:31` while the camera runs, else `not filming`."""
    if clip is not None:
        from worklog_tui.model import clock

        return f"film {clock(clip.second(now))}"
    return "not filming"


def waits_told(waits: Sequence[Wait], items: Iterable[OpenItem], now: datetime) -> str:
    """What is waited for first: `carburettor ready Thursday`, else what is on its way: `awaited: blade`."""
    known = [one for one in waits if one.ready is not None]  # of a finished film nobody knows when it was
    if known:
        first, more = known[0], f" and {len(known) - 1} more" if len(known) > 1 else ""
        return f"{wait_told(first, now)}{more}"
    awaited = [item.about for item in items if item.state == "awaited"]
    more = f" and {len(awaited) - 1} more" if len(awaited) > 1 else ""
    return f"awaited: {awaited[0]}{more}" if awaited else ""


def wait_told(wait: Wait, now: datetime) -> str:
    """What is waited for and until when, such as `carburettor ready Thursday`."""
    return f"{wait.reading.subject or 'what was left'} {_ready(wait, now)}".rstrip()


def _ready(wait: Wait, now: datetime) -> str:
    if wait.ready is None:
        return ""
    if wait.is_ready(now):
        return "ready now"
    ready = wait.ready.astimezone(now.tzinfo)
    if ready.date() == now.date():
        return f"ready {ready:%H:%M}"
    near = (ready.date() - now.date()).days < 7
    return f"ready {weekday(ready)}" if near else f"ready {ready.day} {month(ready)}"


def _notes(log: Log) -> str:
    return f"{log.notes} {'note' if log.notes == 1 else 'notes'}" if log.notes else "no notes yet"
