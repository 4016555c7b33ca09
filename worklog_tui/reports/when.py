"""Days and places in words."""

from __future__ import annotations

from datetime import date

from worklog_tui.model import Instant, Place

_MONTHS = "January February March April May June July August September October November December".split()


def day(start: Instant | None) -> str:
    """A day in words, such as 12 April 2031; empty when it is not known."""
    if start is None:
        return ""
    return date_in_words(start.moment())


def date_in_words(one: date) -> str:
    """A date such as 12 April 2031."""
    return f"{one.day} {_MONTHS[one.month - 1]} {one.year}"


def session_title(number: int, start: Instant | None) -> str:
    """Session 2, 12 April 2031."""
    said = day(start)
    return f"Session {number}, {said}" if said else f"Session {number}, day not known"


def where(place: Place | None) -> str:
    """Where something was said, such as session 2 at 1:23."""
    if place is None:
        return ""
    return f"session {place.session} at {place.at}" if place.at else f"session {place.session}"
