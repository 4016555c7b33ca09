"""What comes by itself, in one calm line: the questions after a paste, and what other windows did."""

from __future__ import annotations

from pathlib import Path

from textual import events
from textual.pilot import Pilot

from tests.screens.bench_in_memory import on_screen, settle, type_in
from tests.screens.logbook_desk import SAW, Clock, desk_in, recorder
from worklog_tui.bench import camera
from worklog_tui.bench.history import history
from worklog_tui.bench.note_acts import edit_note
from worklog_tui.screens.closing_up import ClosingUpScreen
from worklog_tui.screens.recording import RecordingScreen
from worklog_tui.widgets.note_line import NoteLine

PASTE = "\n".join(("the guide is cracked", "look again", "the table cleaned"))
OFFER = "begun and not heard finished: F5 asks about it."


async def paste_and_keep(pilot: Pilot[int]) -> None:
    """Pastes lines, keeps them, and waits for what is said about them."""
    await settle(pilot)
    pilot.app.post_message(events.Paste(PASTE))
    await settle(pilot)
    await pilot.press("k")
    await settle(pilot)
    await pilot.pause(1.2)
    await settle(pilot)


async def test_after_a_paste_the_questions_are_offered_and_one_key_asks_them(tmp_path: Path) -> None:
    app = recorder(desk_in(tmp_path, Clock()))
    async with app.run_test(size=(80, 24)) as pilot:
        await paste_and_keep(pilot)
        assert OFFER in " ".join(on_screen(app).split())
        assert isinstance(app.focused, NoteLine)
        await pilot.press("f5")
        await settle(pilot)
        assert isinstance(app.screen, ClosingUpScreen)


async def test_nothing_is_offered_while_the_camera_runs_but_when_it_stops(tmp_path: Path) -> None:
    desk = desk_in(tmp_path, Clock())
    camera.begin_or_end(desk, SAW)
    app = recorder(desk)
    async with app.run_test(size=(80, 24)) as pilot:
        await paste_and_keep(pilot)
        assert OFFER not in " ".join(on_screen(app).split())
        await pilot.press("f2")
        await settle(pilot)
        assert OFFER in " ".join(on_screen(app).split())


async def test_what_another_window_corrected_is_seen_without_a_new_note(tmp_path: Path) -> None:
    desk = desk_in(tmp_path, Clock(), "the guide is cracked", "the table cleaned")
    app = recorder(desk)
    async with app.run_test(size=(80, 24)) as pilot:
        await settle(pilot)
        note = history(desk, SAW).sessions[0].notes[0]
        edit_note(desk, note.uid, "the fence is cracked")
        assert isinstance(app.screen, RecordingScreen)
        app.screen._every_second()
        await settle(pilot)
        assert "the fence is cracked" in on_screen(app)
        assert "the guide is cracked" not in on_screen(app)


async def test_leaving_at_the_end_of_a_session_asks_first_and_a_second_key_leaves(tmp_path: Path) -> None:
    app = recorder(desk_in(tmp_path, Clock()))
    async with app.run_test(size=(80, 24)) as pilot:
        await settle(pilot)
        for words in ("the guide is cracked", "look again"):
            await type_in(pilot, words)
            await pilot.press("enter")
            await settle(pilot)
        await pilot.pause(1.2)
        await settle(pilot)
        await pilot.press("escape", "q")
        await settle(pilot)
        assert isinstance(app.screen, ClosingUpScreen)
        assert "none must be answered" in on_screen(app)
        await pilot.press("q")
        await pilot.pause()
    assert app.return_code == 0


async def test_a_look_at_the_log_alone_is_left_without_questions(tmp_path: Path) -> None:
    app = recorder(desk_in(tmp_path, Clock(), "the guide is cracked", "look again"))
    async with app.run_test(size=(80, 24)) as pilot:
        await settle(pilot)
        await pilot.press("escape", "q")
        await pilot.pause()
    assert app.return_code == 0
