"""The captions of a finished film, pasted over the notes of the work: the notes get their place, nothing is doubled."""

from __future__ import annotations

from pathlib import Path

import pytest
from textual import events
from textual.pilot import Pilot

from tests.screens.bench_in_memory import on_screen, settle, type_in
from tests.screens.logbook_desk import SAW, Clock, desk_in, recorder
from worklog_tui.app import Recorder
from worklog_tui.bench.desk import Desk
from worklog_tui.bench.history import history
from worklog_tui.bench.undoing import undo
from worklog_tui.model import Instant
from worklog_tui.screens.paste import PasteQuestion

WORK = ("lower guide is cracked", "blade tension spring is weak", "table trunnion bolt sheared off")
FILM = """[0:00] welcome back to the shed everybody
[0:12] so here is the lower guide and you can see it is cracked
[1:05] the spring for the blade tension well it is weak
[2:40] and this trunnion bolt under the table it has sheared clean off
"""
OTHER = "[0:00] the coolant pump hums\n[0:20] and the lamp flickers\n[0:30] that was the lot for now\n"


def notes(desk: Desk) -> list[tuple[str, int | None]]:
    return [(note.words, note.film) for record in history(desk, SAW).sessions for note in record.notes]


def days(desk: Desk) -> list[Instant | None]:
    """When each session began."""
    return [record.session.start for record in history(desk, SAW).sessions]


async def pasted(app: Recorder, pilot: Pilot[int], words: str) -> None:
    """Paste words once the screen is at rest, and wait for the preview."""
    await settle(pilot)
    app.post_message(events.Paste(words))
    await settle(pilot)


async def test_captions_of_the_work_give_its_notes_their_place_by_the_key_that_keeps(tmp_path: Path) -> None:
    desk = desk_in(tmp_path, Clock(), *WORK)
    app = recorder(desk)
    async with app.run_test(size=(80, 24)) as pilot:
        await pasted(app, pilot, FILM)
        assert "the film of session 1?" in on_screen(app)
        assert "3 of the 3 notes of session 1" in on_screen(app)
        assert "o as notes of their own" in on_screen(app)
        await pilot.press("k")
        await settle(pilot)
        assert "3 of 3 notes are told in the film" in on_screen(app)
    assert notes(desk) == list(zip(WORK, (12, 65, 160), strict=True))
    undo(desk)
    assert notes(desk) == [(words, None) for words in WORK]


NEW = FILM + "[4:00] the motor bracket is cracked as well\n"


@pytest.mark.parametrize(("key", "new"), [("k", 1), ("p", 0)])
async def test_what_the_film_tells_anew_is_kept_beside(tmp_path: Path, key: str, new: int) -> None:
    desk = desk_in(tmp_path, Clock(), *WORK)
    app = recorder(desk)
    async with app.run_test(size=(80, 24)) as pilot:
        for _ in range(2):  # pasted again, it doubles nothing
            await pasted(app, pilot, NEW)
            assert "1 line tells what no note tells: it is kept too." in " ".join(on_screen(app).split())
            await pilot.press(key)
            await settle(pilot)
    said = notes(desk)
    assert said[:3] == list(zip(WORK, (12, 65, 160), strict=True))
    assert [words for words, _ in said[3:]] == ["the motor bracket is cracked as well"][:new]
    assert [day is not None for day in days(desk)] == [True] * (1 + new)


async def test_captions_kept_as_notes_of_their_own_were_shot_when_the_work_was_done(tmp_path: Path) -> None:
    desk = desk_in(tmp_path, Clock(), *WORK)
    app = recorder(desk)
    async with app.run_test(size=(80, 24)) as pilot:
        await pasted(app, pilot, FILM)
        await pilot.press("o")
        await settle(pilot)
    start = days(desk)[1]
    assert start is not None
    assert (start.utc, start.known) == ("2031-04-12T14:05:00Z", "assumed")


async def test_when_other_captions_were_filmed_is_asked_once(tmp_path: Path) -> None:
    desk = desk_in(tmp_path, Clock(), *WORK)
    app = recorder(desk)
    async with app.run_test(size=(80, 24)) as pilot:
        for asked in (True, False):
            await pasted(app, pilot, OTHER)
            await pilot.press("k")
            await settle(pilot)
            assert ("When was this filmed?" in on_screen(app)) == asked
            if asked:
                await pilot.press(*"in may", "enter")
                await settle(pilot)
                assert "“in may” is no day that is past" in on_screen(app)
                await pilot.press(*["backspace"] * 6, *"last tuesday", "enter")
                await settle(pilot)
                assert "The date of the session is set. u takes it back." in on_screen(app)
    assert [(day.utc[:10], day.known) for day in days(desk) if day is not None] == [
        ("2031-04-08", "assumed"), ("2031-04-12", "clock"),
    ]  # fmt: skip


async def test_a_day_that_nobody_knows_is_left_open_and_the_live_session_goes_on(tmp_path: Path) -> None:
    desk = desk_in(tmp_path, Clock(), *WORK)
    app = recorder(desk)
    async with app.run_test(size=(80, 24)) as pilot:
        await settle(pilot)
        await type_in(pilot, "the lamp is out")
        await pilot.press("enter")
        await pasted(app, pilot, OTHER)
        await pilot.press("k")
        await settle(pilot)
        await pilot.press("enter")
        await settle(pilot)
        assert "The day is not known: these notes count for no hours." in on_screen(app)
        assert f"{SAW}, session 1, 0 min" in on_screen(app)
    assert days(desk)[1] is None


async def test_captions_of_other_work_become_notes(tmp_path: Path) -> None:
    desk = desk_in(tmp_path, Clock(), *WORK)
    app = recorder(desk)
    async with app.run_test(size=(80, 24)) as pilot:
        await pasted(app, pilot, OTHER)
        assert isinstance(app.screen, PasteQuestion)
        assert "notes of their own" not in on_screen(app)
        await pilot.press("k")
        await settle(pilot)
    assert len(notes(desk)) == len(WORK) + 3


async def test_the_same_captions_pasted_twice_are_kept_once(tmp_path: Path) -> None:
    desk = desk_in(tmp_path, Clock())
    app = recorder(desk)
    async with app.run_test(size=(80, 24)) as pilot:
        for _ in range(2):
            await pasted(app, pilot, OTHER)
            await pilot.press("k")
            await settle(pilot)
    assert len(notes(desk)) == 3
