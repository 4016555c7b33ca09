"""The recorder: what is typed is understood, kept and shown."""

from __future__ import annotations

import pytest

from tests.screens.bench_in_memory import Bench, on_screen, settle, type_in
from worklog_tui.app import Recorder
from worklog_tui.bench.record import NoWords
from worklog_tui.widgets.items import OpenItems
from worklog_tui.widgets.next_step import NextStep
from worklog_tui.widgets.note_line import NoteLine
from worklog_tui.widgets.places import Places
from worklog_tui.widgets.timeline import Timeline
from worklog_tui.widgets.understood import Understood

SIZES = [(80, 24), (140, 40)]


@pytest.mark.parametrize("size", SIZES)
async def test_typing_shows_what_is_understood_and_underlines_its_words(bench: Bench, size: tuple[int, int]) -> None:
    app = Recorder(bench, "Band saw")
    async with app.run_test(size=size) as pilot:
        await type_in(pilot, "set the gap 18 thou")
        await settle(pilot)
        assert "Understood: gap of the points set to 0.018 in." in on_screen(app)
        line = app.screen.query_one(NoteLine)
        assert [line.text[start:end] for start, end in line.marks] == ["gap 18 thou"]
        underlined = [span for span in line.get_line(0).spans if "underline" in str(span.style)]
        assert [(span.start, span.end) for span in underlined] == [(8, 19)]


@pytest.mark.parametrize("size", SIZES)
async def test_enter_keeps_the_note_and_says_so(bench: Bench, size: tuple[int, int]) -> None:
    app = Recorder(bench, "Band saw")
    async with app.run_test(size=size) as pilot:
        await type_in(pilot, "set the gap 18 thou")
        await pilot.press("enter")
        await settle(pilot)
        assert [note.words for note in bench.notes] == ["set the gap 18 thou"]
        assert app.screen.query_one(NoteLine).text == ""
        seen = on_screen(app)
        assert "Kept 1" in seen or "Kept 0" in seen or "Kept 2" in seen
        assert "14:05  set the gap 18 thou" in seen
        assert "Session 1, Saturday 12 April 2031" in seen


async def test_a_note_that_waits_beside_the_logbook_is_said_to_be_kept(bench: Bench) -> None:
    bench.spool = True
    app = Recorder(bench, "Band saw")
    async with app.run_test() as pilot:
        await type_in(pilot, "it runs")
        await pilot.press("enter")
        await settle(pilot)
        assert app.screen.query_one(Understood).said == "Kept beside the logbook, taken in soon."


async def test_words_that_could_not_be_kept_come_back(bench: Bench) -> None:
    bench.refuse = NoWords("There is no room left on the disk")
    app = Recorder(bench, "Band saw")
    async with app.run_test() as pilot:
        await type_in(pilot, "it runs")
        await pilot.press("enter")
        await settle(pilot)
        assert app.screen.query_one(NoteLine).text == "it runs"
        assert "Not kept: There is no room left on the disk." in on_screen(app)
        await pilot.press("enter")
        await settle(pilot)
        assert [note.words for note in bench.notes] == ["it runs"]


async def test_enter_on_an_empty_line_and_enter_held_down_keep_nothing_twice(bench: Bench) -> None:
    app = Recorder(bench, "Band saw")
    async with app.run_test() as pilot:
        await pilot.press("enter")
        await type_in(pilot, "it runs")
        await pilot.press("enter", "enter", "enter")
        await settle(pilot)
        assert [note.words for note in bench.notes] == ["it runs"]


async def test_many_notes_in_a_hurry_are_kept_in_their_order(bench: Bench) -> None:
    app = Recorder(bench, "Band saw")
    async with app.run_test() as pilot:
        for number in range(12):
            await type_in(pilot, f"n{number}")
            await pilot.press("enter")
        await settle(pilot)
        assert [note.words for note in bench.notes] == [f"n{number}" for number in range(12)]
        shown = [row.words for row in app.screen.query_one(Timeline).rows if not row.heading]
        assert shown == [f"n{number}" for number in range(12)]


