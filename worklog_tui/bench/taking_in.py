"""Opens the logbook to write, and first takes in the notes that had to wait beside it."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from contextlib import contextmanager, suppress
from dataclasses import replace
from typing import TYPE_CHECKING

from worklog_tui import store
from worklog_tui.bench.open_session import session_at
from worklog_tui.bench.reading import Track, read_again, read_all
from worklog_tui.model import Machine, Note
from worklog_tui.store.derived import track_of

if TYPE_CHECKING:
    from worklog_tui.bench.desk import Desk
    from worklog_tui.store.spool import Spooled


@contextmanager
def pen(desk: Desk, wait: float | None = None) -> Iterator[store.Connection]:
    """One transaction on the logbook, the waiting notes taken in first.

    Raises LockedOut after `wait` seconds, by default the patience of the desk.
    """
    _ready_to_read(desk)
    with store.writing(desk.logbook, desk.patience if wait is None else wait) as connection:
        taken = _take_in(desk, connection)
        yield connection
    store.spool.discard(taken)


def _ready_to_read(desk: Desk) -> None:
    """What waits will be read: nobody is to wait for the lock while the grammars are being loaded."""
    if not desk.can_read and store.spool.waiting(desk.logbook):
        with suppress(Exception):  # it is said when the notes are read
            desk.reader()


def take_in_waiting(desk: Desk, wait: float) -> None:
    """Take in, and read, what waits beside the logbook; when another program writes for so long, it goes on waiting."""
    if store.spool.waiting(desk.logbook):
        with suppress(store.LockedOut), pen(desk, wait):
            pass


def _take_in(desk: Desk, connection: store.Connection) -> list[Spooled]:
    taken: list[Spooled] = []
    fresh: dict[str, list[Note]] = {}
    for one in store.spool.waiting(desk.logbook):
        try:
            machine = store.machines.by_uid(connection, one.session.machine)
        except KeyError:
            store.spool.set_aside(desk.logbook, one.file)  # of another logbook: it stays where it can be seen
            continue
        if not store.sessions.known_notes(connection, [one.note.uid]):
            note = _add(desk, connection, one)
            fresh.setdefault(note.session, []).append(note)
        taken.append(one)
    for session, notes in fresh.items():
        found = store.sessions.find(connection, session)
        assert found is not None
        machine = store.machines.by_uid(connection, found.machine)
        read_into(desk, connection, machine, session, notes)
    return taken


def _add(desk: Desk, connection: store.Connection, one: Spooled) -> Note:
    """Put a waiting note into its session, or into the one that was open when it was said."""
    session = store.sessions.find(connection, one.session.uid)
    if session is None:
        last = store.sessions.last_live(connection, one.session.machine)
        joined = session_at(last, one.note.instant, desk.quiet_hours)
        session = joined or store.sessions.begin(connection, one.session)
    at = one.note.at or 0
    if session.uid != one.session.uid and session.start and one.note.instant:
        at = max(int((one.note.instant.moment() - session.start.moment()).total_seconds()), 0)
    return store.sessions.add_note(connection, replace(one.note, session=session.uid, at=at), at)


def read_into(desk: Desk, connection: store.Connection, machine: Machine, session: str, fresh: Iterable[Note]) -> str:
    """Read notes that were put into a session at any place, altered or struck out.

    Gives what went wrong, in words; the notes stay.
    """
    try:
        reader, stamp = desk.reader(), desk.stamp(machine)
        new = {note.uid for note in fresh}
        everything = store.sessions.notes_of(connection, session, with_struck=True)
        for name in sorted({track_of(note) for note in everything if note.uid in new}):
            track = Track(reader, machine, session, name, stamp)
            _read_track(connection, track, [note for note in everything if track_of(note) == name], new)
    except Exception as mistake:  # a grammar that does not load must not cost the words
        store.derived.mark_unread(connection, session)
        return str(mistake) or type(mistake).__name__
    return ""


def _read_track(connection: store.Connection, track: Track, everything: list[Note], new: set[str]) -> None:
    """Read what follows from the altered notes of one track; what is struck out is not read."""
    struck = [note.uid for note in everything if note.struck and note.uid in new]
    tail = store.derived.tail(connection, track.session, track.name)
    store.derived.clear(connection, struck)
    notes = [note for note in everything if not note.struck]
    if not notes:
        return
    places, before = [], 0
    for note in everything:
        if note.uid in new:
            places.append(before)
        before += not note.struck
    if tail is None or store.derived.stamp(connection, track.session) != track.stamp:
        readout = read_all(track, notes)
    else:
        stored = store.derived.snapshots(connection, track.session, track.name)
        readout = read_again(track, notes, stored, tail, places[0], min(places[-1], len(notes) - 1))
    store.derived.save(connection, readout)
