"""The first screen: machines, a card for a new one, the demo."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.screens.bench_in_memory import Bench, on_screen, settle
from worklog_tui.app import Recorder
from worklog_tui.model import Machine
from worklog_tui.screens.errands import Errands
from worklog_tui.screens.recording import RecordingScreen
from worklog_tui.widgets.note_line import NoteLine


async def test_the_machines_are_listed_and_enter_opens_one(bench: Bench) -> None:
    app = Recorder(bench)
    async with app.run_test(size=(80, 24)) as pilot:
        await settle(pilot)
        assert "Band saw" in on_screen(app)
        assert "single-phase motor, no notes yet" in on_screen(app)
        await pilot.press("enter")
        await settle(pilot)
        assert isinstance(app.screen, RecordingScreen)
        assert isinstance(app.focused, NoteLine)


async def test_an_empty_logbook_says_what_to_do(bench: Bench) -> None:
    bench.cards.clear()
    app = Recorder(bench)
    async with app.run_test(size=(80, 24)) as pilot:
        await settle(pilot)
        assert "No machine yet: make a card for the first one." in on_screen(app)
        await pilot.press("enter")
        await pilot.pause()
        assert "only the name is needed. Enter makes it." in on_screen(app)


async def test_a_card_needs_no_more_than_a_name(bench: Bench) -> None:
    app = Recorder(bench)
    async with app.run_test(size=(80, 24)) as pilot:
        await settle(pilot)
        await pilot.press("n", "p", "u", "m", "p", "enter")
        await settle(pilot)
        assert bench.cards[-1] == Machine("pump")
        assert on_screen(app).startswith("pump, not filming, no notes yet")


async def test_a_whole_card_by_keys(bench: Bench) -> None:
    app = Recorder(bench)
    async with app.run_test(size=(80, 24)) as pilot:
        await settle(pilot)
        await pilot.press("n", "p", "tab", "k", "tab", "enter", "down", "enter", "tab", "enter", "down", "enter")
        await pilot.press("tab", "4", "enter")
        await settle(pilot)
        assert bench.cards[-1] == Machine("p", "k", "petrol", "magneto", 4)


async def test_a_card_without_a_name_is_asked_for_it(bench: Bench) -> None:
    app = Recorder(bench)
    async with app.run_test(size=(80, 24)) as pilot:
        await settle(pilot)
        await pilot.press("n", "enter")
        await pilot.pause()
        assert "It needs a name; a nickname will do." in on_screen(app)
        await pilot.press("escape")
        await pilot.pause()
        assert len(bench.cards) == 1


async def test_a_card_that_cannot_be_made_is_said_plainly(bench: Bench, monkeypatch: pytest.MonkeyPatch) -> None:
    def refuse(card: Machine) -> Machine:
        raise ValueError("Nothing can be written there.")

    monkeypatch.setattr(bench, "add_machine", refuse)
    app = Recorder(bench)
    async with app.run_test(size=(80, 24)) as pilot:
        await settle(pilot)
        await pilot.press("n", "p", "enter")
        await settle(pilot)
        assert "That did not work: Nothing can be written there." in on_screen(app)


async def test_the_demo_brings_its_own_machines(bench: Bench, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    demo = Bench(tmp_path / "demo.db", cards=[Machine("Invented pump", uid="d1")])
    monkeypatch.setattr(bench, "lay_out_demo", lambda: demo)
    app = Recorder(bench)
    async with app.run_test(size=(80, 24)) as pilot:
        await settle(pilot)
        await pilot.press("d")
        await settle(pilot)
        assert "Invented pump" in on_screen(app)
        assert "Band saw" not in on_screen(app)
        await pilot.press("enter")
        await settle(pilot)
        assert isinstance(app.screen, RecordingScreen)
        assert isinstance(app.screen.errands, Errands)
        assert app.screen.errands is demo
