"""Parts of a machine's timeline: how long each session is, and some of its notes with their facts."""

from __future__ import annotations

from worklog_tui.model import Fact, Note, Session
from worklog_tui.store import rows
from worklog_tui.store.files import Connection
from worklog_tui.store.sessions import in_order


def lengths(connection: Connection, machine: str) -> list[tuple[Session, int]]:
    """All sessions of a machine in order, each with how many notes it has."""
    found = connection.execute(
        f"SELECT {rows.SESSION_COLUMNS}, "
        " (SELECT count(*) FROM note WHERE session_id = session.id AND NOT struck) AS notes"
        " FROM session JOIN machine ON machine.id = session.machine_id WHERE machine.uid = ?",
        (machine,),
    ).fetchall()
    counts = {row["uid"]: row["notes"] for row in found}
    sessions = in_order([rows.session(row) for row in found if row["notes"]])
    return [(session, counts[session.uid]) for session in sessions]


def part(connection: Connection, session: str, first: int, count: int) -> tuple[list[Note], list[Fact]]:
    """So many notes of a session from the one at `first` (from 0) on, and the confident facts read from them."""
    notes = connection.execute(
        f"SELECT {rows.NOTE_COLUMNS} FROM note JOIN session ON session.id = note.session_id"
        " WHERE session.uid = ? AND NOT note.struck ORDER BY note.stands_at, note.arrival, note.uid LIMIT ? OFFSET ?",
        (session, count, first),
    )
    facts = connection.execute(
        "SELECT fact.data FROM fact JOIN note ON note.id = fact.note_id WHERE NOT fact.question AND note.id IN ("
        "SELECT note.id FROM note JOIN session ON session.id = note.session_id"
        " WHERE session.uid = ? AND NOT note.struck ORDER BY note.stands_at, note.arrival, note.uid LIMIT ? OFFSET ?)"
        " ORDER BY note.stands_at, note.arrival, note.uid, fact.start, fact.stop, fact.kind, fact.nth",
        (session, count, first),
    )
    return [rows.note(row) for row in notes], rows.facts([row["data"] for row in facts])
