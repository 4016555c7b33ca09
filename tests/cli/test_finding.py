"""The commands of fault finding and the shop sums: what they print, in words and as JSON."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from worklog_tui.cli import main

CARD = 'name = "Ditch pump"\nkind = "single-cylinder petrol water pump"\nfuel = "petrol"\nignition = "magneto"\n'
TALK = "session 2031-05-02 18:10\n18:10 the engine won't start\n18:14 no spark at all\n18:20 the plug is fine\n"


@pytest.fixture
def shop(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A logbook with a pump that has no spark."""
    (tmp_path / "machine.toml").write_text(CARD)
    (tmp_path / "session-1.txt").write_text(TALK)
    monkeypatch.chdir(tmp_path)
    monkeypatch.setenv("WORKLOG_TUI_LOGBOOK", str(tmp_path / "logbook.db"))
    monkeypatch.setenv("XDG_DATA_HOME", str(tmp_path / "data"))
    assert main(["import", "--machine", "machine.toml", "session-1.txt"]) == 0
    return tmp_path


def said(capsys: pytest.CaptureFixture[str], *call: str) -> str:
    capsys.readouterr()
    assert main(call) == 0, capsys.readouterr().err
    return capsys.readouterr().out


def test_systems_in_plain_lines(shop: Path, capsys: pytest.CaptureFixture[str]) -> None:
    text = said(capsys, "systems", "--machine", "Ditch pump")
    assert "In doubt: Ignition" in text or "Bad: Ignition" in text
    assert "cooling" in text.split("Not looked at: ")[1]
    printed = json.loads(said(capsys, "systems", "--machine", "Ditch pump", "--json"))
    assert {"system", "standing", "evidence"} == set(printed[0])


def test_causes_in_grades_and_figures_only_when_asked_for(shop: Path, capsys: pytest.CaptureFixture[str]) -> None:
    text = said(capsys, "causes", "--machine", "Ditch pump")
    assert "Trouble: there is no proper spark" in text
    assert "%" not in text
    assert "%" in said(capsys, "causes", "--machine", "Ditch pump", "--figures")
    printed = json.loads(said(capsys, "causes", "--machine", "Ditch pump", "--json"))
    assert printed["causes"][0]["grade"] in ("likely", "possible", "unlikely")
    assert "chance" not in printed["causes"][0]
    figures = json.loads(said(capsys, "causes", "--machine", "Ditch pump", "--json", "--figures"))
    assert 0 < figures["causes"][0]["chance"] < 1


def test_the_next_step_tells_what_would_put_another_first(shop: Path, capsys: pytest.CaptureFixture[str]) -> None:
    text = said(capsys, "next-step", "--machine", "Ditch pump")
    assert "Runner-up:" in text
    assert "3. " in text
    assert "4. " not in text
    printed = json.loads(said(capsys, "next-step", "--machine", "Ditch pump", "--json"))
    assert printed["instead"].startswith("Runner-up:")
    assert printed["asks"] == []


def test_the_standing_sentence_is_told_once(shop: Path, capsys: pytest.CaptureFixture[str]) -> None:
    text = said(capsys, "next-step", "--machine", "Ditch pump")
    assert " ".join(text.split()).count("reminders, not instructions for your machine") == 1


def test_a_sum(capsys: pytest.CaptureFixture[str]) -> None:
    text = said(capsys, "sums", "torque", "3/8-16", "--grade", "5")
    for word in ("Formula:", "Range:", "Source:", "Caution:", "ft_lb"):
        assert word in text
    printed = json.loads(said(capsys, "sums", "feeler", "15thou", "--json"))
    assert printed["amounts"][0]["also_unit"] == "in"
    assert "tap-drill" in said(capsys, "sums")


def test_a_sum_that_cannot_be_is_refused_in_one_sentence(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["sums", "thread", "zz"]) == 2
    assert capsys.readouterr().err == "No thread is called 'zz', and it is no diameter.\n"
