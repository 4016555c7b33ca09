"""A session that went on too long, or was broken off too soon: one key divides it, one joins two, one takes it back."""

from __future__ import annotations

from datetime import timedelta
from pathlib import Path

from textual.pilot import Pilot

from tests.screens.bench_in_memory import on_screen, settle, type_in
from tests.screens.logbook_desk import SAW, Clock, desk_in, recorder
from worklog_tui.bench.desk import Desk
from worklog_tui.bench.history import history
from worklog_tui.bench.record import keep_note


def said(desk: Desk) -> list[list[str]]:
    """The words of each session."""
    return [[note.words for note in record.notes] for record in history(desk, SAW).sessions if record.notes]


async def pressed(pilot: Pilot[int], *keys: str) -> str:
    """What stands on the screen after these keys."""
    await pilot.press(*keys)
    await settle(pilot)
    return on_screen(pilot.app)


async def test_d_divides_a_session_at_the_note_pointed_at_and_u_makes_it_one_again(tmp_path: Path) -> None:
    desk = desk_in(tmp_path, Clock(), "the guide is cracked", "a cup of tea", "the table cleaned")
    app = recorder(desk)
    async with app.run_test(size=(80, 24)) as pilot:
        await settle(pilot)
        shown = await pressed(pilot, "escape", "t", "up", "d")
        assert "2 lines are now a session of their own. u takes it back." in shown
        assert "Session 2, Saturday 12 April 2031" in shown
        assert said(desk) == [["the guide is cracked"], ["a cup of tea", "the table cleaned"]]
        await pressed(pilot, "u")
        assert len(said(desk)) == 1
        shown = await pressed(pilot, "home", "down", "d")
        assert "The session begins with that note already." in shown


async def test_j_joins_a_session_with_the_one_before_it(tmp_path: Path) -> None:
    clock = Clock()
    desk = desk_in(tmp_path, clock, "the guide is cracked")
    clock.moment += timedelta(hours=6)
    keep_note(desk, SAW, "the table cleaned")
    app = recorder(desk)
    async with app.run_test(size=(80, 24)) as pilot:
        await settle(pilot)
        shown = await pressed(pilot, "escape", "t", "end", "j")
        assert "The two sessions are one. u takes it back." in shown
        assert said(desk) == [["the guide is cracked", "the table cleaned"]]
        assert "There is no session before this one" in await pressed(pilot, "j")
        await pressed(pilot, "u")
        assert said(desk) == [["the guide is cracked"], ["the table cleaned"]]


async def test_both_are_in_the_command_palette(tmp_path: Path) -> None:
    desk = desk_in(tmp_path, Clock(), "the guide is cracked", "a cup of tea")
    app = recorder(desk)
    async with app.run_test(size=(80, 24)) as pilot:
        await settle(pilot)
        await pressed(pilot, "escape", "t", "end")
        runs = {one.title: one.callback for one in app.get_system_commands(app.screen)}
        for title, sessions in (("Divide the session here", 2), ("Join with the session before", 1)):
            coming = runs[title]()
            assert coming is not None
            await coming
            await settle(pilot)
            assert len(said(desk)) == sessions


async def test_a_note_kept_after_dividing_the_session_of_this_window_joins_the_later_half(tmp_path: Path) -> None:
    clock = Clock()
    desk = desk_in(tmp_path, clock, "the guide is cracked")
    app = recorder(desk)
    async with app.run_test(size=(80, 24)) as pilot:
        await settle(pilot)
        await type_in(pilot, "a cup of tea")
        await pressed(pilot, "enter", "escape", "t", "end", "d", "n")
        clock.moment += timedelta(minutes=5)
        await type_in(pilot, "the table cleaned")
        assert "Session 2" in await pressed(pilot, "enter")
    assert said(desk) == [["the guide is cracked"], ["a cup of tea", "the table cleaned"]]
