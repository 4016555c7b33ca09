"""What the tests of keeping share. `WORKLOG_ROUNDS=500 WORKLOG_HANG_UPS=100 python -m pytest tests/keeping
tests/bench/test_keeping.py` is the full run; without the variables a short one."""

from __future__ import annotations

import hashlib
import os
import sqlite3
from pathlib import Path

from tests.bench.conftest import clock, desk, saw

ROUNDS = int(os.environ.get("WORKLOG_ROUNDS", "20"))
HANG_UPS = int(os.environ.get("WORKLOG_HANG_UPS", "5"))
ROOT = Path(__file__).parents[2]
__all__ = ["HANG_UPS", "ROOT", "ROUNDS", "clock", "desk", "hashes", "saw"]


def hashes(path: Path) -> dict[str, str]:
    """For each table a hash over all its rows; the file is opened as any tool would open it."""
    connection = sqlite3.connect(f"{path.as_uri()}?mode=ro", uri=True)
    try:
        assert connection.execute("PRAGMA integrity_check").fetchall() == [("ok",)]
        assert connection.execute("PRAGMA foreign_key_check").fetchall() == []
        names = [row[0] for row in connection.execute("SELECT name FROM sqlite_schema WHERE type = 'table'")]
        found = {}
        for name in names:
            rows = sorted(map(repr, connection.execute(f"SELECT * FROM {name}")))
            found[name] = hashlib.sha256("\n".join(rows).encode()).hexdigest()
        return found
    finally:
        connection.close()
