"""Why a logbook cannot be read or written now: each refusal is one plain sentence that says what to do."""

from __future__ import annotations

import errno
import sqlite3
from pathlib import Path


class Refused(Exception):
    """The logbook was left alone; the message says why, and what to do about it."""


class NewerLogbook(Refused):
    """The file was written by a newer version of this program."""

    def __init__(self, path: Path, version: int, ours: int) -> None:
        super().__init__(
            f"{path} was written by a newer version of this program (file version {version}, this one knows {ours}): "
            "install the newer program to open it; the file was left as it is."
        )


class NotALogbook(Refused):
    """The file is something else."""

    def __init__(self, path: Path) -> None:
        super().__init__(f"{path} is not a logbook of this program: name another file; this one was left as it is.")


class DamagedLogbook(Refused):
    """The file is a database, but its pages do not fit together."""

    def __init__(self, path: Path) -> None:
        super().__init__(
            f"{path} is damaged and was left as it is: put a backup in its place, and keep this file so that what it "
            "still holds can be taken out."
        )


class NoPlace(Refused):
    """Nothing can be written there."""

    def __init__(self, path: Path) -> None:
        super().__init__(
            f"Nothing can be written at {path}: give yourself the right to write there, or name a logbook elsewhere."
        )


class OldAndFixed(Refused):
    """The file is of an older version, and lies where it cannot be brought up to date."""

    def __init__(self, path: Path) -> None:
        super().__init__(
            f"{path} is of an older version and cannot be brought up to date where it lies: copy it to a place that "
            "can be written, and open the copy."
        )


class NoPlaceFor(Refused):
    """A copy cannot be written where it was to go; the logbook is as it was."""

    def __init__(self, path: Path) -> None:
        super().__init__(f"{path} cannot be written: name a folder that is there and that you may write to.")


class NoRoom(Refused):
    """The disk is full."""

    def __init__(self, path: Path) -> None:
        super().__init__(
            f"There is no room left on the disk of {path}: the last entry was not kept; make room, then enter it again."
        )


class LockedOut(Refused):
    """Another window or program was writing all the time."""

    def __init__(self, path: Path) -> None:
        super().__init__(f"Another program is still writing to {path}: try again when it has finished.")


class FailingDisk(Refused):
    """The disk did not take or give the data."""

    def __init__(self, path: Path) -> None:
        super().__init__(
            f"The disk of {path} reports a fault: the last entry was not kept; check the disk, then enter it again."
        )


_BY_CODE: dict[int, type[NotALogbook | DamagedLogbook | NoPlace | NoRoom | LockedOut | FailingDisk]] = {
    sqlite3.SQLITE_FULL: NoRoom,
    sqlite3.SQLITE_READONLY: NoPlace,
    sqlite3.SQLITE_CANTOPEN: NoPlace,
    sqlite3.SQLITE_PERM: NoPlace,
    sqlite3.SQLITE_BUSY: LockedOut,
    sqlite3.SQLITE_CORRUPT: DamagedLogbook,
    sqlite3.SQLITE_NOTADB: NotALogbook,
    sqlite3.SQLITE_IOERR: FailingDisk,
}


def of_database(fault: sqlite3.DatabaseError, path: Path) -> Refused | None:
    """The refusal for a fault that SQLite reports; None when it is a mistake of the program."""
    refusal = _BY_CODE.get(getattr(fault, "sqlite_errorcode", 0) & 0xFF)
    return refusal(path) if refusal else None


def of_system(fault: OSError, path: Path) -> Refused:
    """The refusal for a fault of the file system."""
    if fault.errno in (errno.ENOSPC, errno.EDQUOT):
        return NoRoom(path)
    return FailingDisk(path) if fault.errno == errno.EIO else NoPlace(path)
