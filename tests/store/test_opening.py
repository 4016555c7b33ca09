"""The logbook file: what marks it, how every connection is set, and which files are left alone."""

from __future__ import annotations

import os
import sqlite3
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import ClassVar

import pytest

from worklog_tui import store
from worklog_tui.model import Machine
from worklog_tui.store import files, schema

SAW = Machine("Band saw", uid="saw")


@pytest.fixture
def logbook(tmp_path: Path) -> Path:
    """A logbook with one machine."""
    path = tmp_path / "logbook.db"
    with store.writing(path) as connection:
        store.machines.save(connection, SAW)
    return path


def ask(path: Path, sql: str) -> list[tuple[object, ...]]:
    connection = sqlite3.connect(path)
    try:
        return connection.execute(sql).fetchall()
    finally:
        connection.close()


def test_the_file_says_what_it_is(logbook: Path) -> None:
    assert ask(logbook, "PRAGMA application_id") == [(0x574C4F47,)]
    assert ask(logbook, "PRAGMA user_version") == [(schema.VERSION,)]
    assert ask(logbook, "PRAGMA journal_mode") == [("wal",)]
    assert logbook.read_bytes()[68:72] == b"WLOG"


def test_every_table_is_strict_with_an_integer_id_and_ours_only(logbook: Path) -> None:
    tables = ask(logbook, "SELECT name, strict FROM pragma_table_list WHERE type = 'table' AND schema = 'main'")
    ours = {str(name): strict for name, strict in tables if not str(name).lstrip("_").startswith("sqlite_")}
    assert set(ours) == {
        "machine", "session", "note", "revision", "act", "clip", "comment",
        "fact", "context", "stamp", "item", "counted",
        "note_as_it_came", "session_as_it_came", "card_as_it_came", "fact_as_read", "corrected", "note_read",
    }  # fmt: skip
    assert set(ours.values()) == {1}
    for table in ("machine", "session", "note", "act", "clip", "comment"):
        columns = {row[1]: (row[2], row[5]) for row in ask(logbook, f"PRAGMA table_info({table})")}
        assert columns["id"] == ("INTEGER", 1)
        assert columns["uid"] == ("TEXT", 0)


def test_every_foreign_key_is_declared(logbook: Path) -> None:
    for table, column in (
        ("session", "machine_id"), ("note", "session_id"), ("note", "machine_id"), ("revision", "note_id"),
        ("clip", "session_id"), ("comment", "machine_id"), ("fact", "note_id"), ("fact", "machine_id"),
        ("context", "session_id"), ("context", "note_id"), ("stamp", "session_id"), ("item", "machine_id"),
    ):  # fmt: skip
        assert column in {row[3] for row in ask(logbook, f"PRAGMA foreign_key_list({table})")}, (table, column)


class Told(sqlite3.Connection):
    """A connection that writes down what it was asked."""

    every: ClassVar[list[Told]] = []

    def __init__(self, *args: object, **options: object) -> None:
        super().__init__(*args, **options)  # type: ignore[arg-type]
        self.asked: list[str] = []
        self.set_trace_callback(self.asked.append)
        self.uri = str(args[0])
        Told.every.append(self)

    def pragmas(self) -> list[str]:
        return [statement for statement in self.asked if statement.startswith("PRAGMA") and "=" in statement]


@pytest.fixture
def connections(monkeypatch: pytest.MonkeyPatch) -> list[Told]:
    """Every connection that is opened from now on."""
    really = sqlite3.connect
    Told.every = []
    monkeypatch.setattr(sqlite3, "connect", lambda *args, **options: really(*args, factory=Told, **options))
    return Told.every


def test_every_writing_connection_is_set_to_lose_nothing(logbook: Path, connections: list[Told]) -> None:
    for _ in range(3):
        with store.writing(logbook) as connection:
            assert connection.execute("PRAGMA synchronous").fetchone()[0] == 2, "FULL"
            assert connection.execute("PRAGMA foreign_keys").fetchone()[0] == 1
            assert connection.execute("PRAGMA journal_mode").fetchone()[0] == "wal"
            store.machines.save(connection, SAW)
    assert len(connections) == 3, "one connection for each block"
    for told in connections:
        assert told.pragmas() == ["PRAGMA journal_mode = WAL", "PRAGMA synchronous = FULL", "PRAGMA foreign_keys = ON"]
        begin, commit = told.asked.index("BEGIN IMMEDIATE"), told.asked.index("COMMIT")
        assert told.asked.index("PRAGMA foreign_keys = ON") < begin < commit
        assert told.asked[-1] == "PRAGMA wal_checkpoint(PASSIVE)", "checkpointed before it is closed, under the lock"


def test_making_the_file_is_just_as_safe(tmp_path: Path, connections: list[Told]) -> None:
    with store.writing(tmp_path / "new.db"):
        pass
    assert all("PRAGMA synchronous = FULL" in told.pragmas() for told in connections)
    assert len(connections) == 2, "one to make it, one to write"


def test_readers_cannot_write(logbook: Path, connections: list[Told]) -> None:
    with store.reading(logbook) as connection, pytest.raises(sqlite3.OperationalError, match="readonly"):
        connection.execute("DELETE FROM machine")
    (reader,) = connections
    assert reader.uri.endswith("?mode=ro")


def test_a_block_that_fails_writes_nothing(logbook: Path) -> None:
    def save_twice() -> None:
        with store.writing(logbook) as connection:
            for uid in ("lathe", "lathe"):
                connection.execute("INSERT INTO machine (uid, name, card) VALUES (?, 'Lathe', '{}')", (uid,))

    with pytest.raises(sqlite3.IntegrityError):
        save_twice()
    with store.reading(logbook) as connection:
        assert store.machines.all_machines(connection) == [SAW]


