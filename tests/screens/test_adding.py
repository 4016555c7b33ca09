"""What was not read from a note is added in plain words: one key, the words, Enter."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest

from tests.screens.bench_in_memory import on_screen, settle
from tests.screens.logbook_desk import SAW, Clock, desk_in, recorder
from worklog_tui import places
from worklog_tui.bench.review import review
from worklog_tui.model import Fact, Finding, Work
from worklog_tui.screens.adding import Adding
from worklog_tui.screens.note_page import NotePage

SIZES = [(80, 24), (48, 14)]


def told(folder_desk: object) -> list[tuple[str, str]]:
    """What the log holds, each with the words that it came from."""
    facts: list[Fact] = review(folder_desk, SAW).history.facts()  # type: ignore[arg-type]
    return [(fact.about, fact.quote) for fact in facts]


@pytest.mark.parametrize("size", SIZES)
async def test_from_the_line_one_key_then_the_words(tmp_path: Path, size: tuple[int, int]) -> None:
    desk = desk_in(tmp_path, Clock(), "what a state it is in", "the table cleaned")
    app = recorder(desk)
    async with app.run_test(size=size) as pilot:
        await settle(pilot)
        await pilot.press("escape", "up", "a")
        await settle(pilot)
        await pilot.press(*"the fence is cracked")
        await settle(pilot)
        assert "Understood: fence: cracked (a fault)." in " ".join(on_screen(app).split())
        await pilot.press("enter")
        await settle(pilot)
        assert told(desk) == [("fence", "the fence is cracked"), ("table", "the table cleaned")]
        assert "Added: fence: cracked (a fault). u takes it back." in " ".join(on_screen(app).split())
        await pilot.press("u")
        await settle(pilot)
        assert told(desk) == [("table", "the table cleaned")]


async def test_on_the_page_of_a_note_it_shows_the_words_that_were_typed(tmp_path: Path) -> None:
    desk = desk_in(tmp_path, Clock(), "what a state it is in")
    app = recorder(desk)
    async with app.run_test(size=(80, 24)) as pilot:
        await settle(pilot)
        await pilot.press("escape", "enter")
        await settle(pilot)
        assert "Nothing was read from these words. a: add what they tell." in on_screen(app)
        await pilot.press("a", *"the fence cleaned", "enter", "enter", "enter")
        await settle(pilot)
        assert isinstance(app.screen, NotePage)
        assert "added by hand: “the fence cleaned”" in on_screen(app)
        assert [type(fact) for fact in review(desk, SAW).history.facts()] == [Work]


async def test_words_that_are_not_understood_are_told_piece_by_piece_and_never_lost(tmp_path: Path) -> None:
    desk = desk_in(tmp_path, Clock(), "what a state it is in")
    app = recorder(desk)
    async with app.run_test(size=(80, 24)) as pilot:
        await settle(pilot)
        await pilot.press("escape", "a", *"wobbles")
        await settle(pilot)
        assert "Not understood by itself; Enter asks what it is." in on_screen(app)
        await pilot.press("enter")
        await settle(pilot)
        assert "“wobbles”" in on_screen(app)
        await pilot.press("b", "enter")
        await settle(pilot)
        assert "Say which part it is of." in on_screen(app)
        await pilot.press(*"fence", "enter")
        await settle(pilot)
        (found,) = review(desk, SAW).history.facts()
        assert isinstance(found, Finding)
        assert (found.part, found.condition, found.verdict) == ("fence", "wobbles", "bad")


async def test_leaving_it_adds_nothing_and_goes_back_step_by_step(tmp_path: Path) -> None:
    desk = desk_in(tmp_path, Clock(), "what a state it is in")
    app = recorder(desk)
    async with app.run_test(size=(80, 24)) as pilot:
        await settle(pilot)
        await pilot.press("escape", "a", *"wobbles", "enter")
        await settle(pilot)
        await pilot.press("c", "escape", "escape")
        await settle(pilot)
        assert isinstance(app.screen, Adding)
        assert "wobbles" in on_screen(app)
        await pilot.press("escape")
        await settle(pilot)
        assert told(desk) == []


@pytest.mark.parametrize("keys", [("up", "e"), ("down", "e", *["backspace"] * 5)])
async def test_a_word_put_right_on_the_page_is_offered_too(tmp_path: Path, keys: tuple[str, ...]) -> None:
    desk = replace(desk_in(tmp_path, Clock(), "the guyde is cracked"), grammars=(places.grammars(), tmp_path / "own"))
    app = recorder(desk)
    async with app.run_test(size=(80, 24)) as pilot:
        await settle(pilot)
        await pilot.press("escape", "enter")
        await settle(pilot)
        await pilot.press(*keys)
        await pilot.press("ctrl+u", *("the guide is cracked" if keys[0] == "up" else "guide"), "enter")
        await settle(pilot)
        assert "h: always hear “guyde” as “guide”." in " ".join(on_screen(app).split())
        await pilot.press("h")
        await settle(pilot)
        assert "From the next start on" in on_screen(app)
    assert 'heard = ["guyde"]' in (tmp_path / "own" / "misheard.toml").read_text("utf-8")
