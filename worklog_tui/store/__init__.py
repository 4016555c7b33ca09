"""The logbook file: one SQLite database, and the only room that knows it."""

from worklog_tui.store import (
    acts,
    comments,
    derived,
    erasing,
    items,
    machines,
    moves,
    pages,
    search,
    sessions,
    spool,
    wordings,
)
from worklog_tui.store.backups import backup
from worklog_tui.store.device import device_of
from worklog_tui.store.files import WAIT, Connection, reading, restore, scour, writing
from worklog_tui.store.refusals import (
    DamagedLogbook,
    FailingDisk,
    LockedOut,
    NewerLogbook,
    NoPlace,
    NoRoom,
    NotALogbook,
    OldAndFixed,
    Refused,
)  # fmt: skip

__all__ = [
    "WAIT", "Connection", "DamagedLogbook", "FailingDisk", "LockedOut", "NewerLogbook", "NoPlace", "NoRoom",
    "NotALogbook", "OldAndFixed", "Refused", "acts", "backup", "comments", "derived", "device_of", "erasing", "items",
    "machines", "moves", "pages", "reading", "restore", "scour", "search", "sessions", "spool", "wordings", "writing",
]  # fmt: skip
