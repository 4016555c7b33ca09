"""Brings a file to the newest version, one recorded step after the other."""

from __future__ import annotations

import sqlite3
from pathlib import Path
from typing import TYPE_CHECKING

from worklog_tui.store import schema

if TYPE_CHECKING:
    from sqlite_utils import Database
    from sqlite_utils.migrations import Migrations

_NAMES = (
    "m001_kept", "m002_derived", "m003_search", "m004_views", "m005_corrected", "m006_copied_devices", "m007_in_film",
    "m008_erasing", "m009_facts_found",
)  # fmt: skip


def migrate(path: Path, upto: int = schema.VERSION) -> None:
    """Apply the missing steps up to a version; each is one transaction that also sets the version of the file."""
    from sqlite_utils import Database

    connection = sqlite3.connect(path)
    try:
        connection.execute("PRAGMA journal_mode = WAL")
        connection.execute("PRAGMA synchronous = FULL")
        _steps(upto).apply(Database(connection))
    finally:
        connection.close()


def _steps(upto: int) -> Migrations:
    from sqlite_utils.migrations import Migrations

    migrations = Migrations("logbook")
    for number, name in enumerate(_NAMES[:upto], 1):
        _add(migrations, number, name)
    return migrations


def _add(migrations: Migrations, number: int, name: str) -> None:
    @migrations(name=name)
    def step(db: Database) -> None:
        for statement in schema.STEPS[number - 1]:
            db.execute(statement)
        db.execute(f"PRAGMA application_id = {schema.APPLICATION_ID}")
        db.execute(f"PRAGMA user_version = {number}")
