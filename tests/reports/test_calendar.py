"""The calendar of an invented bell foundry's furnace blower, read back by another program's parser (icalendar)."""

from __future__ import annotations

import re
from dataclasses import replace
from datetime import UTC, date, datetime, timedelta
from typing import Any

import icalendar
import pytest

from tests.logbook.told import Told, did, later, read
from tests.reports.hostile import HOSTILE, shown
from tests.reports.published import published
from worklog_tui.logbook.matters import anchor_text
from worklog_tui.logbook.open_items import open_items
from worklog_tui.model import Act, History, Instant, Machine
from worklog_tui.reports.calendar import MORNING, calendar_file
from worklog_tui.reports.dates import Dated, dated

NOW = datetime(2031, 4, 1, 9, 30, tzinfo=UTC)
BLOWER = Machine("Furnace blower", uid="blower")


def history() -> History:
    """A day's work at 09:00: a gasket set in glue for two hours, a belt on order, oil to be changed by a day."""
    told = Told(BLOWER).say("need a belt", later("belt", "part needed")).say("ordered the belt", did("order", "belt"))
    told.say("leave the glue two hours", read("duration", 2, "h", "glue", "planned"))
    told.say("left it ten minutes", read("duration", 10, "min", "rotor", "planned")).quiet()
    known = told.say("change the oil", later("oil change", "to do")).history()
    oil = next(i for i in open_items(known) if i.about == "oil change")
    value = {"about": oil.about, "due": {"day": "2031-05-01", "hours": None, "event": ""}}
    act = Act("act", "bench", 1, Instant("2031-04-01T20:00:00Z"), "set item", anchor_text(oil.anchors[0]), value=value)
    return replace(known, acts=(act,), _places={})


def entries(rows: tuple[Dated, ...]) -> list[Any]:
    return list(icalendar.Calendar.from_ical(calendar_file(rows, NOW)).subcomponents)


def test_a_wait_is_an_event_at_the_moment_when_it_is_ready() -> None:
    (wait,) = [e for e in entries(dated(published(history()).material, NOW)) if "ready?" in e["summary"]]
    assert wait["dtstart"].dt == datetime(2031, 4, 1, 11, 2, tzinfo=UTC)
    (alarm,) = wait.subcomponents
    assert (alarm["action"], alarm["trigger"].dt) == ("DISPLAY", timedelta())


def test_the_log_tells_when_an_item_is_due() -> None:
    rows = [row for group in published(history()).log().open_items for row in group.rows]
    assert "due by 1 May 2031" in [row.detail for row in rows]


def test_a_wait_that_is_over_is_not_in_the_calendar() -> None:
    titles = [row.title for row in dated(published(history()).material, NOW)]
    assert not any("ten minutes" in title for title in titles)


def test_a_wait_that_the_talk_has_ended_is_not_in_the_calendar() -> None:
    told = Told(BLOWER).say("soak the float bowl two hours", read("duration", 2, "h", "float bowl", "planned")).quiet()
    known = told.say("took the float bowl out", did("remove", "float bowl")).history()
    assert dated(published(known).material, NOW) == ()


def test_an_item_that_is_due_stands_on_its_day_with_an_alarm_in_the_morning() -> None:
    (due,) = [e for e in entries(dated(published(history()).material, NOW)) if "oil change" in e["summary"]]
    assert due["dtstart"].dt == date(2031, 5, 1)
    assert due.subcomponents[0]["trigger"].dt == MORNING


def test_what_was_ordered_is_a_to_do_without_a_day() -> None:
    (belt,) = [e for e in entries(dated(published(history()).material, NOW)) if "awaited: belt" in e["summary"]]
    assert belt.name == "VTODO"
    assert "dtstart" not in belt


def test_the_uids_are_the_same_in_every_export() -> None:
    first, later_on = (
        [row.uid for row in dated(published(history()).material, moment)]
        for moment in (NOW, NOW + timedelta(minutes=30))
    )
    assert first == later_on
    assert len(set(first)) == len(first) == 3


def test_a_film_gives_no_hour_but_a_day_for_waits_of_days() -> None:
    from tests.reports.test_film import crane

    known = crane(
        [(60, read("duration", 3, "h", "glue", "planned")), (90, read("duration", 14, "day", "varnish", "planned"))]
    )
    (row,) = dated(published(known).material, datetime(2031, 5, 1, tzinfo=UTC))
    assert row.at == date(2031, 5, 15)


@pytest.mark.parametrize("value", [1e300, -5.0, 0.0])
def test_an_impossible_time_is_no_wait(value: float) -> None:
    known = Told(BLOWER).say("leave it", read("duration", value, "h", "glue", "planned")).history()
    assert dated(published(known).material, NOW) == ()


@pytest.mark.parametrize("words", HOSTILE)
def test_hostile_words_are_text_of_the_entry_and_nothing_else(words: str) -> None:
    told = Told(Machine(words, uid="m")).say(words, later(words, "part needed"), did("order", words))
    told.say(words, read("duration", 2, "h", words, "planned"))
    rows = dated(published(told.history()).material, NOW)
    written = calendar_file(rows, NOW)
    assert not re.search(rb"[\x00-\x09\x0b\x0c\x0e-\x1f\x7f]", written)
    assert all(len(line) <= 75 for line in written.split(b"\r\n"))
    found = entries(rows)
    assert len(found) == len(rows) >= 1
    assert {e.name for e in found} <= {"VEVENT", "VTODO"}
    assert all([s.name for s in e.subcomponents] in ([], ["VALARM"]) for e in found)
    assert all(str(s["action"]) == "DISPLAY" for e in found for s in e.subcomponents)
    assert all(" ".join(str(e["summary"]).split()).startswith(shown(words)[:40].rstrip()) for e in found)
