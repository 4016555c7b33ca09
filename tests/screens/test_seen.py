"""What stands on the screen, one picture in plain text a place and size, looked at by a person before it was kept.

After a change that is meant: `WORKLOG_SEEN=write`, run this file, and look at what `git diff` shows.
"""

from __future__ import annotations

import os
from pathlib import Path

import pytest

from tests.screens.bench_in_memory import Bench, on_screen, settle, type_in
from worklog_tui.app import Recorder
from worklog_tui.screens.layout import PLACES

SEEN = Path(__file__).parent / "seen"
NOTES = ("the guard is off and the belt looks tired", "points gap 18 thou", "need a new drive belt", "that will do")
PICTURES = [*((place, 80, 24) for place in PLACES), ("timeline", 120, 30), ("step", 60, 20), ("timeline", 48, 14)]


def compare(name: str, seen: str) -> None:
    """With the picture that was kept."""
    path = SEEN / f"{name}.txt"
    if os.environ.get("WORKLOG_SEEN") == "write":
        path.write_text(f"{seen}\n", "utf-8")
    assert f"{seen}\n" == path.read_text("utf-8"), name


@pytest.mark.parametrize(("place", "width", "height"), PICTURES)
async def test_a_place_looks_as_it_was_seen(bench: Bench, place: str, width: int, height: int) -> None:
    for words in NOTES:
        bench.keep_note("Band saw", words)
    app = Recorder(bench, "Band saw")
    async with app.run_test(size=(width, height)) as pilot:
        await settle(pilot)
        await pilot.press("escape", PLACES[place].key)
        await settle(pilot)
        compare(f"{place}-{width}x{height}", on_screen(app))


async def test_the_first_start_and_a_first_card_look_as_they_were_seen(bench: Bench) -> None:
    bench.cards.clear()
    app = Recorder(bench)
    async with app.run_test(size=(80, 24)) as pilot:
        await settle(pilot)
        compare("first-80x24", on_screen(app))
        await pilot.press("enter")
        await settle(pilot)
        compare("card-of-the-first-80x24", on_screen(app))


async def test_words_being_typed_look_as_they_were_seen(bench: Bench) -> None:
    app = Recorder(bench, "Band saw")
    async with app.run_test(size=(80, 24)) as pilot:
        await settle(pilot)
        await type_in(pilot, "points gap 18 thou, need a new drive belt")
        await settle(pilot)
        compare("typing-80x24", on_screen(app))
