"""What was chosen once holds at the next start: units of readings, light or dark."""

from __future__ import annotations

from pathlib import Path
from typing import Any, cast

import pytest

from tests.screens.bench_in_memory import Bench, on_screen, settle
from worklog_tui.app import Recorder


@pytest.fixture
def own(bench: Bench, tmp_path: Path) -> Bench:
    """A bench with a file for what the person chose, in which they wrote a line of their own."""
    file = tmp_path / "settings.toml"
    file.write_text("# mine\nelse = 1\n")
    cast(Any, bench.desk).settings = file
    return bench


async def test_readings_are_told_in_the_units_that_were_chosen_last(own: Bench) -> None:
    own.keep_note("Band saw", "set the gap 18 thou")
    first = Recorder(own, "Band saw")
    async with first.run_test(size=(80, 24)) as pilot:
        await settle(pilot)
        await pilot.press("escape", "r", "i")
        await settle(pilot)
        assert "Told in metric units" in on_screen(first)
    second = Recorder(own, "Band saw")
    async with second.run_test(size=(80, 24)) as pilot:
        await settle(pilot)
        await pilot.press("escape", "r")
        await settle(pilot)
        assert "0.457 mm" in on_screen(second)
    assert own.desk.settings is not None
    assert own.desk.settings.read_text() == '# mine\nelse = 1\nunits = "metric"\n'


async def test_light_or_dark_holds_at_the_next_start(own: Bench) -> None:
    first = Recorder(own, "Band saw")
    async with first.run_test() as pilot:
        first.theme = "textual-light"
        await settle(pilot)
    second = Recorder(own, "Band saw")
    async with second.run_test() as pilot:
        await settle(pilot)
        assert second.theme == "textual-light"


@pytest.mark.parametrize("text", ["no toml at all", "units = 7\ntheme = []\n", 'units = "cubits"\ntheme = "none"\n'])
async def test_a_file_that_tells_nothing_leaves_all_as_usual(own: Bench, text: str) -> None:
    assert own.desk.settings is not None
    own.desk.settings.write_text(text)
    own.keep_note("Band saw", "set the gap 18 thou")
    app = Recorder(own, "Band saw")
    async with app.run_test(size=(80, 24)) as pilot:
        await settle(pilot)
        await pilot.press("escape", "r")
        await settle(pilot)
        assert "0.018 in" in on_screen(app)
        await pilot.press("i")
        await settle(pilot)
        assert "0.457 mm" in on_screen(app)
