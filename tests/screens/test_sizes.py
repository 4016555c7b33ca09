"""Every place can be drawn at any size, and the size may change while it is shown."""

from __future__ import annotations

import pytest

from tests.screens.bench_in_memory import Bench, on_screen, settle, type_in
from worklog_tui.app import Recorder
from worklog_tui.widgets.note_line import NoteLine

SIZES = [(200, 60), (110, 30), (109, 30), (80, 24), (60, 20), (48, 14), (40, 12), (30, 8), (20, 5), (10, 3), (2, 1)]


def long_log(bench: Bench) -> None:
    for number in range(30):
        bench.keep_note("Band saw", f"need a new belt number {number} " + "and it is a long story " * 5)


async def test_the_recorder_at_every_size(bench: Bench) -> None:
    long_log(bench)
    app = Recorder(bench, "Band saw")
    async with app.run_test(size=(80, 24)) as pilot:
        await settle(pilot)
        for size in [*SIZES, (80, 24)]:
            await pilot.resize_terminal(*size)
            for place in ("timeline", "items", "step"):
                await app.screen.run_action(f"go('{place}')")
                await pilot.pause()
        assert "number 29" in on_screen(app) or "look at the spark" in on_screen(app)


async def test_a_list_that_was_out_of_sight_when_the_screen_shrank_begins_at_its_first_row(bench: Bench) -> None:
    long_log(bench)
    app = Recorder(bench, "Band saw")
    async with app.run_test(size=(160, 45)) as pilot:
        await settle(pilot)
        await pilot.press("escape", "v")
        await settle(pilot)
        await pilot.resize_terminal(48, 14)
        await settle(pilot)
        await pilot.press("o")
        await settle(pilot)
        assert "Open (30)" in on_screen(app)


async def test_the_note_line_is_in_sight_even_at_twenty_by_five(bench: Bench) -> None:
    app = Recorder(bench, "Band saw")
    async with app.run_test(size=(20, 5)) as pilot:
        await settle(pilot)
        await type_in(pilot, "gap 18 thou")
        await pilot.press("enter")
        await settle(pilot)
        assert [note.words for note in bench.notes] == ["gap 18 thou"]
        assert app.screen.query_one(NoteLine).region.bottom <= 5
        assert "Kept" in on_screen(app)


@pytest.mark.parametrize("size", SIZES)
async def test_the_first_screen_and_the_card_at_every_size(bench: Bench, size: tuple[int, int]) -> None:
    app = Recorder(bench)
    async with app.run_test(size=size) as pilot:
        await settle(pilot)
        await pilot.press("n")
        await pilot.pause()
        await pilot.press("escape", "down", "up")
        await pilot.pause()


async def test_a_wider_screen_wraps_anew_and_keeps_the_end_in_sight(bench: Bench) -> None:
    long_log(bench)
    app = Recorder(bench, "Band saw")
    async with app.run_test(size=(60, 24)) as pilot:
        await settle(pilot)
        await pilot.resize_terminal(160, 30)
        await settle(pilot)
        assert "number 29" in on_screen(app)
