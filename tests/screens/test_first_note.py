"""The first notes come while the grammars are still being loaded: kept at once, read as soon as that can be."""

from __future__ import annotations

import threading
from dataclasses import replace
from datetime import timedelta
from pathlib import Path

import pytest

from tests.bench.plain_reader import PlainReader
from tests.screens.bench_in_memory import on_screen, settle, type_in
from tests.screens.logbook_desk import SAW, Clock, Here, desk_in
from worklog_tui.app import Recorder
from worklog_tui.bench.desk import Desk
from worklog_tui.bench.history import history
from worklog_tui.bench.live import keep_beside
from worklog_tui.bench.reading import Reader
from worklog_tui.store import spool


class SlowDesk(Desk):
    """Its reader is there when `loaded` is set, and not before."""

    loaded = threading.Event()

    @property
    def can_read(self) -> bool:
        return self.loaded.is_set()

    def reader(self) -> Reader:
        self.loaded.wait(20.0)
        return PlainReader()


@pytest.fixture
def clock() -> Clock:
    return Clock()


@pytest.fixture
def desk(tmp_path: Path, clock: Clock) -> SlowDesk:
    """A logbook with one machine, and nothing loaded that could read."""
    plain = desk_in(tmp_path, clock)
    SlowDesk.loaded = threading.Event()
    given = {name: getattr(plain, name) for name in ("logbook", "grammars", "now", "device", "chance", "reads_with")}
    return SlowDesk(**given)


async def test_a_note_before_the_grammars_are_there_is_kept_at_once_and_read_later(
    desk: SlowDesk, clock: Clock
) -> None:
    app = Recorder(Here(desk), SAW)
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.pause(0.3)
        for words in ("the guide is cracked", "that is it for today"):
            await type_in(pilot, words)
            await pilot.press("enter")
            await pilot.pause(0.5)
            clock.moment += timedelta(minutes=1)
            assert "It is read in a moment." in on_screen(app)
            assert f"14:0{clock.moment.minute - 1}  {words}" in on_screen(app)
        assert on_screen(app).count("Session 1") == 1
        waiting = spool.waiting(desk.logbook)
        assert [one.note.words for one in waiting] == ["the guide is cracked", "that is it for today"]
        assert len({one.session.uid for one in waiting}) == 1
        desk.loaded.set()
        await settle(pilot)
        assert "guide: cracked" in on_screen(app)
        assert "Kept 14:06." in on_screen(app)
    (record,) = history(replace(desk), SAW).sessions
    assert [note.words for note in record.notes] == ["the guide is cracked", "that is it for today"]
    assert len(record.facts) == 1
    assert spool.waiting(desk.logbook) == []


async def test_what_a_window_that_was_ended_left_beside_the_logbook_is_there_in_the_next(desk: SlowDesk) -> None:
    keep_beside(desk, SAW, "the guide is cracked")  # and then the power went
    desk.loaded.set()
    app = Recorder(Here(desk), SAW)
    async with app.run_test(size=(80, 24)) as pilot:
        await settle(pilot)
        await pilot.pause(1.2)  # what is new in the logbook is looked for every second
        await settle(pilot)
        await pilot.press("escape", "t")
        await settle(pilot)
        assert "guide: cracked" in on_screen(app)
    assert spool.waiting(desk.logbook) == []
