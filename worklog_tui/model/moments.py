"""Moments: instants of the wall clock, and times within a session."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import UTC, datetime, timedelta, timezone


@dataclass(frozen=True, slots=True)
class Instant:
    """A moment of the wall clock in UTC, with the place's offset and how it is known."""

    utc: str
    "ISO 8601 with seconds and Z, such as 2031-04-12T12:05:00Z."
    zone: str = ""
    "Name of the zone, such as Europe/London; empty when only the offset is known."
    offset: int = 0
    "Minutes east of UTC at that moment and place."
    known: str = "clock"
    "clock (read off the computer), header (written in the session) or assumed."

    @classmethod
    def of(cls, moment: datetime, zone: str = "", known: str = "clock") -> Instant:
        """The instant of an aware datetime; a ValueError for a naive one."""
        shift = moment.utcoffset()
        if shift is None:
            raise ValueError("a moment needs its offset from UTC")
        utc = moment.astimezone(UTC).replace(microsecond=0)
        return cls(utc.strftime("%Y-%m-%dT%H:%M:%SZ"), zone, int(shift.total_seconds() // 60), known)

    def moment(self) -> datetime:
        """The instant as an aware datetime at its own place."""
        return datetime.fromisoformat(self.utc).astimezone(timezone(timedelta(minutes=self.offset)))


def clock(seconds: int) -> str:
    """Session or film time as it is written: 65 -> 1:05, 3725 -> 1:02:05."""
    hours, rest = divmod(max(seconds, 0), 3600)
    minutes, secs = divmod(rest, 60)
    return f"{hours}:{minutes:02}:{secs:02}" if hours else f"{minutes}:{secs:02}"
