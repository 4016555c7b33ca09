"""Logbooks of several computers become one: in any order, as often as one likes, with the same result."""

from __future__ import annotations

import json
import tempfile
from collections.abc import Iterator
from dataclasses import replace
from itertools import count
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given, settings

from tests.bench.conftest import Clock
from tests.bench.plain_reader import PlainReader
from tests.bench.test_undoing import DEEDS, EXAMPLES, TOLD, Bench, do
from worklog_tui import store
from worklog_tui.bench.desk import Desk
from worklog_tui.bench.exchange import Unmergeable, export, lines, merge
from worklog_tui.bench.history import history
from worklog_tui.bench.machines import add_machine
from worklog_tui.bench.note_acts import edit_note
from worklog_tui.bench.record import keep_lines, keep_note
from worklog_tui.bench.undoing import redo, undo
from worklog_tui.model import Machine
from worklog_tui.store.exchange import records

Told = list[tuple[int, str, int]]
Deeds = list[tuple[int, str, int, int]]


def computer(folder: str, number: int, of: Bench | None = None) -> Bench:
    """A bench on another computer; with the machines of another one, if it is given."""
    numbers = count(number * 1_000_000)
    bench = Bench.__new__(Bench)
    bench.clock = Clock()
    path = Path(folder) / f"{number}" / "l.db"
    bench.desk = Desk(path, (), bench.clock, f"bench-{number}", lambda: next(numbers), reads_with=PlainReader())
    path.parent.mkdir()
    if of is not None:
        bench.clock.moment = of.clock.moment
        merge(bench.desk, of.desk.logbook)
    return bench


def held(bench: Bench) -> list[str]:
    """All that a logbook holds which is not derived."""
    with store.reading(bench.desk.logbook) as connection:
        return list(lines(records(connection)))


def work(bench: Bench, told: Told, deeds: Deeds) -> None:
    for machine, words, hours in told:
        bench.say(machine, words, hours)
    for number, deed in enumerate(deeds):
        if do(bench, deed) and number % 4 == 3:
            undo(bench.desk)


