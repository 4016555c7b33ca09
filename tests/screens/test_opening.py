"""What is typed while a machine is being put on the bench is not lost: it goes into the note line of that machine."""

from __future__ import annotations

import time

import pytest
from textual import events

from tests.screens.bench_in_memory import Bench, on_screen, settle
from worklog_tui.app import Recorder
from worklog_tui.model import Machine
from worklog_tui.screens.recording import RecordingScreen
from worklog_tui.widgets.note_line import NoteLine


@pytest.fixture
def slow(bench: Bench, monkeypatch: pytest.MonkeyPatch) -> Bench:
    """A bench on which making a card takes a while."""
    make = bench.add_machine

    def slowly(card: Machine) -> Machine:
        time.sleep(0.5)
        return make(card)

    monkeypatch.setattr(bench, "add_machine", slowly)
    return bench


def hold(app: Recorder, *keys: str) -> None:
    """Keys that come faster than the screens change."""
    for key in keys:
        name = "space" if key == " " else key
        app.post_message(events.Key(name, key if len(key) == 1 else None))


async def test_words_sent_while_a_card_is_being_made_are_kept(slow: Bench) -> None:
    app = Recorder(slow)
    async with app.run_test(size=(80, 24)) as pilot:
        await settle(pilot)
        await pilot.press("n", *"pump")
        hold(app, "enter", "enter")
        await pilot.pause(0.1)
        hold(app, *"it leaks", "enter", *"nd")
        assert not isinstance(app.screen, RecordingScreen)
        await settle(pilot)
        await settle(pilot)
        assert isinstance(app.screen, RecordingScreen)
        assert slow.cards[-1] == Machine("pump")
        assert [note.words for note in slow.notes] == ["it leaks"]
        assert app.screen.query_one(NoteLine).text == "nd"  # no key of another place


async def test_a_paste_while_a_machine_is_being_opened_goes_into_its_note_line(bench: Bench) -> None:
    app = Recorder(bench)
    async with app.run_test(size=(80, 24)) as pilot:
        await settle(pilot)
        hold(app, "enter")
        await pilot.pause(0)
        app.post_message(events.Paste("the blade wanders"))
        await settle(pilot)
        await settle(pilot)
        assert app.screen.query_one(NoteLine).text == "the blade wanders"


async def test_when_the_card_cannot_be_made_the_keys_work_and_the_words_wait_for_the_next(
    slow: Bench, monkeypatch: pytest.MonkeyPatch
) -> None:
    make = slow.add_machine

    def refuse(card: Machine) -> Machine:
        time.sleep(0.3)
        raise ValueError("Nothing can be written there.")

    monkeypatch.setattr(slow, "add_machine", refuse)
    app = Recorder(slow)
    async with app.run_test(size=(80, 24)) as pilot:
        await settle(pilot)
        await pilot.press("n", *"pump", "enter")
        hold(app, "d")
        await settle(pilot)
        assert "That did not work: Nothing can be written there." in on_screen(app)
        monkeypatch.setattr(slow, "add_machine", make)
        await pilot.press("n", *"pump", "enter")
        await settle(pilot)
        await settle(pilot)
        assert app.screen.query_one(NoteLine).text == "d"


async def test_a_key_that_repeats_answers_a_question_once_and_closes_nothing_behind_it(bench: Bench) -> None:
    app = Recorder(bench, "Band saw")
    async with app.run_test(size=(80, 24)) as pilot:
        await settle(pilot)
        for begin, answer in (("question_mark", "escape"), ("slash", "escape"), ("g", "escape")):
            await pilot.press("escape", begin)
            await pilot.pause()
            hold(app, answer, answer, answer)
            await settle(pilot)
            assert isinstance(app.screen, RecordingScreen), begin
        app.post_message(events.Paste("need a new belt\nneed a new pin"))
        await settle(pilot)
        hold(app, "k", "k", "k")
        await settle(pilot)
        assert isinstance(app.screen, RecordingScreen)
        assert [note.words for note in bench.notes] == ["need a new belt", "need a new pin"]
