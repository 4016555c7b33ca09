"""What has a date: open items that are due, waits for something to be ready, and what was ordered."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date, datetime, timedelta

from worklog_tui.logbook.amounts import bounds_in
from worklog_tui.logbook.matters import anchor_text
from worklog_tui.model import Due, Note, OpenItem, Place, Reading, Session
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
    """Times that were said to be given to something, counted from when it was said, as long as they are not over."""
    notes = {n.uid: (n, record.session) for record in of.history.sessions for n in record.notes}
    for place, fact in of.told():
        if not (isinstance(fact, Reading) and fact.quantity == "duration" and fact.role == "planned"):
            continue
        seconds = bounds_in(fact.value, fact.unit, "s")
        note, session = notes[place.note]
        at = _ready(note, session, seconds[1]) if seconds and 0 < seconds[1] < 10 * 366 * 86400 else None
        if at is None or _over(at, now):
            continue
        uid = derived("calendar", of.history.machine.uid or of.history.machine.name, "wait", note.uid, fact.main.start)
        title = _title(of.history.machine.name, of.words(note.uid), "wait")
        told = " ".join(f"{amount(fact.value, fact.unit)}; {_said(of, place)}".split())
        yield Dated(uid, title, told, at, "wait")


def _ready(note: Note, session: Session, seconds: float) -> datetime | date | None:
    """When a wait is over: to the second where the time of the note is known, else the day for waits of days."""
    span = timedelta(seconds=seconds)
    if note.instant is not None:
        return note.instant.moment() + span
    if session.start is None:
        return None
    if note.track != "captions":
        return session.start.moment() + timedelta(seconds=note.at or 0) + span
    return (session.start.moment() + span).date() if seconds >= 86400 else None


def _over(at: datetime | date, now: datetime) -> bool:
    return at < now if isinstance(at, datetime) else at < now.date()


def _said(of: Material, place: Place | None) -> str:
    return f"{where(place)}: “{of.words(place.note)}”" if place else ""


def _title(machine: str, what: str, sort: str) -> str:
    before = {"due": "", "wait": "ready? ", "awaited": "awaited: "}[sort]
    title = " ".join(f"{machine}: {before}{what}".split())
    return title if len(title) <= LONGEST else title[: LONGEST - 2].rsplit(" ", 1)[0] + " …"
