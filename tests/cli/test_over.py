"""Looking a machine over from the command line: every command has its plain text and its JSON."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from tests.cli.test_calls import said, shop
from worklog_tui import places

__all__ = ["shop"]
NAME = "Print-shop guillotine"
MORE = """session 2031-04-13 09:00
09:00 blade clamp off, two M8x1.25 bolts
09:05 head bolts only finger tight for now
09:10 do not start it, no guard on yet
"""


@pytest.fixture
def log(shop: Path, capsys: pytest.CaptureFixture[str]) -> Path:
    """A logbook that holds two sessions."""
    (shop / "session-2.txt").write_text(MORE)
    said(capsys, "import", "--machine", "machine.toml", "session-1.txt", "session-2.txt")
    return shop


LOOKS = ["card", "parts", "left", "before-start", "closing-up", "odd", "compression", "reread"]


@pytest.mark.parametrize("command", LOOKS)
def test_each_command_has_text_and_json(log: Path, capsys: pytest.CaptureFixture[str], command: str) -> None:
    assert said(capsys, command, "--machine", NAME).strip()
    json.loads(said(capsys, command, "--machine", NAME, "--json"))


def test_how_it_was_left(log: Path, capsys: pytest.CaptureFixture[str]) -> None:
    text = said(capsys, "before-start", "--machine", NAME)
    assert text.startswith("Do not start it\n")
    assert "finger-tight" in text
    found = json.loads(said(capsys, "left", "--machine", NAME, "--json"))
    assert [one["state"] for one in found["left"]] == ["finger-tight"]


def test_how_it_was_left_heads_the_recap(log: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert said(capsys, "recap", "--machine", NAME).startswith("Do not start it\n")
    found = json.loads(said(capsys, "recap", "--machine", NAME, "--json"))
    assert [one["state"] for one in found["left"]] == ["finger-tight"]


def test_the_card_says_what_would_change_the_advice(
    log: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    (log / "bare.toml").write_text('name = "Pump"\nkind = "engine-driven pump"\n')
    said(capsys, "note", "--machine", "bare.toml", "engine cranks but will not start, no idea why")
    found = json.loads(said(capsys, "card", "--machine", "Pump", "--json"))
    assert found["card"]["kind"] == "engine-driven pump"
    fuels = next(one["first_step"] for one in found["missing"] if one["fact"] == "fuel")
    assert fuels["petrol"] != fuels["diesel"]
    assert "fuel is not known" in said(capsys, "card", "--machine", "Pump")


def test_a_question_is_answered_by_its_number(log: Path, capsys: pytest.CaptureFixture[str]) -> None:
    before = json.loads(said(capsys, "closing-up", "--machine", NAME, "--json"))["questions"]
    assert said(capsys, "closing-up", "--machine", NAME, "1", *before[0]["answers"][0].split()).strip()
    after = json.loads(said(capsys, "closing-up", "--machine", NAME, "--json"))["questions"]
    assert [one["key"] for one in after] == [one["key"] for one in before[1:]]


def test_notes_are_found_newest_first(log: Path, capsys: pytest.CaptureFixture[str]) -> None:
    text = said(capsys, "search", "clamp")
    assert text.index("blade clamp off") < text.index("fitted a new clamp spring")
    found = json.loads(said(capsys, "search", '"clamp spring"', "--most", "1", "--json"))
    assert [one["words"] for one in found["notes"]] == ["fitted a new clamp spring"]
    assert said(capsys, "search", "zebra") == "Nothing was found.\n"


def test_waits(log: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert said(capsys, "waits") == "Nothing is waited for.\n"
    said(capsys, "note", "--machine", NAME, "blade in the derusting bath, leave it two hours")
    (found,) = json.loads(said(capsys, "waits", "--json"))
    assert (found["least"], found["ready"], found["ended_at"]) == (7200, False, None)
    assert "ready in 2 h" in said(capsys, "waits", "--machine", NAME)


def test_reading_again_shows_before_it_does(log: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert said(capsys, "reread", "--machine", NAME) == "Reading the notes again changes nothing.\n"
    said(capsys, "correct", "--machine", NAME, "fact", "1/14:05", "condition=snapped")
    own = places.own_grammars() / "parts"
    own.mkdir(parents=True)
    (own / "own.toml").write_text('system = "clamping"\npart = [{name = "clamp spring", said = ["clamp spring"]}]\n')
    shown = said(capsys, "reread", "--machine", NAME)
    assert "Nothing was changed yet" in shown
    done = said(capsys, "reread", "--machine", NAME, "--apply")
    assert shown.splitlines()[:-1] == done.splitlines()[:-1]
    assert said(capsys, "reread", "--machine", NAME) == "Reading the notes again changes nothing.\n"
    assert "snapped" in said(capsys, "timeline", "--machine", NAME), "what was corrected stays corrected"
