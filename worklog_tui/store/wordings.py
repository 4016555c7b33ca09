"""The words of notes: the first wording stays, every later one is added beside it."""

from __future__ import annotations

from collections.abc import Sequence

from worklog_tui.model import Instant, Revision
from worklog_tui.store import rows
from worklog_tui.store.files import Connection


def first_words(connection: Connection, note: str) -> str:
    """The first wording of a note; a KeyError for an unknown one."""
    row = connection.execute("SELECT first_words FROM note WHERE uid = ?", (note,)).fetchone()
    if row is None:
        raise KeyError(note)
    words: str = row["first_words"]
    return words


Wording = tuple[str, Instant | None]
"Words, and when they were given."


def put(connection: Connection, note: str, known: Sequence[Wording], words: str, struck: bool) -> bool:
    """Have a note show these words, or be struck out; every wording is kept. Returns whether that changed it."""
    row = connection.execute("SELECT id, first_words, words, struck FROM note WHERE uid = ?", (note,)).fetchone()
    for said, instant in known:
        if _number(connection, row["id"], row["first_words"], said) is None:
            _keep(connection, row["id"], said, instant)
    if (row["words"], bool(row["struck"])) == (words, struck):
        return False
    number = _number(connection, row["id"], row["first_words"], words)
    connection.execute(
        "UPDATE note SET words = ?, struck = ?, revision = ? WHERE id = ?", (words, int(struck), number, row["id"])
    )
    return True


def _keep(connection: Connection, note_id: int, words: str, instant: Instant | None) -> None:
    connection.execute(
        "INSERT INTO revision (note_id, number, words, utc, zone, utc_offset, known)"
        " VALUES (?1, (SELECT coalesce(max(number), 0) + 1 FROM revision WHERE note_id = ?1), ?, ?, ?, ?, ?)",
        (note_id, words, *rows.instant_values(instant)),
    )


def _number(connection: Connection, note_id: int, first: str, words: str) -> int | None:
    if words == first:
        return 0
    row = connection.execute("SELECT number FROM revision WHERE note_id = ? AND words = ?", (note_id, words)).fetchone()
    return None if row is None else int(row["number"])


def of_note(connection: Connection, note: str) -> list[Revision]:
    """Every wording that a note has had here, the first one first."""
    found = connection.execute(
        "SELECT revision.number, revision.words, revision.utc, revision.zone, revision.utc_offset, revision.known"
        " FROM revision JOIN note ON note.id = revision.note_id WHERE note.uid = ? ORDER BY number",
        (note,),
    )
    later = [Revision(note, row["number"], row["words"], rows.instant(row)) for row in found]
    return [Revision(note, 0, first_words(connection, note)), *later]


def note_session(connection: Connection, note: str) -> tuple[str, str] | None:
    """The uids of the session and the machine that a note stands in; None for an unknown note."""
    row = connection.execute(
        "SELECT session.uid AS session, machine.uid AS machine FROM note"
        " JOIN session ON session.id = note.session_id JOIN machine ON machine.id = note.machine_id WHERE note.uid = ?",
        (note,),
    ).fetchone()
    return None if row is None else (row["session"], row["machine"])
