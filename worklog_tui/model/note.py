"""Notes and sessions: the words, when they were said, and every wording that a note has had."""

from __future__ import annotations

from dataclasses import dataclass

from worklog_tui.model.moments import Instant

ERASED = "[erased]"
"What a note says whose words a person erased for good: a mark that something was there."


@dataclass(frozen=True, slots=True)
class Note:
    """One line of talk or typing. The first wording is never altered; a later one is a revision.

    Only erasing takes words away: then the note says ERASED, and no wording of it is left.
    """

    uid: str
    session: str
    words: str
    at: int | None = None
    "Session time in whole seconds; None when no time was given."
    said_at: str = ""
    "The time as it was written, such as 1:23 or 14:05."
    track: str = "typed"
    "typed (lines by wall clock), live (kept while working) or captions (speech to text)."
    arrival: int = 0
    "Order within the session: the n-th that came, from 0."
    revision: int = 0
    instant: Instant | None = None
    film: int | None = None
    "Place in the film in whole seconds, when known."
    struck: bool = False
    "Whether the person struck it out: it is kept, but neither read nor shown."


@dataclass(frozen=True, slots=True)
class Revision:
    """One wording of a note; number 0 is the first."""

    note: str
    number: int
    words: str
    instant: Instant | None = None


@dataclass(frozen=True, slots=True)
class Session:
    """One stretch of work on one machine."""

    uid: str
    machine: str
    start: Instant | None = None
    "None when the date is not known; such sessions sort by arrival and count for no hours."
    source: str = "live"
    "live, or import."
    arrival: int = 0
