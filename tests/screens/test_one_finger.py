"""Dirty hands: single keys, a lock for wiping them, a view from far, a camera, and lines that come from elsewhere."""

from __future__ import annotations

import os
import subprocess
import sys
from datetime import timedelta
from pathlib import Path

import pytest

from tests.screens.bench_in_memory import Bench, on_screen, settle, type_in
from tests.screens.logbook_desk import SAW, Clock, desk_in, recorder
from worklog_tui.app import Recorder
from worklog_tui.bench.desk import open_desk
from worklog_tui.bench.machines import add_machine
from worklog_tui.bench.record import keep_note
from worklog_tui.bench.review import review
from worklog_tui.model import Machine
from worklog_tui.screens.layout import PLACES
from worklog_tui.widgets.head_line import HeadLine, lasted
from worklog_tui.widgets.places import Places

ROOT = Path(__file__).resolve().parents[2]
SIZES = [(160, 45), (80, 24), (60, 20), (48, 14)]


@pytest.mark.parametrize("size", SIZES)
async def test_every_place_has_one_key_and_a_way_back(tmp_path: Path, size: tuple[int, int]) -> None:
    desk = desk_in(tmp_path, Clock(), "the guide is cracked", "the table cleaned")
    app = recorder(desk)
    async with app.run_test(size=size) as pilot:
        await settle(pilot)
        await pilot.press("escape")
        for place, named in PLACES.items():
            await pilot.press(named.key)
            await settle(pilot)
            names = (named.name, named.short, named.brief)
            assert any(f"[{name}" in on_screen(app) for name in names), place
            assert app.focused is app.screen.list_of(place)  # type: ignore[attr-defined]
            for smaller in ((20, 5), size):
                await pilot.resize_terminal(*smaller)
                await pilot.pause()
            assert app.focused is app.screen.list_of(place)  # type: ignore[attr-defined]
        await pilot.press("n")
        await type_in(pilot, "still here")
        await pilot.press("enter")
        await settle(pilot)
    assert review(desk, SAW).history.sessions[0].notes[-1].words == "still here"


@pytest.mark.parametrize("size", SIZES)
async def test_every_place_can_be_clicked(tmp_path: Path, size: tuple[int, int]) -> None:
    app = recorder(desk_in(tmp_path, Clock(), "the guide is cracked"))
    async with app.run_test(size=size) as pilot:
        await settle(pilot)
        for place in reversed(PLACES):
            await pilot.click(Places, offset=(app.screen.query_one(Places).starts()[place] + 1, 0))
            await settle(pilot)
            assert app.screen.at == place  # type: ignore[attr-defined]
        await pilot.click(Places, offset=(app.screen.query_one(Places).starts()["readings"] + 1, 0))
        await settle(pilot)
        assert "Nothing has been measured yet." in on_screen(app)


@pytest.mark.parametrize("place", PLACES)
async def test_every_place_is_found_in_the_palette_by_its_name(tmp_path: Path, place: str) -> None:
    app = recorder(desk_in(tmp_path, Clock(), "the guide is cracked"))
    async with app.run_test(size=(80, 24)) as pilot:
        await settle(pilot)
        await pilot.press("escape", "c" if place == "timeline" else "t")
        await pilot.press("ctrl+p", *PLACES[place].name)
        await pilot.pause(0.3)
        await pilot.press("enter")
        await settle(pilot)
        assert app.screen.at == place  # type: ignore[attr-defined]


async def test_esc_again_and_again_stays_where_single_keys_work(tmp_path: Path) -> None:
    desk = desk_in(tmp_path, Clock(), "the guide is cracked")
    app = recorder(desk)
    async with app.run_test(size=(80, 24)) as pilot:
        await settle(pilot)
        await pilot.press("escape", "escape", "o", "escape", "escape")
        assert app.screen.at == "timeline"  # type: ignore[attr-defined]
        await pilot.press("r")
        await settle(pilot)
        assert app.screen.at == "readings"  # type: ignore[attr-defined]
    assert len(review(desk, SAW).history.sessions[0].notes) == 1


