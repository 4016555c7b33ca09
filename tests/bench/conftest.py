"""A desk with a clock that is set by hand, in a folder of its own."""

from __future__ import annotations

import random
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest

from tests.bench.plain_reader import PlainReader
from worklog_tui.bench.desk import Desk
from worklog_tui.bench.machines import add_machine
from worklog_tui.model import Machine


@dataclass
class Clock:
    """A wall clock that goes on only when it is told to."""

    moment: datetime = datetime(2031, 4, 12, 14, 5, tzinfo=UTC)

    def __call__(self) -> datetime:
        return self.moment

    def go_on(self, **span: float) -> None:
        self.moment += timedelta(**span)


@pytest.fixture
def clock() -> Clock:
    return Clock()


@pytest.fixture
def desk(tmp_path: Path, clock: Clock) -> Desk:
    """A desk whose logbook does not exist yet."""
    logbook, chance = tmp_path / "shop" / "logbook.db", random.Random(1)
    return Desk(logbook, (), clock, "bench-one", lambda: chance.getrandbits(74), reads_with=PlainReader())


@pytest.fixture
def saw(desk: Desk) -> Machine:
    """A machine that is on the bench."""
    return add_machine(desk, Machine("Band saw", kind="woodworking machine"))
