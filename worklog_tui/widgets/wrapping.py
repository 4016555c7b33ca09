"""Where a line of text breaks at a given width, in cells of the terminal."""

from __future__ import annotations

from collections.abc import Callable, Iterator


def breaks(text: str, width: int) -> list[tuple[int, int]]:
    """The pieces (start, end) of a text without newlines, each at most `width` cells wide.

    They break at blanks where there are any. An empty text has one empty piece. Time grows linearly with the text.
    """
    width = max(width, 1)
    if text.isascii():
        return list(_pieces(text, width, lambda start: start + width))
    return list(_pieces(text, width, _reach(text, width)))


def height(text: str, width: int) -> int:
    """How many lines the text takes; quick for the usual short one."""
    if len(text) <= width and text.isascii():
        return 1
    return len(breaks(text, width))


def _pieces(text: str, width: int, reach: Callable[[int], int]) -> Iterator[tuple[int, int]]:
    start, length = 0, len(text)
    while True:
        stop = reach(start)
        if stop >= length:
            yield start, length
            return
        blank = text.rfind(" ", start + 1, stop + 1)
        if blank > start:
            yield start, blank
            start = blank + 1
        else:
            yield start, stop
            start = stop


def _reach(text: str, width: int) -> Callable[[int], int]:
    """For text with wide signs: the end of the longest piece from a start that fits, at least one sign long."""
    from rich.cells import cell_len

    widths = [cell_len(sign) for sign in text]

    def reach(start: int) -> int:
        used, stop = 0, start
        while stop < len(text) and used + widths[stop] <= width:
            used += widths[stop]
            stop += 1
        return max(stop, start + 1)

    return reach
