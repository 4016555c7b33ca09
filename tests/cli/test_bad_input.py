"""Bad input, each with its one plain sentence: what is wrong, and what to do; nothing that was kept is lost."""

from __future__ import annotations

import os
import sqlite3
from contextlib import closing
from pathlib import Path

import pytest

from worklog_tui import store
from worklog_tui.cli import main

CARD = 'name = "Card press"\nkind = "treadle printing press"\nfuel = "none"\n'
TALK = "14:05 the treadle hook is broken\n14:09 fitted a new hook\n"


@pytest.fixture
def shop(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A folder with a card and a session, and a logbook of its own."""
    (tmp_path / "machine.toml").write_text(CARD)
    (tmp_path / "talk.txt").write_text(TALK)
    monkeypatch.chdir(tmp_path)
    monkeypatch.setenv("WORKLOG_TUI_LOGBOOK", str(tmp_path / "logbook.db"))
    monkeypatch.setenv("XDG_DATA_HOME", str(tmp_path / "data"))
    return tmp_path


def refusal(capsys: pytest.CaptureFixture[str], *call: str) -> str:
    """The one sentence that a refused call prints."""
    assert main(call) == 1
    printed = capsys.readouterr()
    assert printed.out == ""
    assert printed.err.count("\n") == 1
    return printed.err.strip()


def warning(capsys: pytest.CaptureFixture[str], *call: str) -> str:
    """What a call that went well complains about."""
    assert main(call) == 0
    return capsys.readouterr().err.strip()


def extract(*files: str) -> tuple[str, ...]:
    return ("extract", "--machine", "machine.toml", *files)


@pytest.mark.parametrize(
    ("name", "content", "says"),
    [
        ("none.txt", None, "There is no file none.txt; check its name and folder."),
        (".", None, ". is a folder; choose one file in it."),
        ("empty.txt", b"", "empty.txt is empty; choose a file with notes or captions in it."),
        (
            "film.mp4",
            bytes(range(256)) * 40,
            "film.mp4 is not a text file; choose the captions or the notes, not the film or a picture.",
        ),
    ],
)
def test_a_session_that_cannot_be_read(
    shop: Path, capsys: pytest.CaptureFixture[str], name: str, content: bytes | None, says: str
) -> None:
    if content is not None:
        (shop / name).write_bytes(content)
    assert refusal(capsys, *extract(name)) == says
    assert refusal(capsys, "import", "--machine", "machine.toml", name) == says


def test_a_file_in_another_encoding_is_read(shop: Path, capsys: pytest.CaptureFixture[str]) -> None:
    (shop / "old.txt").write_bytes("14:05 the oven is at 180 °C\n".encode("cp1252"))
    assert main(extract("old.txt")) == 0
    assert "°C" in capsys.readouterr().out


def test_a_broken_character_is_told(shop: Path, capsys: pytest.CaptureFixture[str]) -> None:
    (shop / "torn.txt").write_bytes("14:05 the hook – is broken – see ".encode() + b"\xe2\x80\n")
    assert "could not be read and show as" in warning(capsys, *extract("torn.txt"))


def test_times_that_run_backwards_are_told_by_line(shop: Path, capsys: pytest.CaptureFixture[str]) -> None:
    (shop / "back.txt").write_text("[0:10] the hook is broken\n[5:00] the lever is bent\n[2:00] the pin is worn\n")
    told = warning(capsys, *extract("back.txt"))
    assert told == "back.txt, line 3: the time 2:00 is out of step; the written order is kept"


def test_a_line_without_end_is_kept_in_pieces(shop: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """A megabyte here; the notes' own test takes fifty."""
    (shop / "long.txt").write_text("[0:10] the hook is fine [0:11] " + "and so on " * 100_000)
    assert warning(capsys, *extract("long.txt")) == "long.txt, line 1: it is very long and is kept in pieces"


@pytest.mark.parametrize(
    ("card", "says"),
    [
        ("name = ", "machine.toml: is not a card in TOML"),
        ('name = "Press"\ncylinders = "four"\n', "cylinders must be a whole number from 0 to 64"),
        ('name = "Press"\nfiring_order = [1, 1]\n', "firing_order must be a list of cylinders"),
    ],
)
def test_a_machine_card_with_a_bad_value(shop: Path, capsys: pytest.CaptureFixture[str], card: str, says: str) -> None:
    (shop / "machine.toml").write_text(card)
    assert says in refusal(capsys, *extract("talk.txt"))


def test_an_unknown_key_of_a_card_is_told_and_not_refused(shop: Path, capsys: pytest.CaptureFixture[str]) -> None:
    (shop / "machine.toml").write_text(CARD + 'paint = "green"\n')
    assert "paint" in warning(capsys, *extract("talk.txt"))


def test_an_unknown_machine(shop: Path, capsys: pytest.CaptureFixture[str]) -> None:
    said = refusal(capsys, "timeline", "--machine", "Nobody")
    assert "Make its card in the recorder (worklog-tui, then n), or name its machine.toml here." in said


def test_a_name_of_several_machines_asks_for_more_of_it(shop: Path, capsys: pytest.CaptureFixture[str]) -> None:
    for name in ("Mill saw", "Mill lathe"):
        (shop / "card.toml").write_text(f'name = "{name}"\n')
        assert main(["note", "--machine", "card.toml", "blade is blunt"]) == 0
    capsys.readouterr()
    said = refusal(capsys, "timeline", "--machine", "mill")
    assert "“Mill saw”, “Mill lathe”. Say more of its name." in said
    assert "Make its card" not in said


def test_a_logbook_that_is_something_else(shop: Path, capsys: pytest.CaptureFixture[str]) -> None:
    for place in ("talk.txt", "."):
        assert "is not a logbook of this program" in refusal(capsys, "machines", "--logbook", place)
    assert (shop / "talk.txt").read_text() == TALK


def test_a_logbook_of_a_newer_version(shop: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(("import", "--machine", "machine.toml", "talk.txt")) == 0
    capsys.readouterr()
    with closing(sqlite3.connect(shop / "logbook.db")) as connection:
        connection.execute(f"PRAGMA user_version = {store.schema.VERSION + 1}")
    kept = (shop / "logbook.db").read_bytes()
    assert "was written by a newer version of this program" in refusal(capsys, "timeline", "--machine", "Card press")
    assert (shop / "logbook.db").read_bytes() == kept


@pytest.mark.skipif(os.name != "posix" or os.geteuid() == 0, reason="the superuser may write everywhere")
def test_a_place_that_cannot_be_written(shop: Path, capsys: pytest.CaptureFixture[str]) -> None:
    locked = shop / "locked"
    locked.mkdir()
    locked.chmod(0o500)
    said = refusal(capsys, "import", "--machine", "machine.toml", "talk.txt", "--logbook", str(locked / "l.db"))
    assert "give yourself the right to write there, or name a logbook elsewhere" in said


def test_a_place_under_a_file(shop: Path, capsys: pytest.CaptureFixture[str]) -> None:
    said = refusal(capsys, "import", "--machine", "machine.toml", "talk.txt", "--logbook", "talk.txt/l.db")
    assert "name a logbook elsewhere" in said
