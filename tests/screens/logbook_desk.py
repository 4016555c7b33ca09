"""A recorder on a real logbook, with a reader that knows a few sayings."""

from __future__ import annotations

import random
from collections.abc import Iterator
from dataclasses import dataclass
from datetime import UTC, datetime
from pathlib import Path

from tests.bench.plain_reader import PlainReader
from worklog_tui.app import Recorder
from worklog_tui.bench.desk import Desk
from worklog_tui.bench.machines import add_machine
from worklog_tui.bench.outlook import Outlook, outlooks
from worklog_tui.bench.record import keep_note
from worklog_tui.model import Machine
from worklog_tui.screens.errands import Errands

SAW = "Band saw"


@dataclass
class Clock:
    """A wall clock that goes on only when it is told to."""

    moment: datetime = datetime(2031, 4, 12, 14, 5, tzinfo=UTC)

    def __call__(self) -> datetime:
        return self.moment


class Here(Errands):
    """Errands that work everything out in this process: the reader of the tests cannot be sent to another."""

    def outlooks(self, name: str) -> Iterator[Outlook]:
        return outlooks(self.desk, name)


def desk_in(folder: Path, clock: Clock, *notes: str) -> Desk:
    """A desk with one machine and these notes."""
    chance = random.Random(1)
    desk = Desk(folder / "log.db", (), clock, "bench-one", lambda: chance.getrandbits(74), reads_with=PlainReader())
    add_machine(desk, Machine(SAW, kind="woodworking machine"))
    for words in notes:
        keep_note(desk, SAW, words)
    return desk


def recorder(desk: Desk) -> Recorder:
    """The recorder on that desk."""
    return Recorder(Here(desk), SAW)
