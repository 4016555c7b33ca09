"""Corrections of facts: what was read is kept beside them, so that they can be undone, or applied to other facts."""

from __future__ import annotations

from collections.abc import Iterable

from worklog_tui.logbook.corrections import corrected
from worklog_tui.logbook.standing import standing
from worklog_tui.model import Fact
from worklog_tui.model.acts import FACT_VERBS
from worklog_tui.store import acts, rows
from worklog_tui.store.files import Connection


def lay_aside(connection: Connection, notes: Iterable[int]) -> None:
    """Have the facts of these notes (ids) stand as they were read, before they are read again or corrected anew."""
    for note in notes:
        if connection.execute("DELETE FROM corrected WHERE note_id = ?", (note,)).rowcount:
            read = connection.execute(
                "SELECT question, data FROM fact_as_read WHERE note_id = ? ORDER BY id", (note,)
            ).fetchall()
            connection.execute("DELETE FROM fact WHERE note_id = ?", (note,))
            connection.execute("DELETE FROM fact_as_read WHERE note_id = ?", (note,))
            for asked in (0, 1):
                facts = rows.facts([row["data"] for row in read if row["question"] == asked])
                put(connection, ((note, fact, asked) for fact in facts))


def apply(connection: Connection, notes: Iterable[int], line: float) -> None:
    """Apply what stands of the corrections to the facts of these notes, keeping what was read beside them."""
    if connection.execute("SELECT 1 FROM act WHERE verb IN (?, ?, ?, ?) LIMIT 1", FACT_VERBS).fetchone() is None:
        return
    for note_id in notes:
        row = connection.execute(
            f"SELECT {rows.NOTE_COLUMNS} FROM note JOIN session ON session.id = note.session_id WHERE note.id = ?",
            (note_id,),
        ).fetchone()
        note = rows.note(row)
        row_of_acts = standing(acts.on_note(connection, note.uid, FACT_VERBS))
        if not row_of_acts or note.struck:
            continue
        read = connection.execute(
            "SELECT question, data FROM fact WHERE note_id = ? ORDER BY start, stop, kind, nth", (note_id,)
        ).fetchall()
        connection.executemany(
            "INSERT INTO fact_as_read (note_id, question, data) VALUES (?, ?, ?)",
            [(note_id, one["question"], one["data"]) for one in read],
        )
        connection.execute("INSERT INTO corrected (note_id) VALUES (?)", (note_id,))
        connection.execute("DELETE FROM fact WHERE note_id = ?", (note_id,))
        now = corrected(note, rows.facts([one["data"] for one in read]), row_of_acts, line)
        put(connection, ((note_id, fact, 0) for fact in now.sure))
        put(connection, ((note_id, fact, 1) for fact in now.asked))


def put(connection: Connection, facts: Iterable[tuple[int, Fact, int]]) -> None:
    """Write facts, each with the id of the note that holds its main words and 1 when it is to be asked about."""
    connection.executemany(
        "INSERT OR REPLACE INTO fact (note_id, machine_id, kind, start, stop, nth, confidence, question, about,"
        " data)"
        " VALUES (?1, (SELECT machine_id FROM note WHERE id = ?1), ?, ?, ?, ?, ?, ?, ?, ?)",
        [
            (note, fact.kind, fact.main.start, fact.main.end, fact.nth, fact.confidence, asked, fact.about,
             rows.fact_data(fact))
            for note, fact, asked in facts
        ],
    )  # fmt: skip
