"""Correcting is as quick as the note: up to the line, one key, Enter; everything can be taken back."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest

from tests.screens.bench_in_memory import on_screen, settle, type_in
from tests.screens.logbook_desk import SAW, Clock, desk_in, recorder
from worklog_tui import places
from worklog_tui.bench.review import review
from worklog_tui.model import Finding, Work
from worklog_tui.screens.note_page import NotePage
from worklog_tui.widgets.note_line import NoteLine
from worklog_tui.widgets.timeline import Timeline

SIZES = [(80, 24), (48, 14)]


@pytest.mark.parametrize("size", SIZES)
async def test_the_words_of_a_note_and_back_again(tmp_path: Path, size: tuple[int, int]) -> None:
    desk = desk_in(tmp_path, Clock(), "the guide is cracked", "the table cleaned")
    app = recorder(desk)
    async with app.run_test(size=size) as pilot:
        await settle(pilot)
        await pilot.press("escape", "t", "up", "e")
        await pilot.pause()
        await pilot.press(*"!", "enter")
        await settle(pilot)
        assert [note.words for note in review(desk, SAW).history.sessions[0].notes] == [
            "the guide is cracked!", "the table cleaned",
        ]  # fmt: skip
        assert "the guide is cracked!" in on_screen(app)
        pointed = app.screen.query_one(Timeline).row
        assert pointed is not None
        assert pointed.words == "the guide is cracked!"
        await pilot.press("u")
        await settle(pilot)
        assert "cracked!" not in on_screen(app).split("Taken back")[0]
        await pilot.press("y")
        await settle(pilot)
        assert "the guide is cracked!" in on_screen(app)


async def test_a_note_is_struck_out_with_one_key_and_the_row_in_its_place_is_pointed_at(tmp_path: Path) -> None:
    desk = desk_in(tmp_path, Clock(), "one", "two", "three")
    app = recorder(desk)
    async with app.run_test(size=(80, 24)) as pilot:
        await settle(pilot)
        await pilot.press("escape", "t", "up", "x")
        await settle(pilot)
        assert [note.words for note in review(desk, SAW).history.sessions[0].notes] == ["one", "three"]
        timeline = app.screen.query_one(Timeline)
        assert timeline.row is not None
        assert timeline.row.words == "three"
        await pilot.press("u")
        await settle(pilot)
        assert "two" in on_screen(app)


@pytest.mark.parametrize("size", SIZES)
async def test_the_part_and_the_verdict_of_what_was_found(tmp_path: Path, size: tuple[int, int]) -> None:
    desk = desk_in(tmp_path, Clock(), "the guide is cracked")
    app = recorder(desk)
    async with app.run_test(size=size) as pilot:
        await settle(pilot)
        await pilot.press("escape", "t", "enter")
        await settle(pilot)
        assert isinstance(app.screen, NotePage)
        assert "guide: cracked (a fault)" in on_screen(app)
        await pilot.press("o")
        await settle(pilot)
        await pilot.press("e")
        await pilot.pause()
        await pilot.press("s", "enter")
        await settle(pilot)
        (found,) = review(desk, SAW).history.facts()
        assert isinstance(found, Finding)
        assert (found.part, found.verdict) == ("guides", "noted")
        await pilot.press("escape")
        await settle(pilot)
        assert "guides: cracked" in on_screen(app)


async def test_what_is_doubtful_is_asked_and_answered_with_one_key(tmp_path: Path) -> None:
    desk = desk_in(tmp_path, Clock(), "the guide is cracked", "look again")
    app = recorder(desk)
    async with app.run_test(size=(80, 24)) as pilot:
        await settle(pilot)
        await pilot.press("escape", "t", "up", "enter")
        await settle(pilot)
        assert "Not sure: guide: cracked" in on_screen(app)
        await pilot.press("y")
        await settle(pilot)
        assert [f.verdict for f in review(desk, SAW).history.facts() if isinstance(f, Finding)] == ["noted"]
        await pilot.press("x")
        await settle(pilot)
        assert review(desk, SAW).history.facts() == []


async def test_open_items_take_one_key_each(tmp_path: Path) -> None:
    desk = desk_in(tmp_path, Clock(), "the guide is cracked")
    app = recorder(desk)
    async with app.run_test(size=(80, 24)) as pilot:
        await settle(pilot)
        await pilot.press("escape", "o", "a")
        await pilot.pause()
        await pilot.press(*"new tyres", "enter")
        await settle(pilot)
        await pilot.pause(1.2)
        await settle(pilot)
        for key, state in (("w", "awaited"), ("p", "left so"), ("i", "open"), ("d", "done")):
            await pilot.press("home", "down", key)
            await settle(pilot)
            await pilot.pause(1.2)
            await settle(pilot)
            found = [item.state for item in review(desk, SAW).items if item.about == "new tyres"]
            assert found == [state], key


async def test_from_the_empty_note_line_up_leads_to_the_last_note(tmp_path: Path) -> None:
    desk = desk_in(tmp_path, Clock(), "the guide is cracked")
    app = recorder(desk)
    async with app.run_test(size=(80, 24)) as pilot:
        await settle(pilot)
        await pilot.press("up")
        await pilot.pause()
        assert isinstance(app.focused, Timeline)
        await pilot.press("n")
        await type_in(pilot, "two words")
        await pilot.press("up")
        await pilot.pause()
        assert isinstance(app.focused, NoteLine)


async def test_closing_up_asks_one_thing_at_a_time_with_one_key_each(tmp_path: Path) -> None:
    desk = desk_in(tmp_path, Clock(), "the guide is cracked", "look again", "the table cleaned")
    app = recorder(desk)
    async with app.run_test(size=(80, 24)) as pilot:
        await settle(pilot)
        await pilot.press("escape", "g")
        await pilot.pause()
        seen = on_screen(app)
        assert "Closing up: 1 of" in seen
        assert "Was this meant?" in seen
        await pilot.press("1")
        await settle(pilot)
        facts = [fact for fact in review(desk, SAW).history.facts() if not isinstance(fact, Work)]
        assert [fact.confidence for fact in facts] == [1.0]
        await pilot.press("u")
        await settle(pilot)
        assert [fact for fact in review(desk, SAW).history.facts() if not isinstance(fact, Work)] == []
        await pilot.press("escape")
        await settle(pilot)
        assert isinstance(app.screen.query_one(NoteLine), NoteLine)


async def test_a_word_put_right_is_offered_to_be_always_heard_so(tmp_path: Path) -> None:
    desk = replace(desk_in(tmp_path, Clock(), "the guyde is cracked"), grammars=(places.grammars(), tmp_path / "own"))
    app = recorder(desk)
    async with app.run_test(size=(80, 24)) as pilot:
        await settle(pilot)
        await pilot.press("escape", "t", "h")
        await settle(pilot)
        assert "Put a word of a note right first" in on_screen(app)
        await pilot.press("e", "ctrl+u", *"the guide is cracked", "enter")
        await settle(pilot)
        assert "h: always hear “guyde” as “guide”." in " ".join(on_screen(app).split())
        await pilot.press("h")
        await settle(pilot)
        assert "From the next start on" in on_screen(app)
    assert 'heard = ["guyde"]' in (tmp_path / "own" / "misheard.toml").read_text("utf-8")
