"""Waits: what was left in the cleaner, on charge, under oil or drying, when it is ready, and how long it really took.

A wait begins with a time that was said to be given to something. It ends when the talk goes on about that thing.
"""

from __future__ import annotations

from dataclasses import replace
from datetime import timedelta

from worklog_tui.logbook.amounts import bounds_in
from worklog_tui.logbook.mending import things_of
from worklog_tui.logbook.same_thing import Thing, same, speaks_of
from worklog_tui.logbook.wait import Wait
from worklog_tui.logbook.waits_said import time_given
from worklog_tui.model import Fact, Finding, History, Instant, Note, Place, Reading, Session, Work

LONGEST = 60 * 86_400.0
"Seconds of the longest time that is taken for a wait."


def waits(history: History) -> tuple[Wait, ...]:
    """All waits in the order in which they were begun, those that are over too."""
    notes = {n.uid: (n, record.session) for record in history.sessions for n in record.notes}
    open_ones: list[tuple[Wait, tuple[Thing, ...]]] = []
    found: list[Wait] = []
    last: dict[str, Work] = {}
    timed = {fact.main.note for fact in history.facts() if isinstance(fact, Reading) and _given(fact) is not None}
    for fact in history.facts():
        place = history.place(fact.main.note)
        still = []
        for wait, things in open_ones:
            if _goes_on(fact, place, wait, things):
                found.append(replace(wait, ended=place, took=_took(wait, fact, *notes[place.note])))
            else:
                still.append((wait, things))
        open_ones = still
        if isinstance(fact, Work):
            last[place.note] = fact
        begun = _begun(fact, place, *notes[place.note])
        if begun is not None and not isinstance(fact, Reading) and place.note in timed:
            begun = None
        if begun is not None:
            work = last.get(place.note)
            open_ones.append((begun, (*things_of(fact), *(things_of(work) if work else ()))))
    return tuple(sorted([*found, *(wait for wait, _ in open_ones)], key=lambda one: one.place.order))


def _given(reading: Reading) -> tuple[float, float] | None:
    """The seconds that something is given, at least and at most; None for another reading."""
    if reading.quantity != "duration" or reading.role != "planned":
        return None
    span = bounds_in(reading.value, reading.unit, "s")
    return span if span is not None and 0 < span[0] <= LONGEST else None


def _begun(fact: Fact, place: Place, note: Note, session: Session) -> Wait | None:
    """The wait that begins with a time that was told, or with work that was left to itself till a morning."""
    begun = _when(note, session)
    reading = fact if isinstance(fact, Reading) else None
    if isinstance(fact, Work) and begun is not None:
        reading = time_given(fact, note.words, begun.moment())
    span = _given(reading) if reading is not None else None
    if reading is None or span is None:
        return None
    ready = begun.moment() + timedelta(seconds=span[0]) if begun else None
    return Wait(reading, place, note.words, span[0], span[1], begun, ready)


def _when(note: Note, session: Session) -> Instant | None:
    """When a note was said by the clock; film time is no work time."""
    if note.instant is not None:
        return note.instant
    if note.track == "captions" or session.start is None or note.at is None:
        return None
    moment = session.start.moment() + timedelta(seconds=note.at)
    return replace(session.start, utc=Instant.of(moment).utc)


def _goes_on(fact: Fact, place: Place, wait: Wait, things: tuple[Thing, ...]) -> bool:
    """Whether a fact is about the thing that is waited for, and not of the same breath."""
    if place.order <= wait.place.order or not isinstance(fact, Work | Finding | Reading):
        return False
    if isinstance(fact, Reading) and fact.role == "planned":
        return False
    told = things_of(fact)
    return any(one.words and (same(said, one) or speaks_of(said, one)) for said in told for one in things)


def _took(wait: Wait, fact: Fact, note: Note, session: Session) -> float | None:
    """The time that was said, else the time between the two notes."""
    if isinstance(fact, Reading) and fact.quantity == "duration":
        span = bounds_in(fact.value, fact.unit, "s")
        if span is not None:
            return span[1]
    now = _when(note, session)
    if wait.begun is None or now is None:
        return None
    return max((now.moment() - wait.begun.moment()).total_seconds(), 0.0)
