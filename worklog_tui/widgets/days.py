"""Days in words."""

from __future__ import annotations

from datetime import datetime
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from worklog_tui.model import Instant

_DAYS = ("Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday")
_MONTHS = (
    "January", "February", "March", "April", "May", "June", "July", "August", "September", "October", "November",
    "December",
)  # fmt: skip


def weekday(moment: datetime) -> str:
    """Such as `Thursday`."""
    return _DAYS[moment.weekday()]


def month(moment: datetime) -> str:
    """Such as `April`."""
    return _MONTHS[moment.month - 1]


def day(instant: Instant) -> str:
    """Such as `Saturday 12 April 2031`."""
    moment = instant.moment()
    return f"{_DAYS[moment.weekday()]} {moment.day} {_MONTHS[moment.month - 1]} {moment.year}"
