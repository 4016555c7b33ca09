"""What was read from the notes: facts, contexts, and the stamp of the grammar that read them. All can be made again."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from itertools import groupby

from worklog_tui.model import Fact, FactKey, Note
from worklog_tui.store import corrections, rows
from worklog_tui.store.files import Connection


@dataclass(frozen=True, slots=True)
class Mark:
    """How far the reading of a track has come: the context after its n-th note."""

    note: str
    position: int
    "How many notes of the track have been read."
    context: str
    "The context as JSON text."


@dataclass(frozen=True, slots=True)
class Readout:
    """What reading some notes of one track changes in the logbook."""

    session: str
    track: str
    "typed or captions."
    stamp: str
    line: float
    "Facts of less confidence are questions."
    cleared: tuple[str, ...]
    "Notes whose facts and snapshots are made anew."
    withdrawn: tuple[FactKey, ...]
    added: tuple[Fact, ...]
    snapshots: tuple[Mark, ...]
    tail: Mark | None


def track_of(note: Note) -> str:
    """Live and typed notes are read as one track, captions as another."""
    return "captions" if note.track == "captions" else "typed"


def save(connection: Connection, readout: Readout) -> None:
    """Bring facts, snapshots and tail of a track up to date, and apply the person's corrections to what is new."""
    note_ids = _NoteIds(connection)
    said = (*readout.cleared, *(key.note for key in readout.withdrawn), *(fact.main.note for fact in readout.added))
    touched = [note_ids[uid] for uid in dict.fromkeys(said)]
    corrections.lay_aside(connection, touched)
    for uid in readout.cleared:
        connection.execute("DELETE FROM fact WHERE note_id = ?", (note_ids[uid],))
        connection.execute("DELETE FROM context WHERE note_id = ? AND NOT tail", (note_ids[uid],))
    for key in readout.withdrawn:
        connection.execute(
            "DELETE FROM fact WHERE note_id = ? AND kind = ? AND start = ? AND stop = ? AND nth = ?",
            (note_ids[key.note], key.kind, key.start, key.end, key.nth),
        )
    corrections.put(
        connection,
        ((note_ids[fact.main.note], fact, int(fact.confidence < readout.line)) for fact in readout.added),
    )
    corrections.apply(connection, touched, readout.line)
    session = connection.execute("SELECT id FROM session WHERE uid = ?", (readout.session,)).fetchone()["id"]
    marks = [(mark, 0) for mark in readout.snapshots] + [(mark, 1) for mark in (readout.tail,) if mark]
    connection.executemany(
        "INSERT OR REPLACE INTO context (session_id, track, note_id, position, tail, data) VALUES (?, ?, ?, ?, ?, ?)",
        [(session, readout.track, note_ids[mark.note], mark.position, tail, mark.context) for mark, tail in marks],
    )
    connection.execute("INSERT OR REPLACE INTO stamp (session_id, stamp) VALUES (?, ?)", (session, readout.stamp))


def clear(connection: Connection, notes: Iterable[str]) -> None:
    """Forget what was read from these notes, and the contexts after them."""
    note_ids = _NoteIds(connection)
    for uid in notes:
        corrections.lay_aside(connection, [note_ids[uid]])
        connection.execute("DELETE FROM fact WHERE note_id = ?", (note_ids[uid],))
        connection.execute("DELETE FROM context WHERE note_id = ?", (note_ids[uid],))


def clear_session(connection: Connection, session: str) -> None:
    """Forget how far the reading of a session has come; its notes are to be read anew."""
    connection.execute("DELETE FROM context WHERE session_id = (SELECT id FROM session WHERE uid = ?)", (session,))
    mark_unread(connection, session)


def correct_again(connection: Connection, notes: Iterable[str], line: float) -> None:
    """Apply the corrections of these notes anew, after one was added or undone."""
    note_ids = _NoteIds(connection)
    found = [note_ids[uid] for uid in notes]
    corrections.lay_aside(connection, found)
    corrections.apply(connection, found, line)


