"""Everything that a place shows can be had as plain text from a command, for a screen reader or a pipe."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest

from tests.screens.bench_in_memory import settle
from tests.screens.logbook_desk import SAW, Clock, desk_in, recorder
from worklog_tui import places
from worklog_tui.bench.history import history, keep_comments
from worklog_tui.bench.item_acts import add_item
from worklog_tui.cli.running import main
from worklog_tui.screens.as_text import NAMES, note_text, place_text
from worklog_tui.screens.layout import PLACES


def run_together(text: str) -> str:
    """Without the white space, which a narrower page breaks elsewhere."""
    return "".join(text.split())


@pytest.mark.parametrize("name", NAMES)
async def test_what_stands_in_a_place_is_printed_by_the_command(tmp_path: Path, name: str) -> None:
    before = desk_in(tmp_path, Clock(), "the guide is cracked", "look again", "the table cleaned")
    desk = replace(before, grammars=(places.grammars(),), cache=places.cache())
    add_item(desk, SAW, "see to the tyres of both wheels before it is sold")
    keep_comments(desk, SAW, ["Which belt is on it?"])
    app = recorder(desk)
    async with app.run_test(size=(120, 40)) as pilot:
        await settle(pilot)
        await pilot.press("escape", PLACES[NAMES[name]].key)
        await settle(pilot)
        found = app.screen.list_of(NAMES[name])  # type: ignore[attr-defined]
        shown = [text for row in found.rows for text in (row.margin, row.words, row.below)] or [found.empty]
    printed = run_together(place_text(desk, SAW, name, "", 60))
    assert [text for text in shown if run_together(text) not in printed] == []


def test_one_line_is_printed_with_what_was_read_from_it_and_what_is_doubtful(tmp_path: Path) -> None:
    desk = desk_in(tmp_path, Clock(), "the guide is cracked", "look again")
    (first, _) = history(desk, SAW).sessions[0].notes
    text = note_text(desk, SAW, f"1/{first.said_at}/1", 80)
    assert "the guide is cracked" in text
    assert "Not sure: guide: cracked?" in text


def test_a_place_that_there_is_not_is_answered_with_those_that_there_are(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    desk = desk_in(tmp_path, Clock(), "the guide is cracked")
    common = ["--machine", SAW, "--logbook", str(desk.logbook)]
    assert main(["show", "elsewhere", *common]) == 2
    assert "there are timeline, since-last-time, open-items" in capsys.readouterr().err
    assert main(["show", "note", *common]) == 2
    assert main(["show", "timeline", *common]) == 0
    assert "the guide is cracked" in capsys.readouterr().out
