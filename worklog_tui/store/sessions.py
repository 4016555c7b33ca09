"""Sessions and their notes, in the order of the work."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace
from itertools import groupby
from typing import Any

from worklog_tui.model import Instant, Note, Session
from worklog_tui.store import rows
from worklog_tui.store.files import Connection

_NOTES = f"SELECT {rows.NOTE_COLUMNS} FROM note JOIN session ON session.id = note.session_id"


@dataclass(frozen=True, slots=True)
class LastNote:
    """Where the last live session of a machine stands."""

    session: Session
    notes: int
    "How many notes the session has."
    at: int
    "Session time of the last note in order, in seconds."
    instant: Instant | None
    "When its last note was kept; the session's start when it has none."


def last_live(connection: Connection, machine: str) -> LastNote | None:
    """The live session of a machine that was written to last; None when it has none."""
    row = connection.execute(
        f"SELECT {rows.SESSION_COLUMNS} FROM machine JOIN session ON session.machine_id = machine.id"
        " WHERE machine.uid = ? AND source = 'live' AND EXISTS (SELECT 1 FROM note WHERE session_id = session.id)"
        " ORDER BY session.arrival DESC, session.uid DESC LIMIT 1",
        (machine,),
    ).fetchone()
    return None if row is None else _end(connection, row)


def _end(connection: Connection, row: Any) -> LastNote:
    session = rows.session(row)
    notes = connection.execute("SELECT count(*) FROM note WHERE session_id = ?", (row["id"],)).fetchone()[0]
    latest = connection.execute(  # the newest notes of a machine stand, as a rule, in its last session: one step back
        "SELECT utc FROM note INDEXED BY note_of_machine WHERE session_id = ?1 AND utc IS NOT NULL"
        " AND machine_id = (SELECT machine_id FROM session WHERE id = ?1) ORDER BY utc DESC LIMIT 1",
        (row["id"],),
    ).fetchone()
    last = connection.execute(
        "SELECT stands_at FROM note WHERE session_id = ? ORDER BY stands_at DESC LIMIT 1", (row["id"],)
    ).fetchone()
    instant = replace(session.start, utc=latest["utc"]) if session.start and latest else session.start
    return LastNote(session, notes, last["stands_at"] if last else 0, instant)


def find(connection: Connection, uid: str) -> Session | None:
    """The session with that uid."""
    row = connection.execute(
        f"SELECT {rows.SESSION_COLUMNS} FROM session JOIN machine ON machine.id = session.machine_id"
        " WHERE session.uid = ?",
        (uid,),
    ).fetchone()
    return None if row is None else rows.session(row)


def begin(connection: Connection, session: Session) -> Session:
    """Add a session as the newest of its machine; the same uid again changes nothing."""
    known = find(connection, session.uid)
    if known is not None:
        return known
    arrival = connection.execute(
        "SELECT coalesce(max(session.arrival) + 1, 0) FROM session JOIN machine ON machine.id = session.machine_id"
        " WHERE machine.uid = ?",
        (session.machine,),
    ).fetchone()[0]
    connection.execute(
        "INSERT INTO session (uid, machine_id, arrival, source, utc, zone, utc_offset, known)"
        " VALUES (?, (SELECT id FROM machine WHERE uid = ?), ?, ?, ?, ?, ?, ?)",
        (session.uid, session.machine, arrival, session.source, *rows.instant_values(session.start)),
    )
    return replace(session, arrival=arrival)


def note(connection: Connection, uid: str) -> Note | None:
    """The note with that uid, struck out or not."""
    row = connection.execute(f"{_NOTES} WHERE note.uid = ?", (uid,)).fetchone()
    return None if row is None else rows.note(row)


def known_notes(connection: Connection, uids: Iterable[str]) -> set[str]:
    """Those of the uids that the logbook holds."""
    return {
        uid for uid in uids if connection.execute("SELECT 1 FROM note WHERE uid = ?", (uid,)).fetchone() is not None
    }


def add_note(connection: Connection, note: Note, stands_at: int) -> Note:
    """Add a note as the last that came to its session; `stands_at` (seconds) is its place in the order."""
    session = connection.execute("SELECT id, machine_id FROM session WHERE uid = ?", (note.session,)).fetchone()
    arrival = connection.execute(
        "SELECT coalesce(max(arrival) + 1, 0) FROM note WHERE session_id = ?", (session["id"],)
    ).fetchone()[0]
    connection.execute(
        "INSERT INTO note (uid, session_id, machine_id, arrival, stands_at, at, said_at, track, first_words, words,"
        " film, utc, zone, utc_offset, known) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)",
        (
            note.uid, session["id"], session["machine_id"], arrival, stands_at, note.at, note.said_at, note.track,
            note.words, note.words, note.film, *rows.instant_values(note.instant),
        ),
    )  # fmt: skip
    return replace(note, arrival=arrival, revision=0)


def notes_of(connection: Connection, session: str, with_struck: bool = False) -> list[Note]:
    """The notes of one session, in order; those that were struck out only when they are asked for."""
    found = connection.execute(
        f"{_NOTES} WHERE session.uid = ?1 AND (?2 OR NOT note.struck) ORDER BY note.stands_at, note.arrival, note.uid",
        (session, with_struck),
    )
    return [rows.note(row) for row in found]


def of_machine(connection: Connection, machine: str) -> list[tuple[Session, list[Note]]]:
    """All sessions of a machine with their notes, by start; one without a date stands where it came.

    What was struck out is left out, and so is a session that has no note.
    """
    found = connection.execute(
        f"SELECT {rows.SESSION_COLUMNS} FROM session JOIN machine ON machine.id = session.machine_id"
        " WHERE machine.uid = ?",
        (machine,),
    )
    sessions = in_order([rows.session(row) for row in found])
    said = connection.execute(
        f"{_NOTES} JOIN machine ON machine.id = session.machine_id WHERE machine.uid = ? AND NOT note.struck"
        " ORDER BY session.id, note.stands_at, note.arrival, note.uid",
        (machine,),
    )
    notes = {uid: list(group) for uid, group in groupby(map(rows.note, said), key=lambda note: note.session)}
    return [(session, notes[session.uid]) for session in sessions if session.uid in notes]


def in_order(sessions: list[Session]) -> list[Session]:
    """Sessions by their start; one of unknown date goes with the one that came before it."""
    keys: dict[str, tuple[str, int]] = {}
    before = ""
    for session in sorted(sessions, key=lambda one: (one.arrival, one.uid)):
        before = session.start.utc if session.start else before
        keys[session.uid] = (before, session.arrival)
    return sorted(sessions, key=lambda one: (*keys[one.uid], one.uid))
