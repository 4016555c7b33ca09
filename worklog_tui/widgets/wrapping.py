"""Where a line of text breaks at a given width, in cells of the terminal."""

from __future__ import annotations

from collections.abc import Callable, Iterator


def breaks(text: str, width: int, hang: int = 0) -> list[tuple[int, int]]:
    """The pieces (start, end) of a text without newlines, each at most `width` cells wide, those after the first
    `hang` cells less.

    They break at blanks where there are any. An empty text has one empty piece. Time grows linearly with the text.
    """
    width, later = max(width, 1), max(width - hang, 1)
    if text.isascii():
        return list(_pieces(text, lambda start: start + (later if start else width)))
    return list(_pieces(text, _reach(text, width, later)))


def height(text: str, width: int, hang: int = 0) -> int:
    """How many lines the text takes; quick for the usual short one."""
    if len(text) <= width and text.isascii():
        return 1
    return len(breaks(text, width, hang))


def _pieces(text: str, reach: Callable[[int], int]) -> Iterator[tuple[int, int]]:
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


def _reach(text: str, width: int, later: int) -> Callable[[int], int]:
    """For text with wide signs: the end of the longest piece from a start that fits, at least one sign long."""
    from rich.cells import cell_len

    widths = [cell_len(sign) for sign in text]

    def reach(start: int) -> int:
        used, stop, room = 0, start, later if start else width
        while stop < len(text) and used + widths[stop] <= room:
            used += widths[stop]
            stop += 1
        return max(stop, start + 1)

    return reach
