"""What is waited for, as plain text and as JSON."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import datetime
from typing import Any

from worklog_tui.logbook.wait import Wait
from worklog_tui.reports.json_out import where as place
from worklog_tui.reports.lines import wrapped
from worklog_tui.reports.sentence import amount
from worklog_tui.reports.when import where


def waits_text(found: Sequence[tuple[str, Wait]], now: datetime, width: int) -> str:
    """One line a wait: whether it is ready, and where it was said."""
    rows: list[str] = []
    for machine, wait in found:
        given = amount(wait.reading.value, wait.reading.unit)
        said = f"{machine}: {_state(wait, now)} ({given}; {where(wait.place)}: “{wait.told}”)"
        rows += wrapped(said, width, "", "    ")
    return "\n".join(rows) or "Nothing is waited for."


def _state(wait: Wait, now: datetime) -> str:
    if wait.ended is not None:
        return f"over after {spell(wait.took)}" if wait.took is not None else "over"
    if not wait.is_on(now):
        return "over, and nothing more was said of it"
    if wait.ready is None:
        return "begun, it is not known when"
    if wait.is_ready(now):
        return f"ready since {spell((now - wait.ready).total_seconds())}"
    return f"ready in {spell((wait.ready - now).total_seconds())}"


def spell(seconds: float) -> str:
    """A time in its two largest parts, such as 1 h 20 min."""
    minutes = max(round(seconds / 60), 0)
    days, minutes = divmod(minutes, 1440)
    hours, minutes = divmod(minutes, 60)
    parts = [(days, "day" if days == 1 else "days"), (hours, "h"), (minutes, "min")]
    said = [f"{number} {unit}" for number, unit in parts if number]
    return " ".join(said[:2]) or "0 min"


def waits_json(found: Sequence[tuple[str, Wait]], now: datetime) -> list[dict[str, Any]]:
    """The same as JSON data; times in seconds."""
    return [
        {
            "machine": machine, "at": place(wait.place), "told": wait.told, "least": wait.least, "most": wait.most,
            "ready_at": wait.ready.isoformat() if wait.ready else None, "ready": wait.is_ready(now),
            "ended_at": place(wait.ended), "took": wait.took,
        }
        for machine, wait in found
    ]  # fmt: skip
