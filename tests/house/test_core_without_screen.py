"""The core works without a screen, and heavy parts load only where they are used."""

from __future__ import annotations

import importlib.util
import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[2]
CORE = ("model", "places", "rulebook", "trade", "notes", "extract", "logbook", "diagnosis", "reports", "store", "bench")
SCREEN = ("textual", "rich")
HEAVY = ("pint", "sqlite_utils", "textual", "rich")

LIST_LOADED = "import sys; print(*sorted({name.split('.')[0] for name in sys.modules}))"
IMPORT_ALL = """
import importlib, pkgutil
room = importlib.import_module('worklog_tui.{room}')
for part in pkgutil.walk_packages(getattr(room, '__path__', []), room.__name__ + '.'):
    importlib.import_module(part.name)
"""


def run(*arguments: str) -> str:
    """What a fresh interpreter prints, run in the project's folder."""
    done = subprocess.run(
        [sys.executable, *arguments], cwd=ROOT, capture_output=True, text=True, timeout=60, check=False
    )
    assert done.returncode == 0, done.stderr
    return done.stdout + done.stderr


@pytest.mark.parametrize("room", CORE)
def test_a_room_of_the_core_loads_no_screen(room: str) -> None:
    loaded = run("-c", IMPORT_ALL.format(room=room) + LIST_LOADED).split()
    assert "worklog_tui" in loaded
    assert not set(loaded) & set(SCREEN), f"worklog_tui.{room} draws in {set(loaded) & set(SCREEN)}"


def test_help_loads_nothing_heavy() -> None:
    if importlib.util.find_spec("worklog_tui.cli") is None:
        pytest.skip("there is no worklog_tui.cli")
    told = run("-X", "importtime", "-m", "worklog_tui", "--help")
    loaded = {
        line.rsplit("|", 1)[1].strip().split(".")[0] for line in told.splitlines() if line.startswith("import time:")
    }
    assert "argparse" in loaded or "click" in loaded
    assert not loaded & set(HEAVY), f"--help loads {sorted(loaded & set(HEAVY))}"
