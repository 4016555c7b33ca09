"""Backing the logbook up and putting a backup back, while it is in use."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

from worklog_tui import store
from worklog_tui.bench.taking_in import pen

if TYPE_CHECKING:
    from worklog_tui.bench.desk import Desk


def back_up(desk: Desk, to: Path | None = None) -> Path:
    """Copy the whole logbook, with the notes that wait, to a file; by default beside it and named by the moment."""
    target = to or _dated(desk, "backup")
    with pen(desk):
        pass
    store.backup(desk.logbook, target)
    return target


def put_back(desk: Desk, backup: Path) -> Path:
    """Make the logbook what a backup is; gives the file to which the logbook as it was has been copied.

    Raises the refusals of the store: a file that is no whole logbook, or of a newer version, changes nothing.
    """
    aside = _dated(desk, "before")
    store.restore(desk.logbook, backup, aside, desk.patience)
    return aside


def _dated(desk: Desk, word: str) -> Path:
    return desk.logbook.with_name(f"{desk.logbook.stem}-{word}-{desk.now():%Y-%m-%d-%H%M%S}{desk.logbook.suffix}")
