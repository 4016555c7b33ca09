"""The desk wires clock, places and chance in one place; a session joins or begins by the clock alone."""

from __future__ import annotations

import subprocess
import sys
import uuid
from datetime import UTC, datetime
from pathlib import Path
from zoneinfo import ZoneInfo

import pytest

from tests.bench.conftest import Clock
from worklog_tui.bench.desk import Desk, open_desk
from worklog_tui.bench.open_session import session_at
from worklog_tui.model import Instant, Machine, Session
from worklog_tui.store.sessions import LastNote


def test_the_real_desk_has_a_clock_with_its_offset_and_a_chance_of_its_own(tmp_path: Path) -> None:
    desk = open_desk(tmp_path / "logbook.db")
    assert abs((datetime.now(UTC) - desk.now()).total_seconds()) < 5
    assert desk.now().utcoffset() is not None
    assert desk.chance() != desk.chance()
    assert all(0 <= desk.chance() < 1 << 74 for _ in range(50))
    assert not (tmp_path / "logbook.db").exists(), "the first entry makes the file"


def test_the_logbook_may_be_told_by_the_environment(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("WORKLOG_TUI_LOGBOOK", str(tmp_path / "told.db"))
    assert open_desk().logbook == tmp_path / "told.db"


def test_the_device_stays_the_same(tmp_path: Path) -> None:
    assert open_desk(tmp_path / "a.db").device == open_desk(tmp_path / "a.db").device


def test_uids_are_in_the_order_of_time(desk: Desk, clock: Clock) -> None:
    first = desk.uid()
    clock.go_on(seconds=0.001)
    second = desk.uid()
    assert first < second < desk.uid(later=1)
    assert uuid.UUID(first).version == 7


def test_the_zone_is_kept_where_it_has_a_name(desk: Desk, clock: Clock) -> None:
    clock.moment = datetime(2031, 7, 1, 12, 0, tzinfo=ZoneInfo("Europe/London"))
    assert desk.instant() == Instant("2031-07-01T11:00:00Z", "Europe/London", 60)


def test_facts_depend_on_the_card(desk: Desk) -> None:
    one = desk.stamp(Machine("Band saw", cylinders=1))
    assert one == desk.stamp(Machine("Band saw", cylinders=1))
    assert one != desk.stamp(Machine("Band saw", cylinders=2))


def at(hours: float) -> Instant:
    minutes = round(hours * 60)
    return Instant(f"2031-04-12T{minutes // 60:02}:{minutes % 60:02}:00Z")


@pytest.mark.parametrize(
    ("now", "joins"), [(10, True), (13.5, True), (14, False), (20, False), (9, True), (6.5, True), (5, False)]
)
def test_a_note_joins_within_the_quiet_hours_on_either_side(now: float, joins: bool) -> None:
    session = Session("s", "m", at(8))
    assert session_at(LastNote(session, 5, 7200, at(10)), at(now), 4) == (session if joins else None)


def test_no_session_is_joined_without_a_clock() -> None:
    assert session_at(None, at(8), 4) is None
    assert session_at(LastNote(Session("s", "m"), 0, 0, None), at(8), 4) is None


@pytest.mark.parametrize("room", [f"worklog_tui.bench.{name}" for name in ("record", "history", "machines")])
def test_the_bench_loads_without_a_screen_and_without_what_is_heavy(room: str) -> None:
    heavy = "{'textual', 'rich', 'sqlite_utils', 'pint', 'rapidfuzz', 'dateutil', 'webvtt', 'platformdirs', 'filelock'}"
    program = f"import sys, {room}; print(sorted({heavy} & set(sys.modules)))"
    done = subprocess.run([sys.executable, "-c", program], capture_output=True, text=True, check=True)
    assert done.stdout.strip() == "[]"
