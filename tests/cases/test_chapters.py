"""Chapters of every narrated case: a list that the platforms take, and titles that tell something.

The titles of the cases that rules were learnt from were read one by one by a person; of the unseen ones only the rules
are checked.
"""

from __future__ import annotations

import pytest

from tests.cases.conftest import CASES
from tests.reports.published import published
from worklog_tui.bench.extract_files import Extraction
from worklog_tui.reports.chapter_titles import LONGEST
from worklog_tui.reports.chapters import Chapter, chapters, problems
from worklog_tui.reports.film import Film, films

NARRATED = [case.name for case in CASES if (case / "session-1.txt").read_text(encoding="utf-8").count("\n[") > 3]
BARE = 0.2
"Share of titles that may be a name alone."


def made(log: Extraction) -> list[tuple[Film, tuple[Chapter, ...]]]:
    return [(film, chapters(film, log.history.machine.name)) for film in films(published(log.history).material)]


def test_there_are_narrated_cases() -> None:
    assert len(NARRATED) > 10


@pytest.mark.parametrize("name", NARRATED)
def test_the_chapters_of_a_case_are_taken_by_the_platforms(name: str, extracted: dict[str, Extraction]) -> None:
    found = made(extracted[name])
    assert any(rows for _, rows in found)
    for film, rows in found:
        lines = [row.line for row in rows]
        assert not lines or problems(lines, film.length) == []
        assert all(len(row.title) <= LONGEST + len(", time 99") for row in rows)
        assert len({row.title for row in rows}) == len(rows)


def test_nearly_every_title_tells_what_was_found_or_done(extracted: dict[str, Extraction]) -> None:
    titles = [row.title for name in NARRATED for _, rows in made(extracted[name]) for row in rows[1:]]
    bare = [title for title in titles if ": " not in title]
    print(f"{len(titles)} titles behind the first, {len(bare)} a bare name")
    assert len(bare) <= BARE * len(titles)
