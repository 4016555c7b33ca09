"""What a session's text is read into: lines with their times, and plain complaints about what was odd."""

from __future__ import annotations

from dataclasses import dataclass

from worklog_tui.model.moments import Instant


@dataclass(frozen=True, slots=True)
class Line:
    """One line of talk or typing, before it becomes a note."""

    at: int | None
    "Whole seconds from the session's start; None when the line has no time."
    said_at: str
    "The time as it was written (1:23, 1:02:03, 14:05); of a caption its start, floored; empty without a time."
    words: str
    number: int
    "The line of the text where it begins, from 1."


@dataclass(frozen=True, slots=True)
class ReadSession:
    """A session's text as it was understood."""

    header: Instant | None = None
    "The start that the header line gives."
    header_text: str = ""
    "Date and time of the header line as written."
    track: str = "typed"
    "typed (wall clock, or no times) or captions (times of a film)."
    lines: tuple[Line, ...] = ()
    complaints: tuple[str, ...] = ()
    "Plain sentences, each with its line number; what they name was kept all the same."
