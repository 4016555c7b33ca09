"""What every test may use: the shipped rulebook, read once, and a place for caches of this run."""

from __future__ import annotations

import os
import tempfile
from pathlib import Path

import pytest

from worklog_tui import places
from worklog_tui.rulebook import Rulebook, load

ROOT = Path(__file__).resolve().parents[1]


def pytest_configure(config: pytest.Config) -> None:
    """Caches go to a folder of this run that all its processes share: the grammars are compiled once, and nothing is
    taken from a cache of the person who tests, or left in it.
    """
    if not hasattr(config, "workerinput"):  # a worker of a parallel run has the folder of the run
        folder = tempfile.TemporaryDirectory(prefix="worklog-caches-", ignore_cleanup_errors=True)
        config.add_cleanup(folder.cleanup)
        os.environ["XDG_CACHE_HOME"] = folder.name


@pytest.fixture(scope="session")
def book() -> Rulebook:
    """The shipped grammars."""
    return load([places.grammars()], places.cache())


@pytest.fixture(scope="session")
def open_data() -> Path:
    """The folder of published data, named by WORKLOG_OPEN_DATA; its tests skip where it is absent."""
    folder = Path(os.environ.get("WORKLOG_OPEN_DATA", ROOT.parent / "shared" / "reference" / "open-data"))
    if not folder.is_dir():
        pytest.skip(f"no open data at {folder.name}: set WORKLOG_OPEN_DATA to its folder")
    return folder
