"""The file as another tool opens it, with nothing but SQLite: documented tables and views, keys, types, times."""

from __future__ import annotations

import re
import sqlite3
from collections.abc import Iterator

import pytest

from tests.bench.conftest import Clock
from tests.keeping.conftest import ROOT
from worklog_tui.bench.desk import Desk
from worklog_tui.bench.fact_acts import correct_fact
from worklog_tui.bench.history import history
from worklog_tui.bench.note_acts import edit_note, strike_notes
from worklog_tui.bench.record import keep_note
from worklog_tui.bench.review import recap
from worklog_tui.model import Machine

DEVELOPERS = (ROOT / "DEVELOPERS.md").read_text(encoding="utf-8")
TIME = re.compile(r"\d{4}-\d\d-\d\dT\d\d:\d\d:\d\dZ")


@pytest.fixture
def opened(desk: Desk, saw: Machine, clock: Clock) -> Iterator[sqlite3.Connection]:
    """A logbook with notes, a correction and a struck note, opened plainly while the program has it too."""
    note = keep_note(desk, saw.name, "the gide is cracked").note
    clock.go_on(minutes=1)
    wrong = keep_note(desk, saw.name, "the arm is cracked").note
    edit_note(desk, note.uid, "the guide is cracked")
    strike_notes(desk, [wrong.uid])
    correct_fact(desk, history(desk, saw.name).facts()[0].key, {"part": "upper guide"})
    recap(desk, saw.name)
    connection = sqlite3.connect(f"{desk.logbook.as_uri()}?mode=ro", uri=True)
    yield connection
    connection.close()


def test_views_show_what_counts(opened: sqlite3.Connection) -> None:
    assert opened.execute("SELECT machine, words FROM timeline").fetchall() == [("Band saw", "the guide is cracked")]
    assert opened.execute("SELECT kind, about, question FROM facts").fetchall() == [("finding", "upper guide", 0)]
    assert opened.execute("SELECT count(*) FROM readings").fetchone() == (0,)
    assert opened.execute("SELECT about, state FROM open_items").fetchone()[0].startswith("upper guide")
    verbs = [row[0] for row in opened.execute("SELECT verb FROM acts")]
    assert verbs == ["edit note", "strike note", "correct fact"]


def test_every_table_and_view_is_documented(opened: sqlite3.Connection) -> None:
    found = opened.execute("SELECT name FROM sqlite_schema WHERE type IN ('table', 'view')")
    for (name,) in found:
        if not name.startswith(("sqlite_", "_sqlite", "note_words_")):
            assert f"`{name}`" in DEVELOPERS, name


def test_times_are_iso_8601_in_utc(opened: sqlite3.Connection) -> None:
    for table in ("session", "note", "act", "revision"):
        for (utc,) in opened.execute(f"SELECT utc FROM {table} WHERE utc IS NOT NULL"):
            assert TIME.fullmatch(utc), (table, utc)


def test_tables_are_strict_and_keys_hold(opened: sqlite3.Connection) -> None:
    rows = opened.execute("SELECT name, strict FROM pragma_table_list WHERE type = 'table' AND schema = 'main'")
    assert {strict for name, strict in rows if not name.startswith(("sqlite_", "_sqlite"))} == {1}
    assert opened.execute("PRAGMA foreign_key_check").fetchall() == []
    with pytest.raises(sqlite3.OperationalError, match="readonly"):
        opened.execute("UPDATE note SET words = ''")


def test_the_full_text_search_is_there_for_other_tools_too(opened: sqlite3.Connection) -> None:
    match = "SELECT note.words FROM note_words JOIN note ON note.id = note_words.rowid WHERE note_words MATCH 'guide'"
    assert opened.execute(match).fetchall() == [("the guide is cracked",)]
