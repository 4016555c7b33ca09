"""Takes the words of a note away for good: out of the note, its other wordings, and the acts that repeat them."""

from __future__ import annotations

from worklog_tui.logbook.erasing import repeats
from worklog_tui.model.note import ERASED
from worklog_tui.store import rows
from worklog_tui.store.files import Connection


def erase(connection: Connection, note: str) -> bool:
    """Have a note say ERASED and nothing else, ever; the act of erasing it must be there. Returns if that is new."""
    row = connection.execute("SELECT id, first_words, words FROM note WHERE uid = ?", (note,)).fetchone()
    if row is None:
        return False
    emptied = _empty_acts(connection, note)
    if (row["first_words"], row["words"]) == ("", ERASED):
        return emptied
    connection.execute(
        "UPDATE note SET first_words = '', words = ?, revision = 0, struck = 0 WHERE id = ?", (ERASED, row["id"])
    )
    connection.execute("UPDATE revision SET words = '' WHERE note_id = ?", (row["id"],))
    connection.execute("DELETE FROM item")  # they are worked out again; until then none repeats a word
    connection.execute("DELETE FROM counted")
    return True


def is_erased(connection: Connection, note: str) -> bool:
    """Whether a person erased the note."""
    found = connection.execute("SELECT 1 FROM act WHERE target = ? AND verb = 'erase'", (note,)).fetchone()
    return found is not None


def any_erased(connection: Connection) -> bool:
    """Whether anything was ever erased."""
    return connection.execute("SELECT 1 FROM act WHERE verb = 'erase' LIMIT 1").fetchone() is not None


def _empty_acts(connection: Connection, note: str) -> bool:
    erased = {row["target"] for row in connection.execute("SELECT target FROM act WHERE verb = 'erase'")}
    named = connection.execute(
        "SELECT * FROM act WHERE value IS NOT NULL AND (instr(target, ?1) OR instr(value, ?1))", (note,)
    ).fetchall()
    gone = [row["id"] for row in named if repeats(rows.act(row), note, erased)]
    connection.executemany("UPDATE act SET value = NULL WHERE id = ?", [(one,) for one in gone])
    return bool(gone)
