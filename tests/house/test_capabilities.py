"""Every capability of the design is shown by a test that exists, and by a command that exists where one is named."""

from __future__ import annotations

import re

import pytest

from tests.house.test_documents import DEVELOPERS, ROOT, commands

TABLE = (ROOT / "tests" / "capabilities.md").read_text(encoding="utf-8")
ROWS = [[cell.strip() for cell in line.strip("|").split("|")] for line in TABLE.splitlines() if line.startswith("| C")]


def test_every_number_is_there_once_and_in_order() -> None:
    assert [row[0] for row in ROWS] == [f"C{number}" for number in range(1, 40)]


@pytest.mark.parametrize("row", ROWS, ids=[row[0] for row in ROWS])
def test_what_shows_it_exists(row: list[str]) -> None:
    named = re.findall(r"`(tests/[^`]+)`", row[2])
    assert named
    for one in named:
        path, _, test = one.partition("::")
        assert (ROOT / path).exists(), one
        assert not test or re.search(rf"^(async )?def {test}\(", (ROOT / path).read_text("utf-8"), re.M), one


@pytest.mark.parametrize("row", ROWS, ids=[row[0] for row in ROWS])
def test_where_it_is_met_exists(row: list[str]) -> None:
    assert [one for one in re.findall(r"`worklog-tui ([a-z-]+)`", row[3]) if one not in commands()] == []


def test_the_map_leads_here() -> None:
    assert "tests/capabilities.md" in DEVELOPERS