def test_a_reader_sees_one_state_from_begin_to_end(logbook: Path) -> None:
    with store.reading(logbook) as reader:
        before = store.machines.all_machines(reader)
        with store.writing(logbook) as connection:
            store.machines.save(connection, Machine("Lathe", uid="lathe"))
        assert store.machines.all_machines(reader) == before
    with store.reading(logbook) as reader:
        assert len(store.machines.all_machines(reader)) == 2


def test_an_absent_logbook_reads_as_empty_and_is_not_made(tmp_path: Path) -> None:
    path = tmp_path / "nowhere" / "logbook.db"
    with store.reading(path) as connection:
        assert store.machines.all_machines(connection) == []
    assert not path.parent.exists()


def test_an_empty_file_becomes_a_logbook(tmp_path: Path) -> None:
    path = tmp_path / "empty.db"
    path.touch()
    with store.reading(path) as connection:
        assert store.machines.all_machines(connection) == []
    with store.writing(path) as connection:
        store.machines.save(connection, SAW)
    assert ask(path, "SELECT name FROM machine") == [("Band saw",)]


@contextmanager
def left_alone(path: Path) -> Iterator[None]:
    before = path.read_bytes()
    yield
    assert path.read_bytes() == before


def both_refuse(path: Path, refusal: type[Exception], words: str) -> None:
    for opened in (store.reading, store.writing):
        with pytest.raises(refusal, match=words), opened(path) as connection:
            connection.execute("SELECT * FROM machine").fetchall()


def test_a_newer_file_is_refused(logbook: Path) -> None:
    connection = sqlite3.connect(logbook)
    connection.execute("PRAGMA user_version = 99")
    connection.execute("DROP VIEW open_items")
    connection.execute("ALTER TABLE machine RENAME TO apparatus")  # nothing of it is looked at before the version
    connection.close()
    with left_alone(logbook):
        both_refuse(logbook, store.NewerLogbook, r"newer version of this program \(file version 99.*install the newer")


@pytest.mark.parametrize("content", [b"Dear diary.\n", b"x" * 5000, b"SQLite format 3\0" + b"\7" * 600])
def test_a_file_that_is_no_database_is_refused(tmp_path: Path, content: bytes) -> None:
    path = tmp_path / "letter.txt"
    path.write_bytes(content)
    with left_alone(path):
        both_refuse(path, store.NotALogbook, "is not a logbook of this program: name another file")


def test_a_folder_is_refused(tmp_path: Path) -> None:
    both_refuse(tmp_path, store.NotALogbook, "is not a logbook of this program: name another file")


def test_a_database_of_another_program_is_refused(tmp_path: Path) -> None:
    path = tmp_path / "birds.db"
    connection = sqlite3.connect(path)
    connection.execute("CREATE TABLE bird (name TEXT)")
    connection.close()
    with left_alone(path):
        both_refuse(path, store.NotALogbook, "is not a logbook")


def test_a_damaged_file_is_refused(logbook: Path) -> None:
    with logbook.open("r+b") as file:
        file.seek(4096)
        file.write(b"\xff" * (logbook.stat().st_size - 4096))
    with left_alone(logbook):
        both_refuse(logbook, store.DamagedLogbook, "is damaged and was left as it is: put a backup in its place")


def test_a_file_under_a_file_has_no_place(tmp_path: Path) -> None:
    (tmp_path / "shed").write_text("not a folder")
    inside = tmp_path / "shed" / "logbook.db"
    with pytest.raises(store.NoPlace, match="Nothing can be written at"), store.writing(inside):
        pass


@pytest.fixture
def fixed(logbook: Path) -> Iterator[Path]:
    """The logbook in a folder where an ordinary person can only read."""
    folder = Path(tempfile.mkdtemp())
    path = folder / "logbook.db"
    path.write_bytes(logbook.read_bytes())
    path.chmod(0o444)
    folder.chmod(0o555)
    root = os.geteuid() == 0
    if root:
        os.seteuid(65534)
    try:
        yield path
    finally:
        if root:
            os.seteuid(0)
        folder.chmod(0o755)
        for left in folder.iterdir():
            left.unlink()
        folder.rmdir()


@pytest.mark.skipif(os.name == "nt", reason="folders are not made read-only like that there")
def test_a_place_that_is_read_only_can_be_read_but_not_written(fixed: Path) -> None:
    with store.reading(fixed) as connection:
        assert store.machines.all_machines(connection) == [SAW]
    with pytest.raises(store.NoPlace, match="give yourself the right to write there"), store.writing(fixed):
        pass
    assert [one.name for one in fixed.parent.iterdir()] == ["logbook.db"]


def test_somebody_elses_transaction_is_waited_for_and_then_told(logbook: Path) -> None:
    other = sqlite3.connect(logbook, isolation_level=None)
    other.execute("BEGIN IMMEDIATE")
    with pytest.raises(store.LockedOut, match="try again when it has finished"), store.writing(logbook, wait=0.1):
        pass
    other.execute("ROLLBACK")
    other.close()


def test_mistakes_of_the_program_stay_what_they_are(logbook: Path) -> None:
    with pytest.raises(sqlite3.OperationalError, match="no such table"), store.reading(logbook) as connection:
        connection.execute("SELECT * FROM birds")


def test_the_lock_is_let_go_whatever_happens(logbook: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def fail(path: Path, timeout: float) -> store.Connection:
        raise RuntimeError

    with monkeypatch.context() as patch:
        patch.setattr(files, "_open_to_write", fail)
        with pytest.raises(RuntimeError), store.writing(logbook):
            pass
    with store.writing(logbook, wait=0.1):
        pass
