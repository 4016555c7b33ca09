"""Times as they stand in front of lines: 1:23, [1:02:03], 14:05, 2:05 pm, and ranges of them."""

from __future__ import annotations

import re
from dataclasses import dataclass

_TIME = r"(?:\d{1,3}:)?\d{0,3}:[0-5]\d(?:[.,]\d{1,3})?"
_RANGE_MARK = r"\s*(?:-->|->|[-–—]|to)\s*"
_BULLET = r"\s*(?:[-*•–]\s+)?"
_SPAN = rf"\s*({_TIME})(?:{_RANGE_MARK}{_TIME})?\s*"
_BRACKETED = re.compile(rf"{_BULLET}(?:\[{_SPAN}\]|\({_SPAN}\))[ \t]*[-–—:|]?")
_BARE = re.compile(
    rf"{_BULLET}((?:\d{{1,3}}:)?\d{{1,3}}:[0-5]\d(?:[.,]\d{{1,3}})?)(?!:\d)(?!\d(?!\d* (?:second|minute|hour)))"
    rf"(?:{_RANGE_MARK}(?:\d{{1,3}}:)?\d{{1,3}}:[0-5]\d(?:[.,]\d{{1,3}})?(?!\d))?(?:[ \t]*[-–—:|](?=\s))?"
)
_GLUED_RANGE = re.compile(r"\s*((?:\d{1,2}:)?\d{1,2}:[0-5]\d)((?:\d{1,2}:)?\d{1,2}:[0-5]\d)\s*\Z")
_LABEL = re.compile(r"[ \t]*(?:(\d+) hours?,? ?)?(?:(\d+) minutes?,? ?)?(?:(\d+) seconds?)?")
_CYLINDERS = re.compile(r"\s*1:\d{1,3}[\s,]+2:\d")
_HALF_DAY = re.compile(r"\s?([ap])\.?m\b\.?", re.IGNORECASE)


@dataclass(frozen=True, slots=True)
class Lead:
    """A time in front of a line, and the words behind it."""

    said: str
    at: int
    "Seconds as of a film; a wall clock's are sixty times as many."
    parts: int
    "2 for m:ss or hh:mm, 3 for h:mm:ss."
    bracketed: bool
    rest: str
    tail: str = ""
    "All that follows the first time, where `rest` leaves out the end of a range."


def seconds(time: str) -> int:
    """Whole seconds of h:mm:ss, m:ss or :ss, fractions floored."""
    total = 0
    for part in re.split(r"[.,]", time)[0].split(":"):
        total = total * 60 + int(part or 0)
    return total


def written(time: str) -> str:
    """The time as it was written, without fractions."""
    return re.split(r"[.,]", time.strip())[0]


def lead(line: str) -> Lead | None:
    """The time in front of a line, or None; `1:90 2:95` (pressures by cylinder) is none."""
    glued = _GLUED_RANGE.match(line)
    if glued:
        return Lead(glued[1], seconds(glued[1]), glued[1].count(":") + 1, False, "")
    found = _BRACKETED.match(line)
    bracketed = found is not None
    if found is None:
        found = None if _CYLINDERS.match(line) else _BARE.match(line)
    if found is None:
        return None
    time = found[1] or found[2] if bracketed else found[1]
    at = seconds(time)
    rest = _without_label(line[found.end() :], at).strip()
    tail = rest if bracketed else line[found.end(1) :].lstrip(" \t-–—:|").rstrip()
    return Lead(written(time), at, time.count(":") + 1, bracketed, rest, tail)


def _without_label(rest: str, at: int) -> str:
    """The rest without the same time once more in words ("1 minute, 5 seconds"), as copied pages have it."""
    found = _LABEL.match(rest)
    if found is None or not any(found.groups()):
        return rest
    hours, minutes, secs = (int(part or 0) for part in found.groups())
    return rest[found.end() :] if (hours * 60 + minutes) * 60 + secs == at else rest


def is_label(line: str, at: int) -> bool:
    """Whether a line only says the time above it once more in words."""
    return bool(line.strip()) and not _without_label(line, at).strip()


def half_day(found: Lead) -> tuple[str, int, str] | None:
    """Time as written, minutes of the day and words of a `2:05 pm` line; None for another."""
    mark = _HALF_DAY.match(found.rest)
    hour, minute = divmod(found.at, 60)
    if mark is None or not 1 <= hour <= 12:
        return None
    hour = hour % 12 + (12 if mark[1].lower() == "p" else 0)
    return f"{found.said} {mark[1].lower()}m", hour * 60 + minute, found.rest[mark.end() :].strip()