async def test_on_a_narrow_screen_one_key_each_shows_open_items_and_next_step(bench: Bench) -> None:
    app = Recorder(bench, "Band saw")
    async with app.run_test(size=(80, 24)) as pilot:
        await type_in(pilot, "need a new belt")
        await pilot.press("enter")
        await settle(pilot)
        await pilot.press("escape", "o")
        await pilot.pause()
        assert "part needed, session 1, 14:05" in on_screen(app)
        assert isinstance(app.focused, OpenItems)
        await pilot.press("s")
        await pilot.pause()
        assert "Why: it is quick, and most faults are there" in on_screen(app)
        assert "mind the high voltage" in on_screen(app)
        assert isinstance(app.focused, NextStep)
        await pilot.press("t")
        await pilot.pause()
        assert "14:05  need a new belt" in on_screen(app)


async def test_on_a_wide_screen_all_three_stand_side_by_side(bench: Bench) -> None:
    app = Recorder(bench, "Band saw")
    async with app.run_test(size=(140, 40)) as pilot:
        await type_in(pilot, "need a new belt")
        await pilot.press("enter")
        await settle(pilot)
        seen = on_screen(app)
        assert all(part in seen for part in ("14:05  need a new belt", "part needed, session 1", "look at the spark"))


async def test_an_open_item_leads_to_where_it_was_said(bench: Bench) -> None:
    app = Recorder(bench, "Band saw")
    async with app.run_test(size=(80, 24)) as pilot:
        for words in ("first", "need a new belt", "last"):
            await type_in(pilot, words)
            await pilot.press("enter")
        await settle(pilot)
        await pilot.press("escape", "o", "down", "enter")
        await pilot.pause()
        timeline = app.screen.query_one(Timeline)
        assert app.focused is timeline
        assert timeline.row is not None
        assert timeline.row.words == "need a new belt"
        await pilot.press("enter")
        await settle(pilot)
        assert "from the words “need a new belt”" in on_screen(app)


async def test_single_keys_are_text_in_the_note_line_and_keys_outside_it(bench: Bench) -> None:
    app = Recorder(bench, "Band saw")
    async with app.run_test(size=(80, 24)) as pilot:
        await type_in(pilot, "qmost")
        assert app.screen.query_one(NoteLine).text == "qmost"
        await pilot.press("escape", "n")
        assert isinstance(app.focused, NoteLine)
        assert app.screen.query_one(NoteLine).text == "qmost"
        await pilot.press("tab")
        assert not isinstance(app.focused, NoteLine)


async def test_the_names_of_the_places_can_be_clicked(bench: Bench) -> None:
    app = Recorder(bench, "Band saw")
    async with app.run_test(size=(80, 24)) as pilot:
        await settle(pilot)
        await pilot.click(Places, offset=(app.screen.query_one(Places).starts()["step"] + 1, 0))
        assert isinstance(app.focused, NextStep)
        await pilot.click(Places, offset=(app.screen.query_one(Places).starts()["timeline"] + 1, 0))
        assert isinstance(app.focused, Timeline)


async def test_a_log_that_exists_is_shown_with_its_last_note_in_sight(bench: Bench) -> None:
    for number in range(200):
        bench.keep_note("Band saw", f"note number {number}")
    app = Recorder(bench, "Band saw")
    async with app.run_test(size=(80, 24)) as pilot:
        await settle(pilot)
        assert "note number 199" in on_screen(app)
        assert "1 session, not filming, 200 notes" in on_screen(app)
        await pilot.press("escape", "home")
        await pilot.pause()
        assert "note number 0" in on_screen(app)


async def test_the_machines_are_one_key_away_and_nothing_is_lost_on_the_way(bench: Bench) -> None:
    app = Recorder(bench, "Band saw")
    async with app.run_test(size=(80, 24)) as pilot:
        await settle(pilot)
        await type_in(pilot, "half a tho")
        await pilot.press("escape", "m")
        await settle(pilot)
        assert "Which machine is on the bench?" in on_screen(app)
        await pilot.press("enter")
        await settle(pilot)
        assert app.screen.query_one(NoteLine).text == "half a tho"
