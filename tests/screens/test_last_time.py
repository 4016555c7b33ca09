"""Coming back: what is known since last time is shown first, and a note leads on to the timeline."""

from __future__ import annotations

from datetime import timedelta

import pytest

from tests.screens.bench_in_memory import START, Bench, on_screen, settle, type_in
from worklog_tui.app import Recorder
from worklog_tui.widgets.last_time import LastTime
from worklog_tui.widgets.note_line import NoteLine
from worklog_tui.widgets.timeline import Timeline

SIZES = [(80, 24), (160, 45)]


def recorder(bench: Bench, hours: float) -> Recorder:
    """A recorder that is opened so many hours after the session of the bench began."""
    bench.clock = START.moment() + timedelta(hours=hours)
    return Recorder(bench, "Band saw")


@pytest.mark.parametrize("size", SIZES)
async def test_after_a_break_it_is_shown_first_in_plain_words(bench: Bench, size: tuple[int, int]) -> None:
    bench.keep_note("Band saw", "need a new belt")
    app = recorder(bench, 24 * 21)
    async with app.run_test(size=size) as pilot:
        await settle(pilot)
        seen = on_screen(app)
        assert "[since last time]" in seen
        assert "Session 1, Saturday 12 April 2031, 3 weeks ago" in seen
        assert "Last said: “need a new belt”" in seen
        assert "look at the spark" in seen
        assert isinstance(app.focused, NoteLine)


async def test_within_a_session_the_timeline_is_shown_and_one_key_looks_back(bench: Bench) -> None:
    bench.keep_note("Band saw", "need a new belt")
    app = recorder(bench, 1)
    async with app.run_test(size=(80, 24)) as pilot:
        await settle(pilot)
        assert "[timeline]" in on_screen(app)
        await pilot.press("escape", "l")
        await pilot.pause()
        assert isinstance(app.focused, LastTime)
        assert "Still open besides" in on_screen(app)


@pytest.mark.parametrize("size", SIZES)
async def test_the_first_note_after_the_break_is_in_sight_at_the_end_of_the_timeline(
    bench: Bench, size: tuple[int, int]
) -> None:
    for number in range(80):
        bench.keep_note("Band saw", f"note number {number}, which is a long one " + "that goes on and on " * 5)
    app = recorder(bench, 48)
    async with app.run_test(size=size) as pilot:
        await settle(pilot)
        assert "[since last time]" in on_screen(app)
        await type_in(pilot, "need a new blade")
        await pilot.press("enter")
        await settle(pilot)
        assert "[timeline]" in on_screen(app)
        assert "14:05  need a new blade" in on_screen(app)
        await pilot.resize_terminal(size[0] - 10, size[1] - 8)
        await settle(pilot)
        assert "14:05  need a new blade" in on_screen(app)


async def test_a_machine_without_notes_shows_its_empty_timeline(bench: Bench) -> None:
    app = recorder(bench, 48)
    async with app.run_test(size=(80, 24)) as pilot:
        await settle(pilot)
        assert "No notes yet. The first one begins the first session." in on_screen(app)


async def test_going_up_brings_the_earlier_notes_page_by_page(bench: Bench) -> None:
    for number in range(900):
        bench.keep_note("Band saw", f"note number {number}")
    app = recorder(bench, 1)
    async with app.run_test(size=(80, 24)) as pilot:
        await settle(pilot)
        timeline = app.screen.query_one(Timeline)
        assert len(timeline.rows) == 301
        assert "1 session, not filming, 900 notes" in on_screen(app)
        await pilot.press("escape")
        for _ in range(20):
            await pilot.press("pageup")
        await settle(pilot)
        assert len(timeline.rows) == 601
        assert timeline.row is not None
        assert timeline.row.words in on_screen(app)
        await pilot.press("home")
        await settle(pilot)
        assert len(timeline.rows) == 901
        assert "note number 0" in on_screen(app)


async def test_the_page_keys_go_through_it_while_the_note_line_keeps_what_is_typed(bench: Bench) -> None:
    for number in range(30):
        bench.keep_note("Band saw", f"need a new belt number {number}")
    app = recorder(bench, 24 * 21)
    async with app.run_test(size=(48, 14)) as pilot:
        await settle(pilot)
        assert "Session 1" in on_screen(app)
        await type_in(pilot, "half a tho")
        await pilot.press("pagedown", "pagedown")
        await settle(pilot)
        assert "Session 1" not in on_screen(app)
        await pilot.press("pageup", "pageup", "pageup")
        await settle(pilot)
        assert "Session 1" in on_screen(app)
        line = app.screen.query_one(NoteLine)
        assert app.focused is line
        assert line.text == "half a tho"
