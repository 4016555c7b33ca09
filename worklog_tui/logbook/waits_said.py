"""Until when something was left to itself, where the talk names no length of time: overnight, till Thursday."""

from __future__ import annotations

import re
from datetime import datetime, timedelta

from worklog_tui.logbook.trade_words import trade_words
from worklog_tui.model import Reading, Work

MORNING = 8
"Hour of the day from which a thing that was left overnight, or till a day, is ready (judgement)."
DAYS = ("monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday")
_UNTIL = re.compile(rf"\b(?:un)?till? (?:next )?(tomorrow|{'|'.join(DAYS)})\b", re.IGNORECASE)
_WEEKEND = re.compile(r"\bover the weekend\b", re.IGNORECASE)


def left_until(words: str, said: datetime) -> datetime | None:
    """The morning until which something is left, by words that were said at a moment; None when they name none."""
    named = _UNTIL.search(words)
    if named is not None and named[1].casefold() != "tomorrow":
        ahead = (DAYS.index(named[1].casefold()) - said.weekday()) % 7 or 7
    elif _WEEKEND.search(words) is not None:
        ahead = 7 - said.weekday()
    elif named is not None or trade_words().overnight.search(words) is not None:
        ahead = 1
    else:
        return None
    return (said + timedelta(days=ahead)).replace(hour=MORNING, minute=0, second=0, microsecond=0)


def time_given(work: Work, words: str, said: datetime) -> Reading | None:
    """The time that something was given which was put to soak or on charge, as a planned reading; None when none."""
    until = left_until(words, said) if work.action in trade_words().left_to_work else None
    if until is None:
        return None
    hours = max(round((until - said).total_seconds() / 3600), 1)
    return Reading(
        main=work.main, evidence=work.evidence, quote=work.quote, quantity="duration", value=float(hours), unit="h",
        subject=work.part, name=work.name, role="planned",
    )  # fmt: skip
