"""Every place with words that mean harm, and on a terminal made tiny and large again: literal, nothing lost."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest

from tests.screens.bench_in_memory import on_screen, settle, type_in
from tests.screens.logbook_desk import SAW, Clock, desk_in, recorder
from tests.screens.test_hostile_words import DIRTY, WORDS
from worklog_tui.app import Recorder
from worklog_tui.bench.history import history
from worklog_tui.bench.item_acts import add_item
from worklog_tui.bench.machines import change_card, find_machine
from worklog_tui.screens.layout import PLACES
from worklog_tui.screens.recording import RecordingScreen
from worklog_tui.widgets.note_line import NoteLine

SIZES = ((20, 5), (1, 1), (140, 40), (60, 20), (80, 24))


def control_signs(text: str) -> set[str]:
    return {sign for sign in text if sign != "\n" and (ord(sign) < 32 or 127 <= ord(sign) < 160)}


@pytest.mark.parametrize("words", [*WORDS, *(words for words, _ in DIRTY)])
async def test_hostile_words_are_literal_in_every_place(tmp_path: Path, words: str) -> None:
    desk = desk_in(tmp_path, Clock(), f"the guide is cracked {words}", f"{words} the guide", words)
    add_item(desk, SAW, f"see to {words}")
    change_card(desk, replace(find_machine(desk, SAW), kind=words))
    app = recorder(desk)
    async with app.run_test(size=(140, 40)) as pilot:
        await settle(pilot)
        await pilot.press("escape")
        for place, one in PLACES.items():
            await pilot.press(one.key)
            await settle(pilot)
            assert isinstance(app.screen, RecordingScreen)
            assert app.screen.at == place
            assert not control_signs(on_screen(app))
            assert not clicks(app)
        assert app.is_running


PAGES = {
    "what was read": ("t", "end", "enter"), "find": ("slash",), "before a start": ("b",), "edit": ("t", "end", "e"),
    "several lines": ("t", "end", "space", "space"), "a fact": ("t", "home", "down", "enter", "down", "e"),
    "add what was not read": ("t", "end", "a"), "a figure": ("c", "a"), "what it is": ("t", "end", "a", "w", "enter"),
    "closing up": ("g",), "card": ("c", "e"), "add an item": ("o", "a"), "far": ("z",), "keys": ("question_mark",),
}  # fmt: skip
"Every page that comes up over a place, and the keys that lead to it."


@pytest.mark.parametrize("page", PAGES)
async def test_hostile_words_are_literal_on_every_page_over_a_place(tmp_path: Path, page: str) -> None:
    words = " ".join([*WORDS, *(dirty for dirty, _ in DIRTY)])
    desk = desk_in(tmp_path, Clock(), f"the guide is cracked {words}", f"the guard is off {words}", words)
    add_item(desk, SAW, f"see to {words}")
    change_card(desk, replace(find_machine(desk, SAW), kind=words))
    app = recorder(desk)
    async with app.run_test(size=(100, 40)) as pilot:
        await settle(pilot)
        await pilot.press("escape")
        for key in PAGES[page]:
            await pilot.press(key)
            await settle(pilot)
        assert page == "far" or not isinstance(app.screen, RecordingScreen)
        for size in ((20, 5), (100, 40)):
            await pilot.resize_terminal(*size)
            await settle(pilot)
        assert not control_signs(on_screen(app))
        assert not clicks(app)
        assert app.is_running


def clicks(app: Recorder) -> list[str]:
    """Actions that a click on some word of the screen would set off."""
    drawn = (segment for line in app.screen._compositor.render_strips() for segment in line)
    return [str(one.style.meta["@click"]) for one in drawn if one.style is not None and "@click" in one.style.meta]


async def test_a_terminal_made_tiny_and_large_again_loses_nothing_in_any_place(tmp_path: Path) -> None:
    desk = desk_in(tmp_path, Clock(), "the guide is cracked", "the table cleaned")
    app = recorder(desk)
    async with app.run_test(size=(80, 24)) as pilot:
        await settle(pilot)
        await type_in(pilot, "half typed")
        await pilot.press("escape")
        for place, one in PLACES.items():
            await pilot.press(one.key)
            await settle(pilot)
            before = on_screen(app)
            for size in SIZES:
                await pilot.resize_terminal(*size)
                await settle(pilot)
            assert on_screen(app) == before, place
            assert app.screen.query_one(NoteLine).text == "half typed"
        await pilot.press("n", "enter")
        await settle(pilot)
    assert [note.words for note in history(desk, SAW).sessions[0].notes][-1] == "half typed"
