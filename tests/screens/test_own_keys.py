"""Every key can be another one: a file gives it, by the name of what it does."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.screens.bench_in_memory import Bench, on_screen, settle, type_in
from worklog_tui.app import Recorder
from worklog_tui.screens.locked import Locked
from worklog_tui.screens.own_keys import own_keys


async def test_a_pedal_keeps_the_note_and_another_key_locks(bench: Bench, tmp_path: Path) -> None:
    file = tmp_path / "keys.toml"
    file.write_text('"note.keep" = "f13"\n"go.lock" = "w"\n')
    app = Recorder(bench, "Band saw", keys=file)
    async with app.run_test(size=(80, 24)) as pilot:
        await settle(pilot)
        await type_in(pilot, "set the gap 18 thou")
        await pilot.press("f13")
        await settle(pilot)
        assert [note.words for note in bench.notes] == ["set the gap 18 thou"]
        await pilot.press("escape", "w")
        await pilot.pause()
        assert isinstance(app.screen, Locked)


@pytest.mark.parametrize("text", ["no toml at all", '"note.keep" = 13\n', '"note.keep" = ""\n'])
async def test_a_file_that_is_wrong_is_said_and_the_usual_keys_hold(bench: Bench, tmp_path: Path, text: str) -> None:
    file = tmp_path / "keys.toml"
    file.write_text(text)
    app = Recorder(bench, "Band saw", keys=file)
    async with app.run_test(size=(80, 24)) as pilot:
        await settle(pilot)
        assert "The usual keys hold." in " ".join(on_screen(app).split())
        await type_in(pilot, "set the gap 18 thou")
        await pilot.press("enter")
        await settle(pilot)
        assert len(bench.notes) == 1


def test_without_a_file_nothing_is_changed(tmp_path: Path) -> None:
    assert own_keys(tmp_path / "none.toml") == ({}, "")
