"""Which row a screen line belongs to, when rows take different numbers of lines."""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Iterable
from itertools import accumulate


class LineIndex:
    """Sums of heights: finding a row takes the logarithm of their number, adding one at the end no time to speak of."""

    def __init__(self) -> None:
        self._ends: list[int] = []

    def __len__(self) -> int:
        return len(self._ends)

    @property
    def lines(self) -> int:
        """Lines of all rows together."""
        return self._ends[-1] if self._ends else 0

    def lay(self, start: int, heights: Iterable[int]) -> None:
        """Put rows of these heights in place of those from `start` on."""
        del self._ends[start:]
        self._ends.extend(list(accumulate(heights, initial=self.lines))[1:])

    def row_at(self, line: int) -> int:
        """The row that holds a line; the number of rows for a line below them all."""
        return bisect_right(self._ends, line)

    def top(self, row: int) -> int:
        """The first line of a row."""
        return self._ends[row - 1] if row else 0

    def end(self, row: int) -> int:
        """The line after the last one of a row."""
        return self._ends[row]
