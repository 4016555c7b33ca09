"""One wait: what was given some time, and whether it is ready."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime

from worklog_tui.model import Instant, Place, Reading

SHORT, LONG_AGO = 3 * 3600.0, 12 * 3600.0
"""Seconds: what is given so little time is looked at in the same session, and is no longer waited for so long after it
was ready, though nobody said so (judgement)."""


@dataclass(frozen=True, slots=True)
class Wait:
    """One thing that is waited for."""

    reading: Reading
    "The time that it was given."
    place: Place
    told: str
    least: float
    "Seconds that it was given, at least."
    most: float
    begun: Instant | None
    "None when the time of the note is not known, as in captions of a finished film."
    ready: datetime | None
    "When the least of that time is over."
    ended: Place | None = None
    "Where the talk went on about it; None while it is waited for."
    took: float | None = None
    "Seconds that it really took: as was said, else between the two notes where both times are known."

    def is_ready(self, now: datetime) -> bool:
        """Whether the time is over and nothing was heard of it yet."""
        return self.ended is None and self.ready is not None and self.ready <= now

    def is_on(self, now: datetime) -> bool:
        """Whether it is waited for still; minutes of a session that is long over, or of a film, are not."""
        if self.ended is not None or self.most > SHORT:
            return self.ended is None
        return self.ready is not None and (now - self.ready).total_seconds() < LONG_AGO
