"""What the tests of the screens share."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.screens.bench_in_memory import Bench
from worklog_tui.model import Machine


@pytest.fixture
def bench(tmp_path: Path) -> Bench:
    """A bench with one machine on its list."""
    return Bench(tmp_path / "log.db", cards=[Machine("Band saw", "single-phase motor", uid="m1")])
