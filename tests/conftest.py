"""What every test may use: the shipped rulebook, read once."""

from __future__ import annotations

import os
from pathlib import Path

import pytest

from worklog_tui import places
from worklog_tui.rulebook import Rulebook, load

ROOT = Path(__file__).resolve().parents[1]


@pytest.fixture(scope="session")
def book() -> Rulebook:
    """The shipped grammars."""
    return load([places.grammars()])


@pytest.fixture(scope="session")
def open_data() -> Path:
    """The folder of published data, named by WORKLOG_OPEN_DATA; its tests skip where it is absent."""
    folder = Path(os.environ.get("WORKLOG_OPEN_DATA", ROOT.parent / "shared" / "reference" / "open-data"))
    if not folder.is_dir():
        pytest.skip(f"no open data at {folder.name}: set WORKLOG_OPEN_DATA to its folder")
    return folder
