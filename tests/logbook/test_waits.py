"""What was left in the cleaner is waited for until the talk goes on about it."""

from __future__ import annotations

from dataclasses import replace
from datetime import UTC, datetime, timedelta

import pytest

from tests.logbook.told import Told, did, good, read
from worklog_tui.logbook.waits import waits
from worklog_tui.model import History, Instant

NOON = datetime(2031, 4, 12, 12, 0, tzinfo=UTC)


def timed(known: History, minutes: list[int]) -> History:
    """The history with its notes said so many minutes after noon."""
    records, left = [], list(minutes)
    for record in known.sessions:
        notes = tuple(replace(note, instant=Instant.of(NOON + timedelta(minutes=left.pop(0)))) for note in record.notes)
        records.append(replace(record, notes=notes))
    return History(known.machine, tuple(records))


def soak() -> Told:
    return Told().say(
        "jets in the cleaner, half an hour", did("soak", "jets"), read("duration", 30.0, "min", "jets", role="planned")
    )


def test_a_wait_says_when_it_is_ready() -> None:
    (wait,) = waits(timed(soak().history(), [0]))
    assert (wait.least, wait.ended) == (1800, None)
    assert not wait.is_ready(NOON + timedelta(minutes=29))
    assert wait.is_ready(NOON + timedelta(minutes=30))


def test_it_ends_when_the_talk_goes_on_about_it_with_the_time_it_really_took() -> None:
    told = soak().say("looked at the belt", good("belt", "fine")).say("jets are clear", good("jets", "clear"))
    (wait,) = waits(timed(told.history(), [0, 10, 42]))
    assert wait.ended
    assert wait.took == 42 * 60
    assert not wait.is_ready(NOON + timedelta(hours=3))


def test_a_time_that_is_said_counts_for_more_than_the_clock() -> None:
    told = soak().say("more like thirty-five", read("duration", 35.0, "min", "jets"))
    (wait,) = waits(timed(told.history(), [0, 50]))
    assert wait.took == 35 * 60


def test_film_time_is_no_work_time() -> None:
    known = soak().say("jets are clear", good("jets", "clear")).history()
    record = known.sessions[0]
    notes = tuple(replace(note, track="captions", instant=None) for note in record.notes)
    (wait,) = waits(History(known.machine, (replace(record, notes=notes),)))
    assert (wait.begun, wait.ready, wait.took) == (None, None, None)
    assert wait.ended


def test_a_range_is_ready_at_its_beginning() -> None:
    told = Told().say("six to eight weeks", read("duration", (6 * 7.0, 8 * 7.0), "day", "gasket set", role="planned"))
    (wait,) = waits(timed(told.history(), [0]))
    assert (wait.least, wait.most) == (42 * 86400, 56 * 86400)


@pytest.mark.parametrize(
    ("words", "ready"),
    [
        ("jets in the cleaner overnight", datetime(2031, 4, 13, 8, 0, tzinfo=UTC)),
        ("jets in the cleaner till tomorrow", datetime(2031, 4, 13, 8, 0, tzinfo=UTC)),
        ("jets in the cleaner until Thursday", datetime(2031, 4, 17, 8, 0, tzinfo=UTC)),
        ("jets in the cleaner over the weekend", datetime(2031, 4, 14, 8, 0, tzinfo=UTC)),
        ("jets in the cleaner", None),
        ("jets in the cleaner, the tank was overnight", None),
    ],
)
def test_what_is_left_till_a_day_is_ready_in_the_morning(words: str, ready: datetime | None) -> None:
    work = did("soak", "jets") if "tank" not in words else did("clean", "jets")
    found = waits(timed(Told().say(words, work).history(), [0]))
    assert [wait.ready for wait in found] == ([ready] if ready else [])
    assert all(wait.reading.subject == "jets" for wait in found)


def test_a_time_that_is_named_counts_for_more_than_the_morning() -> None:
    told = Told().say("jets soak for 30 hours, till tomorrow", did("soak", "jets"),
                      read("duration", 30.0, "h", "jets", role="planned"))  # fmt: skip
    (wait,) = waits(timed(told.history(), [0]))
    assert wait.least == 30 * 3600


def test_minutes_are_waited_for_the_same_evening_and_not_the_next_day() -> None:
    (wait,) = waits(timed(soak().history(), [0]))
    assert wait.is_on(NOON + timedelta(hours=6))
    assert not wait.is_on(NOON + timedelta(days=1))


def test_minutes_in_a_finished_film_are_not_waited_for() -> None:
    known = soak().history()
    record = known.sessions[0]
    film = replace(record, notes=tuple(replace(note, track="captions", instant=None) for note in record.notes))
    (wait,) = waits(History(known.machine, (film,)))
    assert not wait.is_on(NOON)


def test_what_soaks_for_days_is_waited_for_until_something_is_heard_of_it() -> None:
    told = Told().say("hinges in diesel", did("soak", "hinges"), read("duration", 48.0, "h", "hinges", role="planned"))
    (wait,) = waits(timed(told.history(), [0]))
    assert wait.is_on(NOON + timedelta(days=9))
