"""One act over a run of lines: mark the first, mark the last, say what is to be done."""

from __future__ import annotations

from pathlib import Path

import pytest
from textual.pilot import Pilot

from tests.screens.bench_in_memory import on_screen, settle
from tests.screens.logbook_desk import SAW, Clock, desk_in, recorder
from worklog_tui.bench.acting import CannotAct
from worklog_tui.bench.history import history
from worklog_tui.bench.lines import seconds
from worklog_tui.bench.machines import add_machine
from worklog_tui.model import Machine

WORDS = ("the gide is cracked", "the gide is worn", "a cup of tea")


async def mark_all(pilot: Pilot[int]) -> None:
    """Mark every line of the timeline."""
    await settle(pilot)
    await pilot.press("escape", "home", "down", "space")
    await settle(pilot)
    assert "press the space bar again" in on_screen(pilot.app)
    await pilot.press("end", "space")
    await settle(pilot)
    assert "3 lines together" in on_screen(pilot.app)


async def test_a_word_heard_wrong_is_put_right_in_all_of_them(tmp_path: Path) -> None:
    desk = desk_in(tmp_path, Clock(), *WORDS)
    app = recorder(desk)
    async with app.run_test(size=(80, 24)) as pilot:
        await mark_all(pilot)
        await pilot.press("w", *"gide", "tab", *"guide", "enter")
        await settle(pilot)
        assert "put right to “guide” in 2 notes. u takes it back." in on_screen(app)
    said = [note.words for note in history(desk, SAW).sessions[0].notes]
    assert said == ["the guide is cracked", "the guide is worn", "a cup of tea"]


async def test_one_subject_for_a_run_of_lines_that_left_it_unsaid(tmp_path: Path) -> None:
    desk = desk_in(tmp_path, Clock(), "the guide is cracked", "cleaned", "cleaned once more")
    app = recorder(desk)
    async with app.run_test(size=(80, 24)) as pilot:
        await mark_all(pilot)
        await pilot.press("s", *"fence", "enter")
        await settle(pilot)
        assert "2 facts now about fence. u takes it back." in on_screen(app)
        assert "fence cleaned" in on_screen(app)
        await pilot.press("u")
        await settle(pilot)
        assert "fence cleaned" not in on_screen(app)
    assert [fact.about for fact in history(desk, SAW).facts()] == ["guide", "guide", "guide"]


async def test_a_run_of_lines_is_moved_in_time_by_what_is_typed(tmp_path: Path) -> None:
    desk = desk_in(tmp_path, Clock(), *WORDS)
    before = [note.instant for note in history(desk, SAW).sessions[0].notes]
    app = recorder(desk)
    async with app.run_test(size=(80, 24)) as pilot:
        await mark_all(pilot)
        await pilot.press("t", *"-1:30", "enter")
        await settle(pilot)
        assert "moved by 90 seconds to earlier. u takes it back." in on_screen(app)
    after = [note.instant for note in history(desk, SAW).sessions[0].notes]
    moved = [(a.moment() - b.moment()).total_seconds() for a, b in zip(after, before, strict=True) if a and b]
    assert moved == [-90.0] * 3


async def test_lines_of_another_day_are_dated(tmp_path: Path) -> None:
    desk = desk_in(tmp_path, Clock(), *WORDS)
    app = recorder(desk)
    async with app.run_test(size=(80, 24)) as pilot:
        await mark_all(pilot)
        await pilot.press("d", *"yesterday", "enter")
        await settle(pilot)
        assert "The date of the session is set. u takes it back." in on_screen(app)
    start = history(desk, SAW).sessions[0].session.start
    assert start is not None
    assert (start.utc[:10], start.known) == ("2031-04-11", "assumed")


async def test_lines_of_another_machine_go_there(tmp_path: Path) -> None:
    desk = desk_in(tmp_path, Clock(), *WORDS)
    add_machine(desk, Machine("Pillar drill"))
    app = recorder(desk)
    async with app.run_test(size=(80, 24)) as pilot:
        await mark_all(pilot)
        await pilot.press("m", *"Pillar drill", "enter")
        await settle(pilot)
    assert sum(len(one.notes) for one in history(desk, SAW).sessions) == 0
    assert len(history(desk, "Pillar drill").sessions[0].notes) == 3


async def test_all_of_them_are_struck_out_and_u_brings_them_back(tmp_path: Path) -> None:
    desk = desk_in(tmp_path, Clock(), *WORDS)
    app = recorder(desk)
    async with app.run_test(size=(80, 24)) as pilot:
        await mark_all(pilot)
        await pilot.press("x")
        await settle(pilot)
        assert "3 notes struck out" in on_screen(app)
        await pilot.press("u")
        await settle(pilot)
        assert "a cup of tea" in on_screen(app)


def test_a_time_offset_is_written_as_a_clock_shows_it() -> None:
    assert [seconds(said) for said in ("30", "-30", "+1:05", "-1:30")] == [30, -30, 65, -90]
    with pytest.raises(CannotAct, match="how many seconds"):
        seconds("a bit")
