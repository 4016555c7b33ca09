"""The shipped fault files, loaded once."""

from __future__ import annotations

import pytest

from worklog_tui import places
from worklog_tui.rulebook.faults import FaultBook, load_faults


@pytest.fixture(scope="session")
def faults() -> FaultBook:
    return load_faults([places.grammars()])