@settings(max_examples=EXAMPLES // 2, deadline=None)
@given(told=TOLD, deeds=DEEDS, here=TOLD, mine=DEEDS, there=TOLD, yours=DEEDS)
def test_merging_is_a_union(told: Told, deeds: Deeds, here: Told, mine: Deeds, there: Told, yours: Deeds) -> None:
    with tempfile.TemporaryDirectory() as folder:
        first = Bench(folder)
        work(first, told, deeds)
        second = computer(folder, 2, first)
        assert (second.state(), held(second)) == (first.state(), held(first))
        work(first, here, mine)
        work(second, there, yours)
        third, fourth = computer(folder, 3), computer(folder, 4)
        for other in (first, second):
            merge(third.desk, other.desk.logbook)
        for other in (second, first):
            merge(fourth.desk, other.desk.logbook)
        merge(first.desk, second.desk.logbook)
        merge(second.desk, first.desk.logbook)
        for bench in (second, third, fourth):
            assert held(bench) == held(first)
            assert bench.state() == first.state()
            bench.consistent()
        again = merge(first.desk, second.desk.logbook)
        assert (again.notes, again.acts, again.sessions, again.machines) == (0, 0, 0, 0)
        assert held(first) == held(second)


@settings(max_examples=EXAMPLES // 2, deadline=None)
@given(told=TOLD, deeds=DEEDS)
def test_a_logbook_comes_back_out_of_its_file(told: Told, deeds: Deeds) -> None:
    with tempfile.TemporaryDirectory() as folder:
        bench = Bench(folder)
        work(bench, told, deeds)
        file = Path(folder) / "all.jsonl"
        written = export(bench.desk, file)
        other = computer(folder, 2)
        merge(other.desk, file)
        assert other.state() == bench.state()
        assert held(other) == held(bench) == file.read_text("utf-8").splitlines()
        assert written == len(held(bench)) - 2


@settings(max_examples=EXAMPLES // 2, deadline=None)
@given(told=TOLD, mine=DEEDS, yours=DEEDS)
def test_undo_after_a_merge_takes_back_what_this_computer_did(told: Told, mine: Deeds, yours: Deeds) -> None:
    with tempfile.TemporaryDirectory() as folder:
        first = Bench(folder)
        work(first, told, [])
        second = computer(folder, 2, first)
        work(second, [], yours)
        before = second.state()
        done = sum(do(first, deed) for deed in mine)
        merge(second.desk, first.desk.logbook)
        merge(first.desk, second.desk.logbook)
        for _ in range(done):
            undo(first.desk)
        assert first.state() == before, "what the other computer did stays"
        for _ in range(done):
            redo(first.desk)
        assert first.state() == second.state()


@pytest.fixture
def file(desk: Desk, saw: Machine, clock: Clock) -> Path:
    """An exported logbook."""
    keep_note(desk, saw.name, "the guide is cracked")
    clock.go_on(minutes=1)
    note = keep_note(desk, saw.name, "cleaned it").note
    edit_note(desk, note.uid, "the arm, cleaned it")
    target = desk.logbook.with_name("all.jsonl")
    export(desk, target)
    return target


def damaged(file: Path) -> Iterator[tuple[str, str]]:
    whole = file.read_text("utf-8")
    rows = whole.splitlines()
    yield "cut off or was altered", "\n".join(rows[:-1])
    yield "cut off or was altered", "\n".join([*rows[:2], *rows[3:]])
    yield "cut off or was altered", whole.replace("guide", "fence")
    yield "newer version", whole.replace('"version":1', '"version":2')
    yield "not a logbook that was exported", "\n".join(rows[1:])
    yield "not a logbook that was exported", "just some text"
    yield "not a logbook that was exported", ""


def test_a_damaged_or_newer_file_changes_nothing(file: Path, tmp_path: Path) -> None:
    numbers = count(1)
    other = Desk(tmp_path / "o.db", (), Clock(), "two", lambda: next(numbers), reads_with=PlainReader())
    add_machine(other, Machine("Lathe"))
    for number, (says, text) in enumerate(damaged(file)):
        bad = tmp_path / f"{number}.jsonl"
        bad.write_text(text, "utf-8")
        with pytest.raises(Unmergeable, match=says):
            merge(other, bad)
    strange = list(lines([{"kind": "spell", "uid": "x"}]))
    (tmp_path / "strange.jsonl").write_text("\n".join(strange) + "\n", "utf-8")
    with pytest.raises(Unmergeable, match="line 2: that is no record"):
        merge(other, tmp_path / "strange.jsonl")


def test_records_of_what_nobody_knows_are_left_out_and_counted(file: Path, desk: Desk, tmp_path: Path) -> None:
    rows: list[dict[str, Any]] = [json.loads(line) for line in file.read_text("utf-8").splitlines()[1:-1]]
    lone = tmp_path / "lone.jsonl"
    lone.write_text("\n".join(lines(row for row in rows if row["kind"] in ("note", "act"))) + "\n", "utf-8")
    other = replace(desk, logbook=tmp_path / "other.db", _kept={})
    found = merge(other, lone)
    assert (found.notes, found.left_out, found.acts) == (0, 2, 1)
    merge(other, file)
    assert [note.words for note in history(other, "Band saw").sessions[0].notes] == [
        "the guide is cracked", "the arm, cleaned it",
    ]  # fmt: skip


def test_what_was_imported_on_both_computers_is_there_once(desk: Desk, saw: Machine, tmp_path: Path) -> None:
    numbers = count(50)
    other = replace(desk, logbook=tmp_path / "other.db", device="two", chance=lambda: next(numbers), _kept={})
    merge_from = desk.logbook
    talk = "session 2031-04-02 09:00\n09:00 the guide is cracked\n09:10 cleaned it\n"
    merge(other, merge_from)
    keep_lines(desk, saw.name, talk)
    keep_lines(other, saw.name, talk)
    found = merge(desk, other.logbook)
    assert (found.sessions, found.notes) == (0, 0)
    assert len(history(desk, saw.name).sessions[0].notes) == 2


def test_two_machines_of_one_name_are_told(desk: Desk, saw: Machine, tmp_path: Path) -> None:
    numbers = count(70)
    other = Desk(tmp_path / "o.db", (), Clock(), "two", lambda: next(numbers), reads_with=PlainReader())
    add_machine(other, Machine(saw.name))
    assert merge(desk, other.logbook).alike == (saw.name,)
