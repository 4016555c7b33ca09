"""Old files are brought up to date step by step; a copy of them is kept first."""

from __future__ import annotations

import sqlite3
import time
from pathlib import Path

import pytest

from worklog_tui import store
from worklog_tui.store import files, migrations, schema

SHAPE = "SELECT type, name, tbl_name, sql FROM sqlite_schema ORDER BY type, name"
NOTE = (
    "INSERT INTO machine (uid, name, card) VALUES ('m', 'Band saw', '{}')",
    "INSERT INTO session (uid, machine_id, arrival, source) VALUES ('s', 1, 0, 'live')",
    "INSERT INTO note (uid, session_id, machine_id, arrival, stands_at, said_at, track, first_words, words)"
    " VALUES ('n', 1, 1, 0, 0, '14:05', 'live', 'the guide is cracked', 'the guide is cracked')",
)


def ask(path: Path, sql: str) -> list[tuple[object, ...]]:
    connection = sqlite3.connect(path)
    try:
        return connection.execute(sql).fetchall()
    finally:
        connection.close()


def old_file(path: Path, version: int) -> Path:
    """A logbook as the program of that version left it, with one note."""
    migrations.migrate(path, upto=version)
    connection = sqlite3.connect(path)
    for statement in NOTE:
        connection.execute(statement)
    connection.commit()
    connection.close()
    return path


def test_each_step_has_its_name_and_version() -> None:
    assert len(migrations._NAMES) == len(schema.STEPS) == schema.VERSION


@pytest.mark.parametrize("version", range(1, schema.VERSION))
def test_an_old_file_gets_the_shape_of_a_new_one_and_keeps_its_notes(tmp_path: Path, version: int) -> None:
    new = tmp_path / "new.db"
    with store.writing(new):
        pass
    old = old_file(tmp_path / "old.db", version)
    before = ask(old, SHAPE)
    with store.writing(old):
        pass
    assert ask(old, SHAPE) == ask(new, SHAPE)
    assert ask(old, "PRAGMA user_version") == [(schema.VERSION,)]
    with store.reading(old) as connection:
        assert [note.uid for note in store.search.find(connection, "cracked")] == ["n"]
    copy = tmp_path / f"old.db.version-{version}"
    assert ask(copy, SHAPE) == before
    assert ask(copy, "SELECT words FROM note") == [("the guide is cracked",)]
    assert ask(copy, "PRAGMA integrity_check") == [("ok",)]


def test_reading_an_old_file_brings_it_up_to_date(tmp_path: Path) -> None:
    old = old_file(tmp_path / "old.db", 1)
    with store.reading(old) as connection:
        assert len(store.search.find(connection, "cracked")) == 1
    assert (tmp_path / "old.db.version-1").exists()


def test_an_old_file_where_nothing_can_be_written_is_refused(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    old = old_file(tmp_path / "old.db", 1)

    def refuse(path: Path, wait: float) -> None:
        raise store.NoPlace(path)

    monkeypatch.setattr(files, "_lock", refuse)
    with pytest.raises(store.OldAndFixed, match="copy it to a place that can be written"), store.reading(old):
        pass


def test_a_step_that_fails_changes_nothing(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    old = old_file(tmp_path / "old.db", 1)
    before = ask(old, SHAPE)
    broken = (schema.STEPS[0], (*schema.STEPS[1], "CREATE TABLE note (id INTEGER)"), *schema.STEPS[2:])
    with monkeypatch.context() as patch:
        patch.setattr(schema, "STEPS", broken)
        with pytest.raises(sqlite3.OperationalError, match="already exists"), store.writing(old):
            pass
    shape = [row for row in ask(old, SHAPE) if "_sqlite_migrations" not in str(row[2])]
    assert shape == [row for row in before if "_sqlite_migrations" not in str(row[2])]
    assert ask(old, "PRAGMA user_version") == [(1,)]
    with store.writing(old):
        pass
    assert ask(old, "PRAGMA user_version") == [(schema.VERSION,)]


def test_a_backup_is_whole_also_while_the_logbook_is_in_use(tmp_path: Path) -> None:
    path = old_file(tmp_path / "logbook.db", schema.VERSION)
    with store.writing(path) as connection:
        connection.execute("UPDATE machine SET name = 'Lathe'")
        store.backup(path, tmp_path / "copy.db")
    assert ask(tmp_path / "copy.db", "SELECT name FROM machine") == [("Band saw",)]
    assert ask(tmp_path / "copy.db", "PRAGMA user_version") == [(schema.VERSION,)]
    assert ask(tmp_path / "copy.db", "PRAGMA application_id") == [(schema.APPLICATION_ID,)]
    assert not (tmp_path / "copy.db.part").exists()


def test_sqlite_utils_is_not_loaded_to_keep_a_note(tmp_path: Path) -> None:
    import subprocess
    import sys

    path = tmp_path / "logbook.db"
    with store.writing(path):
        pass
    program = (
        "import sys; from pathlib import Path; from worklog_tui import store\n"
        "with store.writing(Path(sys.argv[1])): pass\n"
        "print(sorted({'sqlite_utils', 'pint', 'textual', 'rapidfuzz', 'dateutil'} & set(sys.modules)))"
    )
    began = time.perf_counter()
    done = subprocess.run([sys.executable, "-c", program, str(path)], capture_output=True, text=True, check=True)
    assert done.stdout.strip() == "[]"
    assert time.perf_counter() - began < 1.5