async def test_no_key_is_told_that_is_a_letter_of_the_note(bench: Bench) -> None:
    app = Recorder(bench, "Band saw")
    async with app.run_test(size=(120, 30)) as pilot:
        await settle(pilot)
        assert " / find" not in on_screen(app)
        assert "Enter keep  Esc places and keys" in on_screen(app)
        await pilot.press("escape")
        await settle(pilot)
        assert " / find" in on_screen(app)


async def test_wiping_the_keys_does_nothing_until_the_word_is_typed(bench: Bench) -> None:
    app = Recorder(bench, "Band saw")
    async with app.run_test(size=(80, 24)) as pilot:
        await settle(pilot)
        await pilot.press("escape", "k")
        await pilot.pause()
        await pilot.press(*"qmxasdf123", "enter", "escape", "f2", "tab", *"opn")
        assert "Wipe the keys now" in on_screen(app)
        await pilot.press(*"open")
        await settle(pilot)
        assert "Wipe the keys now" not in on_screen(app)
        assert app.is_running
        assert bench.notes == []


async def test_an_enter_that_repeats_keeps_a_note_once(bench: Bench) -> None:
    app = Recorder(bench, "Band saw")
    async with app.run_test(size=(80, 24)) as pilot:
        await settle(pilot)
        await type_in(pilot, "gap 18 thou")
        await pilot.press(*["enter"] * 25)
        await settle(pilot)
        assert [note.words for note in bench.notes] == ["gap 18 thou"]


@pytest.mark.parametrize("size", SIZES)
async def test_the_view_from_far_shows_the_clock_and_the_last_note(tmp_path: Path, size: tuple[int, int]) -> None:
    app = recorder(desk_in(tmp_path, Clock(), "the guide is cracked"))
    async with app.run_test(size=size) as pilot:
        await settle(pilot)
        await pilot.press("escape", "z")
        await settle(pilot)
        assert "Last: the guide is cracked" in on_screen(app)
        await type_in(pilot, "the table cleaned")
        await pilot.press("enter")
        await settle(pilot)
        assert "Last: the table cleaned" in on_screen(app)
        assert "Esc ends this view" in on_screen(app)
        await pilot.press("escape")
        await settle(pilot)
        assert "Last:" not in on_screen(app)
        assert app.focused is not None
        assert app.focused.display


async def test_the_head_line_tells_the_session_and_the_film(tmp_path: Path) -> None:
    clock = Clock()
    app = recorder(desk_in(tmp_path, clock))
    async with app.run_test(size=(80, 24)) as pilot:
        await settle(pilot)
        await type_in(pilot, "the guide is cracked")
        await pilot.press("enter")
        await settle(pilot)
        head = app.screen.query_one(HeadLine)
        assert head.said.split("  ")[0] == "Band saw, session 1, 0 min, not filming, 1 note"
        assert head.said.endswith("  14:05")
        assert len(head.said) == 80
        await pilot.press("f2")
        await settle(pilot)
        clock.moment += timedelta(seconds=751)
        await pilot.pause(1.2)
        assert head.said.split("  ")[0] == "Band saw, session 1, 12 min, film 12:31, 1 note"
        await pilot.press("f4")
        await settle(pilot)
        assert "Film 12:31: shoot again." in on_screen(app)
        await pilot.press("f9")
        await pilot.pause()
        await pilot.press(*"20:00", "enter")
        await settle(pilot)
        assert "film 20:00" in head.said
        await pilot.press("f2")
        await settle(pilot)
        assert "not filming" in head.said


async def test_what_another_program_says_comes_up_by_itself(tmp_path: Path) -> None:
    desk = desk_in(tmp_path, Clock(), "the guide is cracked")
    app = recorder(desk)
    async with app.run_test(size=(80, 24)) as pilot:
        await settle(pilot)
        await pilot.press("escape", "t")
        keep_note(desk, SAW, "the table cleaned")
        for _ in range(20):
            await pilot.pause(0.3)
            if "the table cleaned" in on_screen(app):
                break
        assert "the table cleaned" in on_screen(app)


