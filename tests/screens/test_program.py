"""The program around the screens: keys, commands, leaving, and what a crash leaves behind."""

from __future__ import annotations

from collections.abc import Iterator
from importlib import import_module
from pkgutil import iter_modules
from typing import Any

import pytest
from textual.binding import Binding
from textual.command import CommandPalette

from tests.screens.bench_in_memory import Bench, on_screen, settle, type_in
from worklog_tui.app import Recorder
from worklog_tui.screens.all_keys import HOMES, every_key
from worklog_tui.widgets.note_line import NoteLine


def with_keys() -> Iterator[tuple[str, str, list[Any]]]:
    """Every class of the screens and widgets that has keys: its module, its name, and the keys."""
    for room in ("app", "screens", "widgets"):
        package = import_module(f"worklog_tui.{room}")
        inside = [one.name for one in iter_modules(getattr(package, "__path__", []))]
        for module in [f"{room}.{name}" for name in inside] or [room]:
            for name, found in vars(import_module(f"worklog_tui.{module}")).items():
                if getattr(found, "__module__", "") == f"worklog_tui.{module}" and vars(found).get("BINDINGS"):
                    yield module, name, vars(found)["BINDINGS"]


def test_every_key_has_an_id_of_its_own_and_a_tooltip() -> None:
    bindings = [binding for _, _, some in with_keys() for binding in some]
    assert all(isinstance(binding, Binding) and binding.id and binding.tooltip for binding in bindings)
    ids = [binding.id for binding in bindings]
    assert [one for one in ids if ids.count(one) > 1] == []


def test_the_command_that_prints_the_keys_knows_every_place_that_has_some() -> None:
    assert {(module, name) for module, name, _ in with_keys()} == {(module, name) for _, module, name in HOMES}
    told = {key.name: key.keys for _, keys in every_key({"note.keep": "f13"}) for key in keys}
    assert told["note.keep"] == "F13"
    assert told["film.clip"] == "F2 1"


@pytest.mark.parametrize("way", ["ctrl+q", "q"])
async def test_there_are_two_keys_to_quit(bench: Bench, way: str) -> None:
    app = Recorder(bench, "Band saw")
    async with app.run_test() as pilot:
        await settle(pilot)
        await pilot.press("escape", way)
        await pilot.pause()
    assert app.return_code == 0


async def test_quitting_right_after_enter_loses_nothing(bench: Bench) -> None:
    app = Recorder(bench, "Band saw")
    async with app.run_test() as pilot:
        await type_in(pilot, "the last word")
        await pilot.press("enter", "ctrl+q")
        await pilot.pause()
    assert [note.words for note in bench.notes] == ["the last word"]


async def test_the_command_palette_names_every_place(bench: Bench) -> None:
    app = Recorder(bench, "Band saw")
    async with app.run_test() as pilot:
        await settle(pilot)
        titles = [command.title for command in app.get_system_commands(app.screen)]
        assert {"Write a note", "Timeline", "Open items", "Next step", "Machines", "Quit"} <= set(titles)
        await pilot.press("ctrl+p")
        await pilot.pause()
        assert isinstance(app.screen, CommandPalette)


@pytest.mark.parametrize("size", [(80, 24), (120, 40)])
async def test_the_keys_of_a_place_fit_on_one_small_page(bench: Bench, size: tuple[int, int]) -> None:
    app = Recorder(bench, "Band saw")
    async with app.run_test(size=size) as pilot:
        await settle(pilot)
        await pilot.press("escape", "question_mark")
        await pilot.pause()
        seen = on_screen(app)
        assert "Keys here" in seen
        assert "n  To the note line" in seen
        assert "l  How it was left, and what was to come next" in seen
        assert "closes this page." in seen
        await pilot.press("escape")
        await pilot.pause()
        assert "Keys here" not in on_screen(app)


async def test_half_typed_words_come_back_after_a_crash(bench: Bench) -> None:
    first = Recorder(bench, "Band saw")
    async with first.run_test() as pilot:
        await settle(pilot)
        await type_in(pilot, "the gap was ab")
        await pilot.pause(1.2)
        drafts = [path.read_text("utf-8") for path in bench.path.parent.glob("log.db.draft-*.txt")]
        assert drafts == ["the gap was ab"]
    second = Recorder(bench, "Band saw")
    async with second.run_test() as pilot:
        await settle(pilot)
        assert second.screen.query_one(NoteLine).text == "the gap was ab"
        assert "These words were left half typed; they are back." in on_screen(second)
        await pilot.press("enter")
        await settle(pilot)
        await pilot.pause()
    assert list(bench.path.parent.glob("log.db.draft-*.txt")) == []
    assert [note.words for note in bench.notes] == ["the gap was ab"]


async def test_the_screen_can_be_read_without_colour(bench: Bench, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("NO_COLOR", "1")
    app = Recorder(bench, "Band saw")
    async with app.run_test() as pilot:
        await type_in(pilot, "set the gap 18 thou")
        await pilot.press("enter")
        await settle(pilot)
        await pilot.press("escape")
        await pilot.pause()
        seen = on_screen(app)
        assert "> " in seen
        assert "[timeline]" in seen
        styles = [s.style for line in app.screen._compositor.render_strips() for s in line if "gap 18 thou" in s.text]
        assert any(style is not None and style.underline for style in styles)
