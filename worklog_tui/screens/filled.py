"""What stands in each place, from one look at the whole log: for the screen, and for who wants it as plain text."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from datetime import datetime
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from worklog_tui.bench.outlook import Outlook
    from worklog_tui.widgets.fault_finding import FaultFinding
    from worklog_tui.widgets.items import OpenItems
    from worklog_tui.widgets.last_time import LastTime
    from worklog_tui.widgets.machine_card import MachineCard
    from worklog_tui.widgets.next_step import NextStep
    from worklog_tui.widgets.readings import Readings
    from worklog_tui.widgets.rows import Rows
    from worklog_tui.widgets.viewers import ViewersRows


def fill(place: str, found: Rows, known: Outlook, now: datetime) -> None:
    """Show in the list of a place what is known; the timeline is not worked out from the outlook."""
    if place in _FILLS:
        _FILLS[place](found, known, now)


def _items(found: OpenItems, known: Outlook, _: datetime) -> None:
    found.show_items(known.items, known.noticed)


def _step(found: NextStep, known: Outlook, _: datetime) -> None:
    found.show_advice(known.advice)


def _last(found: LastTime, known: Outlook, now: datetime) -> None:
    found.show_recap(known.recap, known.last_words, known.advice, now, known.before, known.waits)


def _readings(found: Readings, known: Outlook, _: datetime) -> None:
    found.show_series(known.series)


def _faults(found: FaultFinding, known: Outlook, _: datetime) -> None:
    found.show_advice(known.advice, known.odd)


def _viewers(found: ViewersRows, known: Outlook, _: datetime) -> None:
    if known.viewers is not None:
        found.show_viewers(known.viewers)


def _card(found: MachineCard, known: Outlook, _: datetime) -> None:
    found.show_card(known.machine, known.told)


_FILLS: Mapping[str, Callable[[Any, Outlook, datetime], None]] = {
    "items": _items, "step": _step, "last": _last, "readings": _readings, "faults": _faults, "viewers": _viewers,
    "card": _card,
}  # fmt: skip
"By place; the lists of places that were never asked for are not loaded for it."
