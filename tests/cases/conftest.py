"""The labelled cases, and what the program reads from them."""

from __future__ import annotations

import json
import os
from pathlib import Path
from typing import Any

import pytest

from worklog_tui import places
from worklog_tui.bench.card import read_card
from worklog_tui.bench.extract_files import Extraction, extract
from worklog_tui.reports.json_out import extraction
from worklog_tui.rulebook import Rulebook
from worklog_tui.rulebook.faults import load_faults

OTHERS = os.environ.get("WORKLOG_CASES", "")
"Another folder of labelled cases, in place of ours."
CASES = sorted(
    p.parent for p in (Path(OTHERS).glob("*/gold.json") if OTHERS else Path(__file__).parent.glob("*/*/gold.json"))
)
UNLOOKED_AT = frozenset({"unseen", "blind"})
"Folders of which only the sums are ever looked at."


def gold_of(case: Path) -> dict[str, Any]:
    """The labels of a case."""
    return dict(json.loads((case / "gold.json").read_text(encoding="utf-8")))


def lines_of(case: Path) -> dict[tuple[int, str], int]:
    """The place of each note in its session, by session number and time as written."""
    return {
        (number, text.split()[0].strip("[]")): place
        for number, path in enumerate(sorted(case.glob("session-*.txt")), 1)
        for place, text in enumerate(path.read_text(encoding="utf-8").splitlines())
    }


@pytest.fixture(scope="session")
def extracted(book: Rulebook) -> dict[str, Extraction]:
    """The log of every case, by its name."""
    faults = load_faults([places.grammars()])
    found = {}
    for case in CASES:
        card, warnings = read_card(case / "machine.toml")
        assert not warnings
        written = case / "comments.txt"
        sessions = sorted(case.glob("session-*.txt"))
        found[case.name] = extract(book, faults, card, sessions, written if written.exists() else None)
    return found


@pytest.fixture(scope="session")
def read(extracted: dict[str, Extraction]) -> dict[str, dict[str, Any]]:
    """What the program prints for every case, by its name."""
    return {name: extraction(got.history, got.items, got.advice, got.comments) for name, got in extracted.items()}
