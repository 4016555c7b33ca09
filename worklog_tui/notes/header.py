"""The header line of a session: `session 2031-04-12 14:05`, with an offset from UTC when one is given.

A first line that is nothing but a day is one too: `2031-04-12`, `# Sat 12 April 2031`, `date: 2031-04-12 14:05`.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta, timezone

from worklog_tui.model.moments import Instant

_HEADER = re.compile(
    r"\s*session:?\s+(\d{4})-(\d{1,2})-(\d{1,2})(?:[T ,]+(\d{1,2})[:.](\d{2})(?::(\d{2}))?)?"
    r"(?:\s*(Z|UTC|[+-]\d{2}:?\d{2})(?!\S))?(?:\s+(\S.*?))?\s*\Z",
    re.IGNORECASE | re.ASCII,
)
_MONTHS = "jan feb mar apr may jun jul aug sep oct nov dec".split()
_NAMED = re.compile(
    r"(?:(\d{1,2})(?:st|nd|rd|th)?\s+([a-z]{3,9})\.?|([a-z]{3,9})\.?\s+(\d{1,2})(?:st|nd|rd|th)?),?\s+(\d{4})(?!\d)",
    re.ASCII | re.I,
)
_DAY_ALONE = re.compile(
    r"[\s#*=-]*(?:(?:date|day|on)\b:?\s*)?(?:(?:mon|tue|wed|thu|fri|sat|sun)[a-z]*\.?,?\s+)?"
    r"(\d{4}-\d{1,2}-\d{1,2}(?:[T ,]+\d{1,2}[:.]\d{2}(?::\d{2})?)?(?:\s*(?:Z|UTC|[+-]\d{2}:?\d{2}))?)[\s:.#*=-]*\Z",
    re.IGNORECASE | re.ASCII,
)
_ALIKE = re.compile(r"\s*session:?\s+\d{1,4}[-/.]\d", re.IGNORECASE | re.ASCII)


LONGEST_DAY = 60
"Characters of a line that is nothing but a day."


@dataclass(frozen=True, slots=True)
class Header:
    """What a header line gives."""

    start: datetime
    text: str
    timed: bool
    "False when only the day was written; the start is then midnight."
    rest: str = ""
    "Words behind the date and time."

    def instant(self) -> Instant:
        """The start as an instant known from the header; offset 0 is assumed where none was written."""
        return Instant.of(self.start, known="header")


def looks_like_header(line: str) -> bool:
    """Whether a line was meant as a header, readable or not."""
    return bool(_ALIKE.match(line)) or _day_alone(line) is not None


def _day_alone(line: str) -> str | None:
    """The day, in figures, of a line that is nothing else; None for another line."""
    if len(line) > LONGEST_DAY:
        return None
    found = _DAY_ALONE.match(_NAMED.sub(_in_figures, line))
    return found[1] if found is not None else None


def _in_figures(named: re.Match[str]) -> str:
    """`12 April 2031` as `2031-4-12`; what names no month stays."""
    month = (named[2] or named[3]).lower()[:3]
    return f"{named[5]}-{_MONTHS.index(month) + 1}-{named[1] or named[4]}" if month in _MONTHS else named[0]


def names_offset(text: str) -> bool:
    """Whether the date and time of a header end in an offset from UTC."""
    found = _HEADER.match(f"session {text}")
    return found is not None and found[7] is not None


def read_header(line: str) -> Header | None:
    """The header that a line is, or None for another line or a day that no calendar has."""
    alone = _day_alone(line)
    line = f"session {alone}" if alone is not None else line
    found = _HEADER.match(line)
    if found is None:
        return None
    year, month, day = (int(found[n]) for n in (1, 2, 3))
    try:
        hour, minute, second = (int(found[n] or 0) for n in (4, 5, 6))
        start = datetime(year, month, day, hour, minute, second, tzinfo=_zone(found[7]))
        start.astimezone(UTC)
    except (ValueError, OverflowError):
        return None
    end = max(found.end(n) for n in (3, 5, 6, 7))
    text = " ".join(line[found.start(1) : end].split())
    return Header(start, text, found[4] is not None, found[8] or "")


def _zone(offset: str | None) -> timezone:
    if offset is None or offset.upper() in ("Z", "UTC"):
        return UTC
    digits = offset[1:].replace(":", "")
    shift = timedelta(hours=int(digits[:2]), minutes=int(digits[2:]))
    return timezone(shift if offset[0] == "+" else -shift)
