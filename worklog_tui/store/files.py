"""The logbook file: opened to read, or opened, written, checkpointed and closed under one lock."""

from __future__ import annotations

import os
import sqlite3
import time
from collections.abc import Iterator
from contextlib import closing, contextmanager, suppress
from pathlib import Path

from worklog_tui.store import backups, migrations, refusals, schema

Connection = sqlite3.Connection
"An open logbook; only this room looks inside."

WAIT = 2.0
"Seconds to wait for the lock before a note goes to the spool."
_READ_PATIENCE = 5.0
_LEFT_HALF_WRITTEN = -1  # a program that died while making the file: only a writer can roll that back


@contextmanager
def reading(path: Path) -> Iterator[Connection]:
    """One unchanging view of the logbook, which cannot be written through it; an absent one reads as empty."""
    with _told(path):
        connection = _open_to_read(path)
        try:
            connection.execute("BEGIN")
            yield connection
        finally:
            connection.close()


@contextmanager
def writing(path: Path, wait: float = WAIT) -> Iterator[Connection]:
    """One transaction: what the block did is on the disk when it ends, or nothing of it if it raises.

    Raises LockedOut when the lock was not had in `wait` seconds, and the other refusals.
    """
    deadline = time.monotonic() + wait
    with _told(path), _lock(path, wait):
        connection = _open_to_write(path, max(deadline - time.monotonic(), 0.05))
        try:
            connection.execute("BEGIN IMMEDIATE")
            yield connection
            connection.execute("COMMIT")
            with suppress(sqlite3.Error):  # what was committed is safe in the log; the next writer copies it over
                connection.execute("PRAGMA wal_checkpoint(PASSIVE)")
        finally:
            connection.close()  # rolls back what was not committed


def restore(path: Path, backup_file: Path, aside: Path, wait: float = WAIT) -> None:
    """Make the logbook what a backup is, after copying it to `aside`. Refuses a file that is no whole logbook."""
    with _told(backup_file):
        with closing(_connect(backup_file, _read_mode(backup_file), _READ_PATIENCE)) as connection:
            if _version(connection, backup_file) == 0:
                raise refusals.NotALogbook(backup_file)
        backups.check_whole(backup_file)
    with _told(path), _lock(path, wait):
        if _holds_something(path):
            backups.backup(path, aside)
        backups.put_back(backup_file, path)
        _open_to_write(path, wait).close()


def scour(path: Path, wait: float = WAIT) -> None:
    """Write the file anew without what was deleted from it: until then unused parts of it hold erased words."""
    with _told(path), _lock(path, wait), closing(_open_to_write(path, wait)) as connection:
        connection.execute("INSERT INTO note_words (note_words) VALUES ('optimize')")
        connection.execute("VACUUM")
        connection.execute("PRAGMA wal_checkpoint(TRUNCATE)")


def _connect(path: Path, mode: str, timeout: float) -> Connection:
    connection = sqlite3.connect(
        f"{path.resolve().as_uri()}?{mode}", uri=True, timeout=timeout, isolation_level=None, check_same_thread=True
    )
    connection.row_factory = sqlite3.Row
    return connection


def _open_to_write(path: Path, timeout: float) -> Connection:
    """Under the lock: the file as it is if it is up to date, else made, or migrated after a copy of it was kept."""
    connection = _connect(path, "mode=rw", timeout) if _holds_something(path) else None
    version = _version(connection, path) if connection else 0
    if connection is None or version < schema.VERSION:
        if connection:
            connection.close()
        if version:
            backups.backup(path, path.with_name(f"{path.name}.version-{version}"))
        migrations.migrate(path)
        connection = _connect(path, "mode=rw", timeout)
    connection.execute("PRAGMA journal_mode = WAL")
    connection.execute("PRAGMA synchronous = FULL")
    connection.execute("PRAGMA foreign_keys = ON")
    return connection


def _open_to_read(path: Path) -> Connection:
    if not _holds_something(path):
        return _empty()
    connection = _connect(path, _read_mode(path), _READ_PATIENCE)
    try:
        version = _version(connection, path)
    except sqlite3.OperationalError as fault:
        if fault.sqlite_errorcode & 0xFF != sqlite3.SQLITE_READONLY:
            raise
        version = _LEFT_HALF_WRITTEN
    if version == schema.VERSION:
        return connection
    connection.close()
    if version == 0:
        return _empty()
    try:
        with _lock(path, WAIT):
            _open_to_write(path, WAIT).close()
    except refusals.NoPlace as fault:
        raise refusals.OldAndFixed(path) from fault
    return _connect(path, _read_mode(path), _READ_PATIENCE)


def _holds_something(path: Path) -> bool:
    return path.exists() and path.stat().st_size > 0


def _read_mode(path: Path) -> str:
    """A file on a medium that cannot be written, with no log beside it, does not change: it is read as it lies."""
    writable = os.access(path.parent, os.W_OK, effective_ids=os.access in os.supports_effective_ids)
    return "mode=ro" if writable or path.with_name(path.name + "-wal").exists() else "mode=ro&immutable=1"


def _empty() -> Connection:
    connection = sqlite3.connect(":memory:", isolation_level=None)
    connection.row_factory = sqlite3.Row
    for step in schema.STEPS:
        for statement in step:
            connection.execute(statement)
    connection.execute("PRAGMA query_only = ON")
    return connection


def _version(connection: Connection, path: Path) -> int:
    """The version of an open file, 0 for an unfinished one; closes and refuses what is newer or not ours."""
    try:
        version = int(connection.execute("PRAGMA user_version").fetchone()[0])
        application = int(connection.execute("PRAGMA application_id").fetchone()[0])
        if application == schema.APPLICATION_ID:
            if version > schema.VERSION:
                raise refusals.NewerLogbook(path, version, schema.VERSION)
            return version
        tables = {row[0] for row in connection.execute("SELECT name FROM sqlite_schema WHERE type = 'table'")}
        if application or version or tables - {"_sqlite_migrations", "sqlite_sequence"}:
            raise refusals.NotALogbook(path)
        return 0
    except BaseException:
        connection.close()
        raise


@contextmanager
def _lock(path: Path, wait: float) -> Iterator[None]:
    from filelock import FileLock, Timeout

    try:
        path.parent.mkdir(parents=True, exist_ok=True)
        lock = FileLock(path.with_name(path.name + ".lock"), timeout=wait, poll_interval=0.01)
        lock.acquire()
    except Timeout as fault:
        raise refusals.LockedOut(path) from fault
    except OSError as fault:
        raise refusals.of_system(fault, path) from fault
    try:
        yield
    finally:
        lock.release()


@contextmanager
def _told(path: Path) -> Iterator[None]:
    """Faults of the file become refusals; mistakes of the program stay what they are."""
    if path.is_dir():
        raise refusals.NotALogbook(path)
    try:
        yield
    except sqlite3.DatabaseError as fault:
        refusal = refusals.of_database(fault, path)
        if refusal is None:
            raise
        raise refusal from fault
