"""A clip of the camera: no film yet, only when the camera ran and what its counter showed."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime

from worklog_tui.model.moments import Instant


@dataclass(frozen=True, slots=True)
class Clip:
    """One stretch that the camera ran, within one session."""

    uid: str
    session: str
    start: Instant
    end: str = ""
    "ISO 8601 in UTC with Z; empty while the camera runs."
    offset: int = 0
    "Seconds that the camera's counter is ahead of the clip's own time."

    def second(self, moment: datetime) -> int:
        """What the camera's counter shows at a moment, in whole seconds, never below nought."""
        return max(int((moment - self.start.moment()).total_seconds()) + self.offset, 0)
