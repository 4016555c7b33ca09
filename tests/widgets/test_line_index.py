"""The index of lines finds the row of every line, whatever was changed since."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from worklog_tui.widgets.line_index import LineIndex

heights = st.lists(st.integers(1, 9), max_size=30)


@given(heights)
def test_every_line_belongs_to_the_row_that_holds_it(all_heights: list[int]) -> None:
    index = LineIndex()
    index.lay(0, all_heights)
    owners = [row for row, height in enumerate(all_heights) for _ in range(height)]
    assert [index.row_at(line) for line in range(index.lines)] == owners
    assert index.row_at(index.lines) == len(all_heights) == len(index)
    assert all(index.end(row) - index.top(row) == height for row, height in enumerate(all_heights))


@given(heights, heights, st.integers(0, 30))
def test_laying_the_tail_anew_is_laying_all_anew(old: list[int], new: list[int], start: int) -> None:
    start = min(start, len(old))
    index, whole = LineIndex(), LineIndex()
    index.lay(0, old)
    index.lay(start, new)
    whole.lay(0, old[:start] + new)
    assert [index.end(row) for row in range(len(index))] == [whole.end(row) for row in range(len(whole))]
