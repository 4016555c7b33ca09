"""Whole copies of the logbook, out of it and back in, also while it is in use (SQLite's backup interface)."""

from __future__ import annotations

import os
import sqlite3
from contextlib import closing
from pathlib import Path

from worklog_tui.store import refusals


def backup(path: Path, to: Path) -> None:
    """Copy the logbook to a file; what stood there before is replaced once the copy is whole."""
    if not to.parent.is_dir() or not os.access(to.parent, os.W_OK):
        raise refusals.NoPlaceFor(to)
    part = to.with_name(to.name + ".part")
    part.unlink(missing_ok=True)
    with closing(_open(path)) as source, closing(sqlite3.connect(part)) as copy:
        source.backup(copy)
        copy.execute("PRAGMA journal_mode = DELETE")
    part.replace(to)


def put_back(backup_file: Path, path: Path) -> None:
    """Make the logbook what the backup is, in one transaction; the caller holds the lock and has checked both files."""
    with closing(_open(backup_file)) as source, closing(sqlite3.connect(path)) as logbook:
        logbook.execute("PRAGMA synchronous = FULL")
        source.backup(logbook)
        logbook.execute("PRAGMA journal_mode = WAL")


def check_whole(path: Path) -> None:
    """Read a file from end to end; raises DamagedLogbook."""
    with closing(_open(path)) as connection:
        if [row[0] for row in connection.execute("PRAGMA integrity_check")] != ["ok"]:
            raise refusals.DamagedLogbook(path)


def _open(path: Path) -> sqlite3.Connection:
    return sqlite3.connect(f"{path.resolve().as_uri()}?mode=ro", uri=True)
