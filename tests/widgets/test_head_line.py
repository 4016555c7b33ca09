"""The head line says what is waited for, and whether the camera runs."""

from __future__ import annotations

from dataclasses import replace
from datetime import UTC, datetime, timedelta

import pytest

from worklog_tui.logbook.wait import Wait
from worklog_tui.model import Instant, OpenItem, Place, Reading, Span
from worklog_tui.model.clip import Clip
from worklog_tui.widgets.head_line import film_told, in_room, waits_told

NOW = datetime(2031, 4, 12, 14, 5, tzinfo=UTC)  # a Saturday
HERE = Place(1, "n1", "14:05")


def wait(hours: float, subject: str = "carburettor") -> Wait:
    said = Reading(main=Span("n1", 0, 1), quantity="duration", value=hours, unit="h", subject=subject)
    return Wait(said, HERE, "in the cleaner", 0.0, 0.0, Instant.of(NOW), NOW + timedelta(hours=hours))


@pytest.mark.parametrize(
    ("hours", "told"),
    [(-1, "ready now"), (2, "ready 16:05"), (24 * 5, "ready Thursday"), (24 * 30, "ready 12 May")],
)
def test_what_is_waited_for_says_when_it_is_ready(hours: float, told: str) -> None:
    assert waits_told([wait(hours)], (), NOW) == f"carburettor {told}"


def test_more_waits_are_counted_and_what_is_on_its_way_comes_second() -> None:
    blade = OpenItem((), "blade", "", "part needed", "awaited", HERE)
    assert waits_told([wait(-1), wait(3, "battery")], [blade], NOW) == "carburettor ready now and 1 more"
    assert waits_told([], [blade], NOW) == "awaited: blade"
    assert waits_told([], [], NOW) == ""


def test_what_began_nobody_knows_when_is_not_told_in_the_head_line() -> None:
    assert waits_told([replace(wait(3), begun=None, ready=None), wait(3, "battery")], [], NOW) == "battery ready 17:05"


TOLD = ("session 3, 5 min", "not filming", "carburettor ready Thursday", "75 notes")


@pytest.mark.parametrize(
    ("room", "left"), [(80, TOLD), (60, TOLD[:3]), (40, TOLD[:2]), (20, TOLD[1:2]), (5, TOLD[1:2]), (0, TOLD)]
)
def test_what_has_no_room_is_left_out_whole_and_the_film_never(room: int, left: tuple[str, ...]) -> None:
    assert in_room(TOLD, room) == ", ".join(left)


def test_the_film_is_told_by_the_cameras_counter() -> None:
    clip = Clip("c1", "s1", Instant.of(NOW - timedelta(seconds=700)), offset=51)
    assert film_told(clip, NOW) == "film 12:31"
    assert film_told(None, NOW) == "not filming"
