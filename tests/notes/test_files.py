"""A file is read whatever wrote it, or refused with one sentence that says what to do."""

from __future__ import annotations

import os
import time
from pathlib import Path

import pytest

from worklog_tui.notes.files import read_session_file
from worklog_tui.notes.refusals import Unreadable

WORDS = "14:05 gap \u00bd mm \u2013 caf\u00e9\n14:09 lid on"


@pytest.mark.parametrize("encoding", ["utf-8", "utf-8-sig", "utf-16", "utf-16-le", "utf-16-be", "utf-32", "cp1252"])
def test_encodings(tmp_path: Path, encoding: str) -> None:
    file = tmp_path / "notes.txt"
    file.write_bytes(WORDS.encode(encoding))
    read = read_session_file(file)
    assert [line.words for line in read.lines] == ["gap \u00bd mm \u2013 caf\u00e9", "lid on"]
    assert read.complaints == ()


def test_a_damaged_byte_costs_one_character_and_is_named(tmp_path: Path) -> None:
    file = tmp_path / "notes.txt"
    file.write_bytes("14:05 caf\u00e9 \u00bd \u00bd".encode() + b" \xff end")
    read = read_session_file(file)
    assert read.lines[0].words == "caf\u00e9 \u00bd \u00bd \ufffd end"
    assert "1 characters could not be read" in read.complaints[0]


def test_a_stray_nought_is_forgiven(tmp_path: Path) -> None:
    file = tmp_path / "notes.txt"
    file.write_bytes(b"14:05 lid\x00 off")
    assert read_session_file(file).lines[0].words == "lid off"


@pytest.mark.parametrize(
    ("content", "says"),
    [
        (b"", "is empty"),
        (b" \n\r\n\xef\xbb\xbf", "is empty"),
        (b"\x89PNG\r\n\x1a\n" + bytes(range(256)) * 20, "not a text file"),
        (b"PK\x03\x04" + bytes(200), "not a text file"),
    ],
)
def test_refused_content(tmp_path: Path, content: bytes, says: str) -> None:
    file = tmp_path / "film.bin"
    file.write_bytes(content)
    with pytest.raises(Unreadable, match=says) as refusal:
        read_session_file(file)
    assert "choose" in str(refusal.value)
    assert "\n" not in str(refusal.value)


def test_refused_places(tmp_path: Path) -> None:
    with pytest.raises(Unreadable, match="is a folder; choose one file in it"):
        read_session_file(tmp_path)
    with pytest.raises(Unreadable, match="There is no file"):
        read_session_file(tmp_path / "none.txt")
    with pytest.raises(Unreadable, match="There is no file"):
        read_session_file(tmp_path / "a\x00b")


@pytest.mark.skipif(os.name != "posix" or os.geteuid() == 0, reason="the superuser may read everything")
def test_a_file_that_may_not_be_read(tmp_path: Path) -> None:
    file = tmp_path / "notes.txt"
    file.write_text("14:05 lid off")
    file.chmod(0)
    with pytest.raises(Unreadable, match="may not be read"):
        read_session_file(file)


def test_a_whole_film_is_refused_unread(tmp_path: Path) -> None:
    file = tmp_path / "film.txt"
    with file.open("wb") as sparse:
        sparse.truncate(64 * 1024 * 1024 + 1)
    with pytest.raises(Unreadable, match="larger than 64 MB"):
        read_session_file(file)


def test_fifty_megabytes_in_one_line(tmp_path: Path) -> None:
    file = tmp_path / "notes.txt"
    file.write_text("the gate lifts and then it drops once again. " * 1_120_000)
    begin = time.perf_counter()
    read = read_session_file(file)
    assert time.perf_counter() - begin < 30
    assert max(len(line.words) for line in read.lines) <= 4000
