"""What the same words cost in plain SQLite: a table, one index and a full-text index, with the same durability."""

from __future__ import annotations

import sqlite3
from collections.abc import Iterable
from pathlib import Path

TABLES = (
    "CREATE TABLE note (id INTEGER PRIMARY KEY, machine INTEGER NOT NULL, said TEXT NOT NULL, words TEXT NOT NULL)",
    "CREATE INDEX note_of_machine ON note (machine, said)",
    'CREATE VIRTUAL TABLE note_words USING fts5(words, content="note", content_rowid="id")',
    "CREATE TRIGGER note_added AFTER INSERT ON note"
    " BEGIN INSERT INTO note_words (rowid, words) VALUES (NEW.id, NEW.words); END",
)
INSERT = "INSERT INTO note (machine, said, words) VALUES (?, ?, ?)"
FIND = (
    "SELECT note.* FROM note_words JOIN note ON note.id = note_words.rowid WHERE note_words MATCH ?"
    " ORDER BY note_words.rowid DESC LIMIT 20"
)
PAGE = "SELECT * FROM note WHERE machine = ? ORDER BY said DESC LIMIT 100"

Row = tuple[int, str, str]


class PlainFile:
    """A file with notes; every insert is on the disk when it returns (WAL, synchronous FULL)."""

    def __init__(self, path: Path) -> None:
        self.path = path
        self.kept_open = self._opened()
        for statement in TABLES:
            self.kept_open.execute(statement)

    def _opened(self) -> sqlite3.Connection:
        connection = sqlite3.connect(self.path, isolation_level=None)
        connection.execute("PRAGMA journal_mode = WAL")
        connection.execute("PRAGMA synchronous = FULL")
        return connection

    def fill(self, rows: Iterable[Row]) -> None:
        """Many notes at once."""
        self.kept_open.execute("BEGIN")
        self.kept_open.executemany(INSERT, rows)
        self.kept_open.execute("COMMIT")
        self.kept_open.execute("PRAGMA wal_checkpoint(TRUNCATE)")

    def insert(self, row: Row) -> None:
        """One note, into the file that stays open."""
        self.kept_open.execute(INSERT, row)

    def insert_and_close(self, row: Row) -> None:
        """One note, the file opened for it and closed whole behind it, as the program does it."""
        connection = self._opened()
        connection.execute(INSERT, row)
        connection.close()

    def find(self, match: str) -> list[tuple[object, ...]]:
        """The newest notes with these words."""
        return self.kept_open.execute(FIND, (match,)).fetchall()

    def page(self, machine: int) -> list[tuple[object, ...]]:
        """The newest notes of a machine."""
        return self.kept_open.execute(PAGE, (machine,)).fetchall()
