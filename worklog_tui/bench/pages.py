"""The timeline of a machine in pages from its end, for a screen that need not hold all of it."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from worklog_tui import store
from worklog_tui.bench.machines import named
from worklog_tui.model import Fact, Instant, Note, Session
from worklog_tui.store import pages

if TYPE_CHECKING:
    from worklog_tui.bench.desk import Desk

PAGE = 300
"Notes of a page."


@dataclass(frozen=True, slots=True)
class Part:
    """Some notes of one session, in order, with what was read from them."""

    session: Session
    number: int
    "1-based position of the session in the machine's history."
    first: int
    "Position of the first of these notes in the session, from 0."
    notes: tuple[Note, ...]
    facts: tuple[Fact, ...]


@dataclass(frozen=True, slots=True)
class Page:
    """Parts in order, and how much there is in all."""

    parts: tuple[Part, ...] = ()
    lengths: tuple[tuple[str, int], ...] = ()
    "For every session in order: its uid, and how many notes it has."
    acts: int = 0
    "Grows with every act of a person."

    @property
    def last_worked(self) -> Instant | None:
        """When the last note of the page was said, or its session began; None when no date is known."""
        for part in reversed(self.parts):
            for note in reversed(part.notes):
                if note.instant is not None:
                    return note.instant
            return part.session.start
        return None


@dataclass(frozen=True, slots=True)
class Wanted:
    """Which page: the last one, or the one that ends before a place."""

    before: tuple[str, int] | None = None
    "The uid of a session and the position of a note in it, from 0."
    count: int = PAGE
    own: str = ""
    "The session that is being recorded: it stands last, whatever the dates of the others."
    acts: int | None = None
    "What `Page.acts` was when the log was read; None: acts do not matter."


def page(desk: Desk, machine_name: str, wanted: Wanted = Wanted()) -> Page:
    """A page of a machine's timeline."""
    with store.reading(desk.logbook) as connection:
        found = pages.lengths(connection, named(connection, machine_name).uid)
        parts: list[Part] = []
        count = wanted.count
        for number, session, notes in reversed(_until(found, wanted)):
            if count <= 0:
                break
            first = max(notes - count, 0)
            said, facts = pages.part(connection, session.uid, first, notes - first)
            parts.insert(0, Part(session, number, first, tuple(said), tuple(facts)))
            count -= notes - first
        acts = store.acts.next_counter(connection)
    return Page(tuple(parts), _told(found), acts)


def news(desk: Desk, machine_name: str, known: tuple[tuple[str, int], ...], wanted: Wanted) -> Page | None:
    """The page when sessions, notes or acts came since the lengths were `known`; else None."""
    with store.reading(desk.logbook) as connection:
        found = pages.lengths(connection, named(connection, machine_name).uid)
        acts = store.acts.next_counter(connection)
    same = _told(found) == known and wanted.acts in (None, acts)
    return None if same else page(desk, machine_name, wanted)


def _until(found: list[tuple[Session, int]], wanted: Wanted) -> list[tuple[int, Session, int]]:
    """The sessions up to a place, each with its number and how many of its notes stand before that place."""
    before: list[tuple[int, Session, int]] = []
    end = wanted.before
    numbered = sorted(enumerate(found, 1), key=lambda one: one[1][0].uid == wanted.own)
    for number, (session, notes) in numbered:
        if end is not None and session.uid == end[0]:
            return [*before, (number, session, min(end[1], notes))] if end[1] else before
        if notes:
            before.append((number, session, notes))
    return before


def _told(found: list[tuple[Session, int]]) -> tuple[tuple[str, int], ...]:
    return tuple((session.uid, notes) for session, notes in found if notes)
