"""What stands in each place, from one look at the whole log: for the screen, and for who wants it as plain text."""

from __future__ import annotations

from datetime import datetime
from typing import TYPE_CHECKING

from worklog_tui.widgets.fault_finding import FaultFinding
from worklog_tui.widgets.items import OpenItems
from worklog_tui.widgets.last_time import LastTime
from worklog_tui.widgets.machine_card import MachineCard
from worklog_tui.widgets.next_step import NextStep
from worklog_tui.widgets.readings import Readings
from worklog_tui.widgets.viewers import ViewersRows

if TYPE_CHECKING:
    from worklog_tui.bench.outlook import Outlook
    from worklog_tui.widgets.rows import Rows


def fill(found: Rows, known: Outlook, now: datetime) -> None:
    """Show in the list of a place what is known; the timeline is not worked out from the outlook."""
    if isinstance(found, OpenItems):
        found.show_items(known.items, known.noticed)
    elif isinstance(found, NextStep):
        found.show_advice(known.advice)
    elif isinstance(found, LastTime):
        found.show_recap(known.recap, known.last_words, known.advice, now, known.before, known.waits)
    elif isinstance(found, Readings):
        found.show_series(known.series)
    elif isinstance(found, FaultFinding):
        found.show_advice(known.advice, known.odd)
    elif isinstance(found, ViewersRows):
        if known.viewers is not None:
            found.show_viewers(known.viewers)
    elif isinstance(found, MachineCard):
        found.show_card(known.machine, known.told)
