"""The three moments as scripts of keys: a first machine and its first notes, a break, coming back, and afterwards."""

from __future__ import annotations

from datetime import timedelta
from pathlib import Path

from textual import events

from tests.screens.bench_in_memory import on_screen, settle, type_in
from tests.screens.logbook_desk import Clock, Here, desk_in
from worklog_tui.app import Recorder
from worklog_tui.bench.history import history

CAPTIONS = """WEBVTT

00:00:01.000 --> 00:00:04.000
so the cover cleaned up nicely

00:00:04.000 --> 00:00:08.000
hello to everyone who is watching
"""
FIRST = ("the frame cleaned", "the rope is cracked", "the drum cleaned", "the pawl is craked", "that is it for today")


async def test_a_first_machine_its_first_notes_and_coming_back_after_a_break(tmp_path: Path) -> None:
    clock = Clock()
    desk = desk_in(tmp_path, clock)
    app = Recorder(Here(desk))
    async with app.run_test(size=(80, 24)) as pilot:
        await settle(pilot)
        await pilot.press("n", *"Winch", "enter")
        await settle(pilot)
        assert "The first one begins the first session." in on_screen(app)
        for words in FIRST:
            clock.moment += timedelta(minutes=1)
            await type_in(pilot, words)
            await pilot.press("enter")
            await settle(pilot)
        assert "Winch, session 1, 4 min, not filming, 5 notes" in on_screen(app)
        await pilot.press("escape", "up", "e", *["backspace"] * 4, *"acked", "enter")
        await settle(pilot)
        assert "the pawl is cracked" in on_screen(app)
        app.post_message(events.Paste(CAPTIONS))
        await settle(pilot)
        assert "2 lines, captions with times: keep?" in on_screen(app)
        await pilot.press("k")
        await settle(pilot)
        assert "Kept 14:10: 2 notes, 1 fact.\n When was this filmed?" in on_screen(app)
        await pilot.press("enter")
        await settle(pilot)
    clock.moment += timedelta(days=21)
    later = Recorder(Here(desk), "Winch")
    async with later.run_test(size=(80, 24)) as pilot:
        await settle(pilot)
        assert "[since last time]" in on_screen(later)
        await type_in(pilot, "the rope cleaned")
        await pilot.press("enter")
        await settle(pilot)
        assert "[timeline]" in on_screen(later)
        assert "session 3, 0 min" in on_screen(later)
    said = [[note.words for note in one.notes] for one in history(desk, "Winch").sessions]
    assert ["the rope cleaned"] in said
    assert "the pawl is cracked" in said[0]
