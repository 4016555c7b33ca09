"""The logbook file: one SQLite database, and the only room that knows it."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
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
        NoPlaceFor,
        NoRoom,
        NotALogbook,
        OldAndFixed,
        Refused,
    )
else:
    _FILES = {
        "backups": "backup",
        "device": "device_of",
        "files": "WAIT Connection reading restore scour writing",
        "refusals": "DamagedLogbook FailingDisk LockedOut NewerLogbook NoPlace NoPlaceFor NoRoom NotALogbook"
        " OldAndFixed Refused",
    }
    _FILE_OF = {name: file for file, names in _FILES.items() for name in names.split()}

    def __getattr__(name: str) -> object:
        """A part of this room is loaded when it is first asked for: the screen is painted before that."""
        from importlib import import_module

        if name not in __all__:
            raise AttributeError(name)
        module = import_module(f"{__name__}.{_FILE_OF.get(name, name)}")
        found = getattr(module, name) if name in _FILE_OF else module
        globals()[name] = found
        return found


__all__ = [
    "WAIT", "Connection", "DamagedLogbook", "FailingDisk", "LockedOut", "NewerLogbook", "NoPlace", "NoPlaceFor",
    "NoRoom", "NotALogbook", "OldAndFixed", "Refused", "acts", "backup", "comments", "derived", "device_of",
    "erasing", "items", "machines", "moves", "pages", "reading", "restore", "scour", "search", "sessions", "spool",
    "wordings", "writing",
]  # fmt: skip
