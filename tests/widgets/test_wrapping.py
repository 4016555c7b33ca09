"""Lines break at blanks, fit the width, and lose nothing but the blank they break at."""

from __future__ import annotations

import time
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st
from rich.cells import cell_len

from worklog_tui.widgets.wrapping import breaks, height


@pytest.mark.parametrize(
    ("text", "width", "lines"),
    [
        ("", 10, [""]),
        ("one two", 10, ["one two"]),
        ("one two three", 8, ["one two", "three"]),
        ("one two", 7, ["one two"]),
        ("onetwothree", 4, ["onet", "woth", "ree"]),
        ("half a thou", 4, ["half", "a", "thou"]),
        ("気化器の掃除", 5, ["気化", "器の", "掃除"]),
        ("abc", 0, ["a", "b", "c"]),
    ],
)
def test_where_a_text_breaks(text: str, width: int, lines: list[str]) -> None:
    assert [text[start:end] for start, end in breaks(text, width)] == lines


def test_the_lines_after_the_first_may_stand_in() -> None:
    text = "half a thou over the book"
    assert [text[start:end] for start, end in breaks(text, 12, hang=4)] == ["half a thou", "over the", "book"]
    assert height(text, 12, hang=4) == 3


@given(st.text(alphabet="ab é気½\u0301 ", max_size=60), st.integers(2, 20))
def test_every_line_fits_and_nothing_but_blanks_is_lost(text: str, width: int) -> None:
    pieces = breaks(text, width)
    assert all(sum(map(cell_len, text[start:end])) <= width for start, end in pieces)
    assert height(text, width) == len(pieces)
    for (_, end), (start, _) in pairwise(pieces):
        assert text[end:start] in ("", " ")
    assert pieces[0][0] == 0
    assert pieces[-1][1] == len(text)


@pytest.mark.parametrize("sign", ["a", "a ", "気", "気 "])
def test_a_line_of_a_million_signs_breaks_in_linear_time(sign: str) -> None:
    def seconds(length: int) -> float:
        text = sign * (length // len(sign))
        start = time.perf_counter()
        breaks(text, 80)
        return time.perf_counter() - start

    seconds(1000)
    short, long = (min(seconds(length) for _ in range(3)) for length in (100_000, 1_000_000))
    assert long <= 30 * short + 0.05
