"""What has a date: open items that are due, waits for something to be ready, and what was ordered."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date, datetime, timedelta

from worklog_tui.logbook.matters import anchor_text
from worklog_tui.logbook.waits import waits
from worklog_tui.model import Due, OpenItem, Place, Session
from worklog_tui.model.ids import derived
from worklog_tui.reports.counted import begun
from worklog_tui.reports.material import Material
from worklog_tui.reports.sentence import REASONS, amount
from worklog_tui.reports.when import where

LONGEST = 90
"Letters of a title."


@dataclass(frozen=True, slots=True)
class Dated:
    """One thing for a calendar."""

    uid: str
    "The same in every export."
    title: str
    told: str
    "What more there is to say of it."
    at: datetime | date | None
    "The moment or the day; None when no date is known."
    sort: str
    "due, wait or awaited."


def dated(of: Material, now: datetime) -> tuple[Dated, ...]:
    """Due items, waits that are not over, and what is awaited, of one machine."""
    return (*_items(of), *_waits(of, now))


def _items(of: Material) -> Iterator[Dated]:
    machine = of.history.machine
    for item in of.items:
        if item.state not in ("open", "awaited") or not (item.due or item.state == "awaited"):
            continue
        anchor = anchor_text(item.anchors[0]) if item.anchors else f"comment/{item.comment}"
        uid = derived("calendar", machine.uid or machine.name, anchor)
        day = _day(item.due) if item.due else None
        sort = "due" if item.due else "awaited"
        yield Dated(uid, _title(machine.name, item.about, sort), _told_of(of, item), day, sort)


def _told_of(of: Material, item: OpenItem) -> str:
    due = item.due
    when = [f"at {amount(due.hours, 'h')} run" if due and due.hours is not None else "", due.event if due else ""]
    rows = [REASONS.get(item.reason, ""), *when, _said(of, item.raised)]
    return begun(" ".join("; ".join(filter(None, rows)).split()))


def _day(due: Due) -> date | None:
    try:
        return date.fromisoformat(due.day) if due.day else None
    except ValueError:
        return None


def _waits(of: Material, now: datetime) -> Iterator[Dated]:
    """What is waited for, as long as its time is not over and the talk has not gone on about it."""
    sessions = {n.uid: record.session for record in of.history.sessions for n in record.notes}
    for wait in waits(of.history):
        at = wait.ready or _day_ready(sessions[wait.place.note], wait.least)
        if wait.ended is not None or wait.place.session < of.first or at is None or _over(at, now):
            continue
        fact, machine = wait.reading, of.history.machine
        uid = derived("calendar", machine.uid or machine.name, "wait", wait.place.note, fact.main.start)
        told = " ".join(f"{amount(fact.value, fact.unit)}; {_said(of, wait.place)}".split())
        yield Dated(uid, _title(machine.name, of.words(wait.place.note), "wait"), told, at, "wait")


def _day_ready(session: Session, seconds: float) -> date | None:
    """The day on which a wait of days is over that was told in a film: its hour is not known."""
    if session.start is None or seconds < 86400:
        return None
    return (session.start.moment() + timedelta(seconds=seconds)).date()


def _over(at: datetime | date, now: datetime) -> bool:
    return at < now if isinstance(at, datetime) else at < now.date()


def _said(of: Material, place: Place | None) -> str:
    return f"{where(place)}: “{of.words(place.note)}”" if place else ""


def _title(machine: str, what: str, sort: str) -> str:
    before = {"due": "", "wait": "ready? ", "awaited": "awaited: "}[sort]
    title = " ".join(f"{machine}: {before}{what}".split())
    return title if len(title) <= LONGEST else title[: LONGEST - 2].rsplit(" ", 1)[0] + " …"