def mark_unread(connection: Connection, session: str) -> None:
    """Note that the facts of a session are not those of any grammar, so that the next re-reading makes them."""
    connection.execute(
        "INSERT OR REPLACE INTO stamp (session_id, stamp) SELECT id, '' FROM session WHERE uid = ?", (session,)
    )


def tail(connection: Connection, session: str, track: str) -> Mark | None:
    """Where the reading of a track stands; None before its first note."""
    row = connection.execute(
        "SELECT note.uid, context.position, context.data FROM session JOIN context ON context.session_id = session.id"
        " JOIN note ON note.id = context.note_id WHERE session.uid = ? AND context.track = ? AND tail",
        (session, track),
    ).fetchone()
    return None if row is None else Mark(*row)


def snapshots(connection: Connection, session: str, track: str) -> Mapping[str, Mark]:
    """The stored contexts of a track by the uid of the note that each has read last."""
    found = connection.execute(
        "SELECT note.uid, context.position, context.data FROM session JOIN context ON context.session_id = session.id"
        " JOIN note ON note.id = context.note_id WHERE session.uid = ? AND context.track = ? AND NOT tail",
        (session, track),
    )
    return {row["uid"]: Mark(*row) for row in found}


def stamps(connection: Connection, machine: str) -> dict[str, str]:
    """For each session of a machine that has notes: the stamp of its facts, empty when they were never read."""
    found = connection.execute(
        "SELECT session.uid, coalesce(stamp.stamp, '') AS stamp"
        " FROM machine JOIN session ON session.machine_id = machine.id"
        " LEFT JOIN stamp ON stamp.session_id = session.id"
        " WHERE machine.uid = ? AND EXISTS (SELECT 1 FROM note WHERE note.session_id = session.id)",
        (machine,),
    )
    return {row["uid"]: row["stamp"] for row in found}


def stamp(connection: Connection, session: str) -> str | None:
    """The stamp of one session; None when nothing of it was read yet."""
    row = connection.execute(
        "SELECT stamp FROM stamp JOIN session ON session.id = stamp.session_id WHERE session.uid = ?", (session,)
    ).fetchone()
    return None if row is None else row["stamp"]


def count(connection: Connection, session: str) -> int:
    """How many facts a session has."""
    counted: int = connection.execute(
        "SELECT count(*) FROM session JOIN note ON note.session_id = session.id JOIN fact ON fact.note_id = note.id"
        " WHERE session.uid = ?",
        (session,),
    ).fetchone()[0]
    return counted


def facts_of_machine(connection: Connection, machine: str) -> dict[tuple[str, bool], list[Fact]]:
    """The facts of a machine, in the order of the notes that hold their main words.

    Under (session uid, False) the confident ones, under (session uid, True) the questions.
    """
    found = connection.execute(
        "SELECT session.uid AS session, fact.question, fact.data"
        " FROM machine JOIN session ON session.machine_id = machine.id"
        " JOIN note ON note.session_id = session.id JOIN fact ON fact.note_id = note.id WHERE machine.uid = ?"
        " ORDER BY session.id, fact.question, note.stands_at, note.arrival, note.uid, fact.start, fact.stop,"
        " fact.kind, fact.nth",
        (machine,),
    )
    groups = groupby(found, key=lambda row: (row["session"], bool(row["question"])))
    return {key: rows.facts([row["data"] for row in group]) for key, group in groups}


def facts_of_note(connection: Connection, note: str) -> list[Fact]:
    """The facts whose main words a note holds, those to be asked about too."""
    found = connection.execute(
        "SELECT fact.data FROM fact JOIN note ON note.id = fact.note_id WHERE note.uid = ?"
        " ORDER BY fact.start, fact.stop, fact.kind, fact.nth",
        (note,),
    )
    return rows.facts([row["data"] for row in found])


class _NoteIds(dict[str, int]):
    """The ids of notes by uid, looked up once each."""

    def __init__(self, connection: Connection) -> None:
        super().__init__()
        self._connection = connection

    def __missing__(self, uid: str) -> int:
        row = self._connection.execute("SELECT id FROM note WHERE uid = ?", (uid,)).fetchone()
        if row is None:
            raise KeyError(uid)
        self[uid] = row["id"]
        return self[uid]
