"""Grammars that are new are made ready by a process of its own; then loading them takes no time."""

from __future__ import annotations

import random
from datetime import UTC, datetime
from pathlib import Path

from worklog_tui import places
from worklog_tui.bench.desk import Desk
from worklog_tui.bench.grammars_ready import make_ready
from worklog_tui.rulebook import is_kept


def desk(folder: Path, grammars: Path) -> Desk:
    chance = random.Random(1)
    now = datetime(2031, 4, 12, 14, 5, tzinfo=UTC)
    return Desk(
        folder / "log.db", (grammars,), lambda: now, "one", lambda: chance.getrandbits(74), cache=folder / "c"
    )  # fmt: skip


def test_new_grammars_are_kept_for_this_start_and_the_next(tmp_path: Path) -> None:
    here = desk(tmp_path, places.grammars())
    assert here.cache is not None
    assert not is_kept(here.grammars, here.cache)
    make_ready(here)
    assert is_kept(here.grammars, here.cache)
    assert not here.can_read, "they are made ready, not loaded"


def test_grammars_that_cannot_be_made_ready_are_no_harm(tmp_path: Path) -> None:
    wrong = tmp_path / "grammars"
    wrong.mkdir()
    (wrong / "units.toml").write_text("this is no TOML")
    here = desk(tmp_path, wrong)
    make_ready(here)
    assert here.cache is not None
    assert not is_kept(here.grammars, here.cache)
