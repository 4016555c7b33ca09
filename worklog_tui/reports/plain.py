"""The log of a machine as plain text for a terminal: calm, short, in trade words."""

from __future__ import annotations

from collections.abc import Sequence

from worklog_tui.logbook.readings import readings
from worklog_tui.logbook.recap import recap
from worklog_tui.logbook.timeline import timeline
from worklog_tui.model import Advice, CommentReading, History, OpenItem
from worklog_tui.reports.plain_comments import comments_text
from worklog_tui.reports.plain_items import items_text
from worklog_tui.reports.plain_readings import readings_text
from worklog_tui.reports.plain_recap import recap_text
from worklog_tui.reports.plain_steps import steps_text
from worklog_tui.reports.plain_timeline import timeline_text


def whole_log(
    history: History, items: Sequence[OpenItem], advice: Advice, comments: Sequence[CommentReading], width: int
) -> str:
    """Everything of a machine, one part below the other."""
    parts = [
        f"Repair log: {history.machine.name}",
        timeline_text(timeline(history), width),
        readings_text(readings(history), width),
        items_text(items, width, history),
        recap_text(recap(history, items), advice, width),
        steps_text(advice, width),
    ]
    if comments:
        parts.append(comments_text(comments, width))
    return "\n\n".join(parts)
