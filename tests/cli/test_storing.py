"""Looking after the logbook from the command line: each command says what it did, or what to do instead."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from tests.cli.test_calls import said, shop
from worklog_tui.cli.running import main

__all__ = ["shop"]


def test_a_copy_to_a_folder_that_is_not_there_says_what_to_do(shop: Path, capsys: pytest.CaptureFixture[str]) -> None:
    said(capsys, "import", "--machine", "machine.toml", "session-1.txt")
    for command in ("backup", "export"):
        assert main([command, str(shop / "nowhere" / "copy")]) == 1
        assert "cannot be written: name a folder that is there" in capsys.readouterr().err


def test_looking_after_the_logbook_answers_programs_too(shop: Path, capsys: pytest.CaptureFixture[str]) -> None:
    said(capsys, "import", "--machine", "machine.toml", "session-1.txt")
    kept = json.loads(said(capsys, "backup", "copy.db", "--json"))
    assert kept == {"backup": "copy.db"}
    written = json.loads(said(capsys, "export", "copy.jsonl", "--json"))
    assert written["records"] > 0
    assert said(capsys, "merge", "copy.jsonl").startswith("There was nothing new in it")
    assert json.loads(said(capsys, "restore", "copy.db", "--json"))["restored"] == "copy.db"
