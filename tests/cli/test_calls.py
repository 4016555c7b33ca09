"""The command line: what may be called, what it answers, and how it ends."""

from __future__ import annotations

import json
import os
import subprocess
import sys
from pathlib import Path

import pytest

from worklog_tui.cli import main

ROOT = Path(__file__).parents[2]
CARD = 'name = "Print-shop guillotine"\nkind = "hand-fed paper guillotine with an electric motor"\nfuel = "none"\n'
TALK = (
    "session 2031-04-12 14:05\n14:05 clamp spring is broken\n14:09 fitted a new clamp spring\n14:20 need a new blade\n"
)


@pytest.fixture
def shop(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A folder with a card and a session, a logbook of its own and no grammars of a person."""
    (tmp_path / "machine.toml").write_text(CARD)
    (tmp_path / "session-1.txt").write_text(TALK)
    monkeypatch.chdir(tmp_path)
    monkeypatch.setenv("WORKLOG_TUI_LOGBOOK", str(tmp_path / "logbook.db"))
    monkeypatch.setenv("XDG_DATA_HOME", str(tmp_path / "data"))
    return tmp_path


def said(capsys: pytest.CaptureFixture[str], *call: str) -> str:
    assert main(call) == 0, capsys.readouterr().err
    return capsys.readouterr().out


def refused(capsys: pytest.CaptureFixture[str], *call: str) -> tuple[int, str]:
    status = main(call)
    printed = capsys.readouterr()
    assert printed.out == ""
    return status, printed.err


def test_extract_prints_the_log(shop: Path, capsys: pytest.CaptureFixture[str]) -> None:
    text = said(capsys, "extract", "--machine", "machine.toml", "session-1.txt")
    assert text.startswith("Repair log: Print-shop guillotine")
    printed = json.loads(said(capsys, "extract", "--machine", "machine.toml", "session-1.txt", "--json"))
    assert {f["kind"] for f in printed["facts"]} >= {"finding", "work"}


def test_a_session_is_taken_in_once_and_looked_at(shop: Path, capsys: pytest.CaptureFixture[str]) -> None:
    first = said(capsys, "import", "--machine", "machine.toml", "session-1.txt")
    assert first.startswith("1 session, 3 notes, ")
    assert "in the logbook already" in said(capsys, "import", "--machine", "Print-shop guillotine", "session-1.txt")
    assert "Print-shop guillotine" in said(capsys, "machines")
    for command in ("timeline", "readings", "open-items", "recap", "next-step"):
        assert said(capsys, command, "--machine", "Print-shop guillotine").strip()
        json.loads(said(capsys, command, "--machine", "Print-shop guillotine", "--json"))


def test_a_note_is_kept_and_read(shop: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert said(capsys, "note", "--machine", "machine.toml", "fitted", "a", "new", "clamp", "spring").startswith(
        "Kept."
    )
    assert "fitted a new clamp spring" in said(capsys, "timeline", "--machine", "Print-shop guillotine")


def test_a_line_is_explained(shop: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert said(capsys, "explain", "the clamp spring is broken", "--machine", "machine.toml").strip()


@pytest.mark.parametrize(
    "call",
    [
        (), ("walk",), ("extract",), ("extract", "--machine", "machine.toml"), ("note", "--machine", "x"),
        ("timeline",), ("grammar", "mend"), ("recap", "--machine", "x", "--frobnicate"),
    ],
)  # fmt: skip
def test_a_wrong_call_ends_with_2_and_one_sentence(
    shop: Path, capsys: pytest.CaptureFixture[str], call: tuple[str, ...]
) -> None:
    status, error = refused(capsys, *call)
    assert status == 2
    assert error.count("\n") == 1
    assert "--help" in error


@pytest.mark.parametrize(
    "call",
    [
        ("extract", "--machine", "none.toml", "session-1.txt"),
        ("extract", "--machine", "machine.toml", "none.txt"),
        ("extract", "--machine", "machine.toml", "."),
        ("extract", "--machine", "session-1.txt", "session-1.txt"),
        ("extract", "--machine", "machine.toml", "session-1.txt", "--comments", "none.txt"),
        ("import", "--machine", "machine.toml", "none.txt"),
        ("timeline", "--machine", "Nobody"),
        ("machines", "--logbook", "machine.toml"),
    ],
)
def test_bad_input_ends_with_1_and_says_what_to_do(
    shop: Path, capsys: pytest.CaptureFixture[str], call: tuple[str, ...]
) -> None:
    status, error = refused(capsys, *call)
    assert status == 1
    assert "Traceback" not in error
    assert "inside the program" not in error


def test_nothing_that_steers_a_terminal_gets_through(shop: Path, capsys: pytest.CaptureFixture[str]) -> None:
    (shop / "machine.toml").write_text('name = "\\u001b]0;gotcha\\u0007Guillotine\\u202e"\n')
    (shop / "session-1.txt").write_text("14:05 \x1b[2Jclamp spring is broken\x07\n")
    for more in ((), ("--json",)):
        printed = said(capsys, "extract", "--machine", "machine.toml", "session-1.txt", *more)
        assert not set(printed) & set("\x1b\x07\u202e")


def test_help_takes_a_tenth_of_a_second_at_most() -> None:
    """Processor time, the best of five, so that a busy computer does not decide it."""
    best = 9.0
    for _ in range(5):
        before = os.times()
        subprocess.run([sys.executable, "-m", "worklog_tui", "--help"], check=True, capture_output=True, cwd=ROOT)
        after = os.times()
        best = min(best, after.children_user + after.children_system - before.children_user - before.children_system)
    assert best <= 0.1


def test_help_loads_nothing_heavy() -> None:
    heavy = ("pint", "sqlite_utils", "rapidfuzz", "textual", "rich", "dateutil", "webvtt", "platformdirs", "sqlite3")
    look = f"""
import sys
from worklog_tui.cli import calls
calls.build().format_help()
print(set({heavy}) & set(sys.modules))
"""
    done = subprocess.run([sys.executable, "-c", look], check=True, capture_output=True, text=True, cwd=ROOT)
    assert done.stdout.strip() == "set()"


def test_a_reader_that_goes_away_is_no_fault(shop: Path) -> None:
    call = [sys.executable, "-m", "worklog_tui", "extract", "--machine", "machine.toml", "session-1.txt"]
    env = os.environ | {"PYTHONPATH": str(ROOT)}
    with subprocess.Popen(call, stdout=subprocess.PIPE, stderr=subprocess.PIPE, env=env) as running:
        assert running.stdout is not None
        running.stdout.close()
        assert running.stderr is not None
        assert running.stderr.read() == b""
