"""A backup put back is the logbook as it was; a bad backup changes nothing."""

from __future__ import annotations

import sqlite3
from dataclasses import replace
from pathlib import Path

import pytest

from tests.bench.conftest import Clock
from worklog_tui import store
from worklog_tui.bench.backups import back_up, put_back
from worklog_tui.bench.desk import Desk
from worklog_tui.bench.history import history, keep_comments
from worklog_tui.bench.record import keep_note

TABLES = ("machine", "session", "note", "revision", "act", "clip", "comment", "fact", "context", "stamp", "item")


def rows(path: Path) -> dict[str, list[tuple[object, ...]]]:
    connection = sqlite3.connect(f"{path.as_uri()}?mode=ro", uri=True)
    try:
        return {table: connection.execute(f"SELECT * FROM {table} ORDER BY 1").fetchall() for table in TABLES}
    finally:
        connection.close()


@pytest.mark.usefixtures("saw")
def test_backup_delete_restore_gives_the_same_rows(desk: Desk) -> None:
    keep_note(desk, "Band saw", "the guide is cracked, cleaned it")
    keep_comments(desk, "Band saw", ["Which blade?"])
    before = rows(desk.logbook)
    copy = back_up(desk)
    assert copy.name == "logbook-backup-2031-04-12-140500.db"
    assert rows(copy) == before
    for file in desk.logbook.parent.glob("logbook.db*"):
        file.unlink()
    put_back(desk, copy)
    assert rows(desk.logbook) == before
    keep_note(desk, "Band saw", "and on")


@pytest.mark.usefixtures("saw")
def test_what_the_logbook_was_is_kept_beside_it(desk: Desk, clock: Clock) -> None:
    keep_note(desk, "Band saw", "one")
    copy = back_up(desk)
    keep_note(desk, "Band saw", "two")
    clock.go_on(minutes=1)
    aside = put_back(desk, copy)
    assert len(rows(desk.logbook)["note"]) == 1
    assert len(rows(aside)["note"]) == 2
    assert [note.words for note in history(desk, "Band saw").sessions[0].notes] == ["one"]


@pytest.mark.usefixtures("saw")
def test_a_reader_is_not_disturbed(desk: Desk) -> None:
    keep_note(desk, "Band saw", "one")
    copy = back_up(desk)
    keep_note(desk, "Band saw", "two")
    with store.reading(desk.logbook) as reader:
        count = "SELECT count(*) FROM note"
        assert reader.execute(count).fetchone()[0] == 2
        put_back(desk, copy)
        assert reader.execute(count).fetchone()[0] == 2
    with store.reading(desk.logbook) as reader:
        assert reader.execute(count).fetchone()[0] == 1


@pytest.mark.usefixtures("saw")
def test_waiting_notes_are_in_the_backup(desk: Desk) -> None:
    from filelock import FileLock

    with FileLock(desk.logbook.with_name("logbook.db.lock")):
        keep_note(replace(desk, patience=0.05), "Band saw", "one")
    assert len(rows(back_up(desk))["note"]) == 1


@pytest.mark.usefixtures("saw")
@pytest.mark.parametrize(
    ("spoil", "refusal"),
    [
        (lambda data: b"a letter", store.NotALogbook),
        (lambda data: data[:4096] + b"\xff" * (len(data) - 4096), store.DamagedLogbook),
        (lambda data: data[:60] + (99).to_bytes(4, "big") + data[64:], store.NewerLogbook),
        (lambda data: b"", store.NotALogbook),
    ],
)
def test_a_bad_backup_changes_nothing(desk: Desk, spoil, refusal: type[Exception]) -> None:  # type: ignore[no-untyped-def]
    keep_note(desk, "Band saw", "one")
    copy = back_up(desk)
    copy.write_bytes(spoil(copy.read_bytes()))
    before = rows(desk.logbook)
    with pytest.raises(refusal):
        put_back(desk, copy)
    assert rows(desk.logbook) == before
