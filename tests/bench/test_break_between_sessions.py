"""What was talked of last is never carried over the break between sessions; within one, what was filled in says so."""

from __future__ import annotations

from pathlib import Path

import pytest

from worklog_tui import places
from worklog_tui.bench.extract_files import Extraction, extract
from worklog_tui.model import Fact, Machine
from worklog_tui.reports.sentence import sentence
from worklog_tui.rulebook import Rulebook
from worklog_tui.rulebook.faults import load_faults

GENERATOR = Machine("Generator", kind="two-cylinder petrol engine", fuel="petrol", ignition="magneto", cylinders=2)
BEFORE = "[0:05] right a compression test on the generator\n[0:14] number one is ninety"
AFTER = ("number two is thirty", "four thousandths", "it's cracked along the flange", "same on the other one")


def told(book: Rulebook, folder: Path, *sessions: str) -> Extraction:
    paths = [folder / f"session-{n}.txt" for n in range(1, len(sessions) + 1)]
    for path, text in zip(paths, sessions, strict=True):
        path.write_text(text + "\n", encoding="utf-8")
    return extract(book, load_faults([places.grammars()]), GENERATOR, paths)


def last(found: Extraction) -> tuple[Fact, ...]:
    return found.history.sessions[-1].facts


@pytest.mark.parametrize("words", AFTER)
def test_the_next_session_is_read_as_if_nothing_had_been_said_before(
    book: Rulebook, tmp_path: Path, words: str
) -> None:
    line = f"[0:05] {words}"
    (tmp_path / "alone").mkdir()
    alone, behind = told(book, tmp_path / "alone", line), told(book, tmp_path, BEFORE, line)
    assert [sentence(one) for one in last(behind)] == [sentence(one) for one in last(alone)]


def test_the_running_test_does_not_go_on_in_the_next_session(book: Rulebook, tmp_path: Path) -> None:
    found = told(book, tmp_path, BEFORE, "[0:05] number two is thirty")
    assert not [one for one in last(found) if one.kind == "reading"]


@pytest.mark.parametrize("at", ["0:20", "2:40:05"])
def test_within_one_session_it_does_and_says_what_was_filled_in(book: Rulebook, tmp_path: Path, at: str) -> None:
    found = told(book, tmp_path, f"{BEFORE}\n[{at}] number two is thirty")
    (reading,) = [one for one in last(found) if one.kind == "reading" and "2" in one.about]
    assert reading.filled
    assert "not said" in sentence(reading)
