"""Correcting from the command line: every act says what it did, and can be taken back."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from tests.cli.test_calls import said, shop
from worklog_tui.cli.running import main

__all__ = ["shop"]
NAME = "Print-shop guillotine"


@pytest.fixture
def log(shop: Path, capsys: pytest.CaptureFixture[str]) -> Path:
    """A logbook that holds the session."""
    said(capsys, "import", "--machine", "machine.toml", "session-1.txt")
    return shop


def lines(capsys: pytest.CaptureFixture[str]) -> list[str]:
    told = json.loads(said(capsys, "timeline", "--machine", NAME, "--json"))
    return [line["words"] for session in told for line in session["lines"]]


def states(capsys: pytest.CaptureFixture[str]) -> dict[str, str]:
    text = said(capsys, "open-items", "--machine", NAME)
    return {row.strip(" -").split(" (")[0]: row for row in text.splitlines() if row.startswith("  - ")}


def test_a_note_is_edited_struck_and_brought_back(log: Path, capsys: pytest.CaptureFixture[str]) -> None:
    told = said(capsys, "correct", "--machine", NAME, "edit", "1/14:05", "clamp", "spring", "is", "bent")
    assert told == "Note edited; it now says “clamp spring is bent”.\n"
    said(capsys, "correct", "--machine", NAME, "strike", "1/14:09-14:20")
    assert lines(capsys) == ["clamp spring is bent"]
    assert "Taken back: striking notes out" in said(capsys, "undo")
    assert len(lines(capsys)) == 3
    assert "Done again: striking notes out" in said(capsys, "redo")
    assert len(lines(capsys)) == 1
    rows = said(capsys, "acts", "--machine", NAME).splitlines()
    assert "editing a note: “clamp spring is bent”" in rows[0]
    assert json.loads(said(capsys, "acts", "--machine", NAME, "--json"))[1]["act"] == "strike lines"


def test_a_word_a_fact_and_a_subject(log: Path, capsys: pytest.CaptureFixture[str]) -> None:
    said(capsys, "correct", "--machine", NAME, "word", "1", "clamp", "claw")
    assert lines(capsys)[:2] == ["claw spring is broken", "fitted a new claw spring"]
    said(capsys, "correct", "--machine", NAME, "fact", "1/14:05", "part=upper claw spring", "condition=snapped")
    assert "upper claw spring" in said(capsys, "timeline", "--machine", NAME)
    said(capsys, "correct", "--machine", NAME, "drop", "1/14:05")
    assert "upper claw spring" not in said(capsys, "timeline", "--machine", NAME)
    told = said(
        capsys, "correct", "--machine", NAME, "add", "1/14:20", "value=14", "unit=in", "quantity=length",
        "subject=blade", "--kind", "reading", "--quote", "blade",
    )  # fmt: skip
    assert told == "Added: length of the blade: 14 in.\n"


def test_items(log: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert "done" in said(capsys, "item", "--machine", NAME, "done", "blade")
    said(capsys, "undo")
    said(capsys, "item", "--machine", NAME, "add", "--reason", "to do", "--day", "2031-05-01", "oil", "the", "screw")
    told = json.loads(said(capsys, "open-items", "--machine", NAME, "--json"))
    assert {one["about"]: one["state"] for one in told}["oil the screw"] == "open"
    assert next(one["due"] for one in told if one["about"] == "oil the screw") == {"day": "2031-05-01"}
    assert "by 2031-05-01" in said(capsys, "open-items", "--machine", NAME)


def test_sessions(log: Path, capsys: pytest.CaptureFixture[str]) -> None:
    said(capsys, "session", "--machine", NAME, "split", "1/14:09")
    assert len(json.loads(said(capsys, "timeline", "--machine", NAME, "--json"))) == 2
    said(capsys, "session", "--machine", NAME, "date", "2", "2031-06-01 10:00")
    assert "Session 2, 1 June 2031" in said(capsys, "timeline", "--machine", NAME)
    said(capsys, "session", "--machine", NAME, "join", "1", "2")
    assert len(json.loads(said(capsys, "timeline", "--machine", NAME, "--json"))) == 1


@pytest.mark.parametrize(
    ("call", "says"),
    [
        (("correct", "edit", "9/1:00", "x"), "There is no session “9”"),
        (("correct", "edit", "1/9:99", "x"), "There is no line “1/9:99”"),
        (("correct", "edit", "1", "x"), "means 3 lines"),
        (("correct", "fact", "1/14:05", "colour=red"), "has no “colour”"),
        (("correct", "word", "1", "zebra", "horse"), "is in none of these notes"),
        (("session", "date", "1", "soon"), "is no day"),
        (("item", "done", "zebra"), "means 0 items"),
        (("item", "due", "blade", "--day", "tomorrow"), "is no day"),
    ],
)  # fmt: skip
def test_what_makes_no_sense_is_refused_in_a_sentence(
    log: Path, capsys: pytest.CaptureFixture[str], call: tuple[str, ...], says: str
) -> None:
    from worklog_tui.cli import main

    assert main((call[0], "--machine", NAME, *call[1:])) == 1
    printed = capsys.readouterr()
    assert printed.out == ""
    assert says in printed.err


def test_erasing_is_shown_first_and_then_cannot_be_undone(log: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["erase", "--machine", NAME, "1/14:05"]) == 1
    told = capsys.readouterr().out
    assert "  14:05 clamp spring is broken\n" in told
    assert "add --for-good" in told
    assert "clamp spring is broken" in lines(capsys), "nothing is erased yet"
    assert "One note was erased for good." in said(capsys, "erase", "--machine", NAME, "1/14:05", "--for-good")
    assert lines(capsys)[0] == "[erased]"
    assert main(["undo"]) == 1
    assert "erasing words" in said(capsys, "acts", "--machine", NAME)
    assert "erased" not in said(capsys, "repair-log", "--machine", NAME), "what is published says nothing of it"
