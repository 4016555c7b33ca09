"""A paste is taken whole, shown before it is kept, and kept with one key."""

from __future__ import annotations

import pytest
from textual import events

from tests.screens.bench_in_memory import Bench, on_screen, settle
from worklog_tui.app import Recorder
from worklog_tui.notes import read_text
from worklog_tui.screens.paste import PasteQuestion, glimpse, shape_of
from worklog_tui.widgets.note_line import NoteLine

CAPTIONS = "\n".join(f"[{n // 60}:{n % 60:02}] the belt slips at mark {n}" for n in range(50))


@pytest.mark.parametrize("size", [(80, 24), (140, 40)])
async def test_fifty_lines_are_asked_about_once_and_kept_whole(bench: Bench, size: tuple[int, int]) -> None:
    app = Recorder(bench, "Band saw")
    async with app.run_test(size=size) as pilot:
        await settle(pilot)
        app.post_message(events.Paste(CAPTIONS))
        await settle(pilot)
        assert isinstance(app.screen, PasteQuestion)
        assert "50 lines, captions with times: keep?" in on_screen(app)
        assert "the belt slips at mark 49" in on_screen(app)
        assert bench.notes == []
        await pilot.press("k")
        await settle(pilot)
        assert bench.pastes == [CAPTIONS]
        assert len(bench.notes) == 50
        assert "50 notes" in on_screen(app)


async def test_a_paste_that_is_not_wanted_leaves_nothing(bench: Bench) -> None:
    app = Recorder(bench, "Band saw")
    async with app.run_test() as pilot:
        await settle(pilot)
        app.post_message(events.Paste(CAPTIONS))
        await settle(pilot)
        await pilot.press("escape")
        await settle(pilot)
        assert bench.notes == []
        assert "Nothing of the paste was kept." in on_screen(app)


async def test_a_paste_while_a_list_is_in_use_goes_to_the_note_line(bench: Bench) -> None:
    app = Recorder(bench, "Band saw")
    async with app.run_test() as pilot:
        await settle(pilot)
        await pilot.press("escape")
        app.post_message(events.Paste("one line\n"))
        await settle(pilot)
        assert app.screen.query_one(NoteLine).text == "one line"
        assert isinstance(app.focused, NoteLine)


async def test_a_pasted_line_with_escape_sequences_is_made_harmless(bench: Bench) -> None:
    app = Recorder(bench, "Band saw")
    async with app.run_test() as pilot:
        await settle(pilot)
        app.post_message(events.Paste("gap \x1b[2J\x1b]0;title\x0718\u202e thou\x9b"))
        await settle(pilot)
        text = app.screen.query_one(NoteLine).text
        assert text == "gap 18 thou"


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("[0:02] one\n[0:05] two", "2 lines, captions with times"),
        ("14:05 one\n14:07 two\n14:20 three", "3 lines, lines with times"),
        ("it would not turn\nso I took the guard off", "2 lines, no times"),
    ],
)
def test_a_paste_is_named_by_its_shape(text: str, said: str) -> None:
    assert shape_of(read_text(text)) == said


def test_a_glimpse_shows_the_first_lines_and_the_last() -> None:
    lines = glimpse(read_text(CAPTIONS))
    assert "mark 0" in lines[0]
    assert "mark 49" in lines[-1]
    assert any("44 more" in line for line in lines)