async def test_dictation_stands_on_the_screen_while_it_is_spoken(tmp_path: Path) -> None:
    desk = open_desk(tmp_path / "log.db")
    add_machine(desk, Machine(SAW))
    own = {"PYTHONPATH": str(ROOT)}
    call = [sys.executable, "-m", "worklog_tui", "follow", "--machine", SAW, "--logbook", str(desk.logbook), "-"]
    app = recorder(desk)
    async with app.run_test(size=(80, 24)) as pilot:
        await settle(pilot)
        with subprocess.Popen(
            call, stdin=subprocess.PIPE, stdout=subprocess.DEVNULL, env={**os.environ, **own}
        ) as spoken:
            assert spoken.stdin is not None
            for words in ("the blade guide is cracked", "set the gap to 18 thou"):
                spoken.stdin.write(f"{words}\n".encode())
                spoken.stdin.flush()
                for _ in range(200):
                    await pilot.pause(0.3)
                    if words in on_screen(app):
                        break
                assert words in on_screen(app)
        assert spoken.returncode == 0
        await pilot.pause(1.2)
        assert "2 notes" in app.screen.query_one(HeadLine).said


def test_follow_from_end_to_end_keeps_the_lines_of_a_pipe(tmp_path: Path) -> None:
    card = tmp_path / "machine.toml"
    card.write_text('name = "Fret saw"\n')
    own = {"PYTHONPATH": str(ROOT), "XDG_DATA_HOME": str(tmp_path)}
    book = str(tmp_path / "log.db")
    call = [sys.executable, "-m", "worklog_tui", "follow", "--machine", str(card), "--logbook", book, "-"]
    said = "the blade guide is cracked\nset the gap to 18 thou\n"
    done = subprocess.run(call, input=said, capture_output=True, text=True, env={**os.environ, **own}, timeout=240)
    assert done.returncode == 0, done.stderr
    assert [line.split("  ")[1] for line in done.stdout.splitlines()] == said.splitlines()
    look = [sys.executable, "-m", "worklog_tui", "timeline", "--machine", "Fret saw", "--logbook", book]
    seen = subprocess.run(look, capture_output=True, text=True, env={**os.environ, **own}, timeout=240).stdout
    assert "set the gap to 18 thou" in seen


def test_how_long_a_session_goes_is_told_in_hours_when_it_is_long() -> None:
    assert [lasted(minutes) for minutes in (0, 59, 60, 149)] == ["0 min", "59 min", "1 h 00 min", "2 h 29 min"]


@pytest.mark.parametrize("size", [(80, 24), (48, 14), (30, 8)])
async def test_how_to_unlock_can_be_read_on_any_screen(bench: Bench, size: tuple[int, int]) -> None:
    app = Recorder(bench, SAW)
    async with app.run_test(size=size) as pilot:
        await settle(pilot)
        await pilot.press("escape", "k")
        await pilot.pause()
        assert "Type open to go on" in " ".join(on_screen(app).split())


async def test_the_page_of_keys_names_the_plain_key_of_the_camera_too(bench: Bench) -> None:
    app = Recorder(bench, SAW)
    async with app.run_test(size=(80, 40)) as pilot:
        await settle(pilot)
        await pilot.press("escape", "question_mark")
        await pilot.pause()
        assert "1 F2  The camera goes on or off" in on_screen(app)
        assert "g F5  What was begun and not heard finished" in on_screen(app)


async def test_a_small_screen_says_once_where_the_keys_are(bench: Bench) -> None:
    app = Recorder(bench, SAW)
    async with app.run_test(size=(48, 14)) as pilot:
        await settle(pilot)
        assert "Esc: places and keys; there ? tells all." in on_screen(app)
        await type_in(pilot, "points gap 18 thou")
        await settle(pilot)
        assert "there ? tells all." not in on_screen(app)
