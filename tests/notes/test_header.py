"""The day of a session from its first line: a header, or a line that is nothing but a day."""

from __future__ import annotations

import pytest

from worklog_tui.notes.reading import read_text


@pytest.mark.parametrize(
    ("line", "start"),
    [
        ("session 2031-04-12 14:05", "2031-04-12T14:05"),
        ("2031-04-12", "2031-04-12T14:20"),  # the day alone: the first typed line tells the hour
        ("# Sat 12 April 2031", "2031-04-12T14:20"),
        ("April 12th, 2031", "2031-04-12T14:20"),
        ("Date: 2031-04-12 14:05", "2031-04-12T14:05"),
    ],
)
def test_a_first_line_that_is_a_day_is_the_header(line: str, start: str) -> None:
    read = read_text(f"{line}\n14:20 belt off\n14:31 bearing rough\n")
    assert read.header is not None
    assert read.header.utc.startswith(start)
    assert [row.words for row in read.lines] == ["belt off", "bearing rough"]


@pytest.mark.parametrize("line", ["2031-04-12 new belt on", "14 bolts 2031", "belt off"])
def test_other_words_are_a_note(line: str) -> None:
    read = read_text(f"{line}\n14:20 belt off\n14:31 bearing rough\n")
    assert read.header is None
    assert len(read.lines) == 3


def test_a_day_that_no_calendar_has_is_told() -> None:
    read = read_text("2031-13-40\n14:20 belt off\n14:31 bearing rough\n")
    assert "gives no day that can be read" in read.complaints[0]
