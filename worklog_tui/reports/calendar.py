"""A calendar file (RFC 5545): an event with an alarm for what has a date, else a to-do."""

from __future__ import annotations

from collections.abc import Iterable
from datetime import UTC, datetime, timedelta
from typing import Any

from worklog_tui.reports.dates import Dated
from worklog_tui.reports.missing import needed

MAKER = "-//worklog-tui//repair log//EN"
MORNING = timedelta(hours=9)
"When the alarm of a whole day goes off, from midnight."
_LOOK = timedelta(minutes=15)
"How long a wait stands in the calendar when it is ready."


def calendar_file(rows: Iterable[Dated], now: datetime) -> bytes:
    """The file, with line ends and folding as the standard wants them; a Missing when icalendar is not installed."""
    ical = needed("icalendar", "icalendar", "A calendar")
    whole = ical.Calendar()
    whole.add("prodid", MAKER)
    whole.add("version", "2.0")
    for row in rows:
        whole.add_component(_event(ical, row, now) if row.at is not None else _to_do(ical, row, now))
    written: bytes = whole.to_ical()
    return written


def _event(ical: Any, row: Dated, now: datetime) -> Any:
    event = ical.Event()
    _head(event, row, now)
    timed = isinstance(row.at, datetime)
    event.add("dtstart", row.at.astimezone(UTC) if isinstance(row.at, datetime) else row.at)
    if timed:
        event.add("duration", _LOOK)
    event.add("transp", "TRANSPARENT")
    alarm = ical.Alarm()
    alarm.add("action", "DISPLAY")
    alarm.add("description", row.title)
    alarm.add("trigger", timedelta() if timed else MORNING)
    event.add_component(alarm)
    return event


def _to_do(ical: Any, row: Dated, now: datetime) -> Any:
    to_do = ical.Todo()
    _head(to_do, row, now)
    to_do.add("status", "NEEDS-ACTION")
    return to_do


def _head(component: Any, row: Dated, now: datetime) -> None:
    component.add("uid", row.uid)
    component.add("dtstamp", now.astimezone(UTC))
    component.add("summary", row.title)
    if row.told:
        component.add("description", row.told)
    component.add("categories", [row.sort])
