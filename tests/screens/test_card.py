"""The machine card from the keys: what a figure should be is put there, changed and taken off."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest

from tests.screens.bench_in_memory import on_screen, settle
from tests.screens.logbook_desk import SAW, Clock, desk_in, recorder
from worklog_tui import places
from worklog_tui.bench.machines import find_machine


@pytest.mark.parametrize("size", [(80, 24), (48, 14)])
async def test_a_figure_is_added_changed_and_taken_off(tmp_path: Path, size: tuple[int, int]) -> None:
    before = desk_in(tmp_path, Clock(), "the guide is cracked")
    desk = replace(before, grammars=(places.grammars(),), cache=places.cache())

    def figures() -> list[tuple[str, float | None, str, str]]:
        return [(one.subject, one.nominal, one.unit, one.source) for one in find_machine(desk, SAW).specified]

    app = recorder(desk)
    async with app.run_test(size=size) as pilot:
        await settle(pilot)
        await pilot.press("escape", "c")
        await settle(pilot)
        assert "No figures yet. a: what a gap" in " ".join(on_screen(app).split())
        await pilot.press("a", "enter")
        await settle(pilot)
        assert "Say which figure it is, such as plug gap." in on_screen(app)
        await pilot.press(*"plug gap", "tab", *"0.025 in", "tab", *"handbook", "enter")
        await settle(pilot)
        assert figures() == [("plug gap", 0.025, "in", "handbook")]
        assert "plug gap should be 0.025 in. u takes it back." in " ".join(on_screen(app).split())
        await pilot.pause(1.2)
        await settle(pilot)
        await pilot.press("end", "enter")
        await settle(pilot)
        await pilot.press("tab", "ctrl+u", *"28 thou", "enter")
        await settle(pilot)
        assert figures() == [("plug gap", 0.028, "in", "handbook")]
        await pilot.pause(1.2)
        await settle(pilot)
        await pilot.press("end", "e", "tab", "ctrl+u", "enter")
        await settle(pilot)
        assert figures() == []
        await pilot.press("u")
        await settle(pilot)
        assert figures() == [("plug gap", 0.028, "in", "handbook")]
