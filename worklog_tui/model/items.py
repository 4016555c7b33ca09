"""Open items: what must be come back to, why, and what became of it."""

from __future__ import annotations

from dataclasses import dataclass

from worklog_tui.model.facts import FactKey


@dataclass(frozen=True, slots=True)
class Place:
    """Where in the log something was said."""

    session: int
    "1-based position of the session in the machine's history."
    note: str
    at: str
    "The time as written."
    order: int = 0
    "Position of the note over all sessions, from 0."


@dataclass(frozen=True, slots=True)
class Due:
    """When an item is to be done: by a day, at so many hours run, or at an event; whichever is given."""

    day: str = ""
    "ISO date, such as 2031-05-01."
    hours: float | None = None
    "What the hour meter will show."
    event: str = ""
    "Such as before start, before road, before sale, at the first heat, when the head is off."


@dataclass(frozen=True, slots=True)
class Again:
    """Why an item that was dealt with is open again."""

    how: str
    "found again, measured again, told again, off again, apart again, or opened by hand."
    place: Place | None
    "Where that was said; None when a person opened it."
    what: str = ""
    "What was found or measured, in a few words."
    dealt_with: Place | None = None
    "Where it had been dealt with."


@dataclass(frozen=True, slots=True)
class OpenItem:
    """One thing to come back to."""

    anchors: tuple[FactKey, ...]
    "The facts merged into it, earliest first; an act on any of them applies to it."
    about: str
    name: str
    reason: str
    "temporary, part needed, fault, to do, fallback or question."
    state: str
    "open, done, awaited, left so, or noticed (a bad finding that nobody said to come back to)."
    raised: Place | None
    "None for an item from a viewer's comment."
    closed: Place | None = None
    closed_by: FactKey | None = None
    quote: str = ""
    comment: int | None = None
    "0-based number of the viewer's comment that raised it."
    people: int = 0
    "How many viewers said it."
    due: Due | None = None
    "When it is to be done, as the person set it."
    again: Again | None = None
    "Why it is open again, of one that had been dealt with."
