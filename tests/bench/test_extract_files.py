"""From session files to a log, without a logbook."""

from __future__ import annotations

from pathlib import Path

import pytest

from worklog_tui import places
from worklog_tui.bench.extract_files import Extraction, extract
from worklog_tui.model import Machine
from worklog_tui.notes.refusals import Unreadable
from worklog_tui.rulebook import Rulebook
from worklog_tui.rulebook.faults import FaultBook, load_faults

GUILLOTINE = Machine(
    "Print-shop guillotine", kind="paper guillotine with an electric motor", fuel="none", ignition="none"
)


@pytest.fixture(scope="module")
def faults() -> FaultBook:
    return load_faults([places.grammars()])


def session(folder: Path, number: int, text: str) -> Path:
    path = folder / f"session-{number}.txt"
    path.write_text(text, encoding="utf-8")
    return path


def read(tmp_path: Path, book: Rulebook, faults: FaultBook, *texts: str, comments: Path | None = None) -> Extraction:
    paths = [session(tmp_path, n, text) for n, text in enumerate(texts, 1)]
    return extract(book, faults, GUILLOTINE, paths, comments)


def test_sessions_are_numbered_as_they_are_given(tmp_path: Path, book: Rulebook, faults: FaultBook) -> None:
    found = read(tmp_path, book, faults, "14:05 the clamp spring is broken\n", "09:00 fitted a new clamp spring\n")
    places_ = [(found.history.place(f.main.note).session, f.kind) for f in found.history.facts()]
    assert (1, "finding") in places_
    assert (2, "work") in places_


def test_the_same_files_always_give_the_same(tmp_path: Path, book: Rulebook, faults: FaultBook) -> None:
    text = "session 2031-04-12 14:05\n14:05 the clamp spring is broken\n14:09 need a new blade\n"
    assert read(tmp_path, book, faults, text) == read(tmp_path, book, faults, text)


def test_what_is_odd_is_told_with_its_file_and_line(tmp_path: Path, book: Rulebook, faults: FaultBook) -> None:
    found = read(tmp_path, book, faults, "session the day before\n14:05 the clamp spring is broken\n")
    assert any(c.startswith("session-1.txt, line 1") for c in found.complaints)
    assert len(found.history.sessions[0].notes) >= 1


def test_comments_are_read_against_the_log(tmp_path: Path, book: Rulebook, faults: FaultBook) -> None:
    written = tmp_path / "comments.txt"
    written.write_text("Is the motor original?\n\nLove the channel\n", encoding="utf-8")
    found = read(tmp_path, book, faults, "14:05 the clamp spring is broken\n", comments=written)
    assert [c.kind for c in found.comments] == ["question", "chatter"]
    assert [i.comment for i in found.items if i.comment is not None] == [0]


def test_a_file_that_cannot_be_read_is_named(tmp_path: Path, book: Rulebook, faults: FaultBook) -> None:
    with pytest.raises((Unreadable, OSError), match="nowhere"):
        extract(book, faults, GUILLOTINE, [tmp_path / "nowhere.txt"])


@pytest.mark.parametrize("text", ["", "\n\n", "\x00\x01"])
def test_a_file_without_words_is_refused_in_one_sentence(
    tmp_path: Path, book: Rulebook, faults: FaultBook, text: str
) -> None:
    with pytest.raises(Unreadable, match=r"session-1\.txt"):
        read(tmp_path, book, faults, text)


@pytest.mark.parametrize("text", ["14:05\n", "14:05 " + "x" * 20_000, "\x1b[2J14:05 spring is broken"])
def test_no_text_does_harm(tmp_path: Path, book: Rulebook, faults: FaultBook, text: str) -> None:
    assert isinstance(read(tmp_path, book, faults, text), Extraction)
