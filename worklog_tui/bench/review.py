"""Looking at the log of a machine: timeline, readings, open items, recap and next step."""

from __future__ import annotations

from contextlib import suppress
from dataclasses import dataclass
from functools import lru_cache
from pathlib import Path
from typing import TYPE_CHECKING

from worklog_tui.logbook.open_items import open_items as fold_items
from worklog_tui.logbook.outcomes import Recap, Series
from worklog_tui.logbook.readings import readings as series
from worklog_tui.logbook.recap import of_session
from worklog_tui.logbook.recap import recap as since
from worklog_tui.logbook.timeline import TimelineSession
from worklog_tui.logbook.timeline import timeline as lines
from worklog_tui.model import Advice, CommentReading, History, OpenItem
from worklog_tui.rulebook.uncollected import uncollected

if TYPE_CHECKING:
    from worklog_tui.bench.desk import Desk
    from worklog_tui.rulebook.faults import FaultBook


@dataclass(frozen=True, slots=True)
class Review:
    """Everything that is shown of a machine, worked out once from its history."""

    history: History
    comments: tuple[CommentReading, ...]
    items: tuple[OpenItem, ...]


def review(desk: Desk, machine: str) -> Review:
    """The history of a machine with its comments read and its open items worked out."""
    from worklog_tui.bench.history import history

    return of_history(desk, history(desk, machine))


def of_history(desk: Desk, known: History) -> Review:
    """The same for a history that is at hand."""
    read = comments(desk, known)
    return Review(known, read, fold_items(known, read))


def comments(desk: Desk, known: History) -> tuple[CommentReading, ...]:
    """The viewers' comments, read against the log."""
    if not known.comments:
        return ()
    from worklog_tui.logbook.answers import read_all
    from worklog_tui.logbook.comment_words import load_comment_words

    with uncollected():
        return read_all(known, load_comment_words(desk.grammars), desk.book().table, known.comments)


def timeline(desk: Desk, machine: str) -> tuple[TimelineSession, ...]:
    """All lines of a machine's sessions with what was understood."""
    from worklog_tui.bench.history import history

    return lines(history(desk, machine))


def readings(desk: Desk, machine: str) -> tuple[Series, ...]:
    """The readings over time, against what they should be."""
    from worklog_tui.bench.history import history

    return series(history(desk, machine))


def open_items(desk: Desk, machine: str) -> tuple[OpenItem, ...]:
    """What must be come back to, and what became of the rest."""
    return review(desk, machine).items


def recap(desk: Desk, machine: str) -> Recap:
    """Where things stand since the last session; from the items as they were last worked out, if they still hold."""
    from worklog_tui.bench.history import known_items, last_session

    items, number, record = known_items(desk, machine), *last_session(desk, machine)
    if items is None or record is None:
        seen = _worked_out(desk, machine)
        return since(seen.history, seen.items)
    return of_session(record, number, items)


def present_items(desk: Desk, machine: str) -> tuple[OpenItem, ...]:
    """The items as they were last worked out, if they still hold, else worked out now."""
    from worklog_tui.bench.history import known_items

    items = known_items(desk, machine)
    return _worked_out(desk, machine).items if items is None else tuple(items)


def _worked_out(desk: Desk, machine: str) -> Review:
    """A review whose items are kept for the next time, where the logbook can be written."""
    from worklog_tui.bench.history import basis, remember_items
    from worklog_tui.store import LockedOut, Refused

    before = basis(desk, machine)
    seen = review(desk, machine)
    with suppress(LockedOut, Refused):
        remember_items(desk, machine, seen.items, before)
    return seen


def next_step(desk: Desk, machine: str) -> Advice:
    """What to do next, and why."""
    return advice_for(desk, review(desk, machine))


def advice_for(desk: Desk, seen: Review) -> Advice:
    """The advice for what was worked out already."""
    from worklog_tui.diagnosis import advise

    return advise(seen.history, seen.items, fault_book(desk.grammars), desk.now())


def fault_book(folders: tuple[Path, ...]) -> FaultBook:
    """The fault files, read again only when one of them was altered."""
    files = [
        f for folder in folders for f in (*sorted((folder / "diagnosis").glob("*.toml")), folder / "cautions.toml")
    ]
    return _read_faults(folders, tuple((f, f.stat().st_mtime_ns) for f in files if f.is_file()))


@lru_cache(maxsize=2)
def _read_faults(folders: tuple[Path, ...], altered: tuple[tuple[Path, int], ...]) -> FaultBook:
    from worklog_tui.rulebook.faults import load_faults

    return load_faults(folders)
