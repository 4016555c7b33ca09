"""One screen line of a row, in its styles."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from functools import lru_cache
from typing import TYPE_CHECKING, NamedTuple

from rich.segment import Segment
from rich.style import Style
from textual.strip import Strip

if TYPE_CHECKING:
    from worklog_tui.widgets.row import Piece, Row


class Pen(NamedTuple):
    """How the lines of a row are drawn."""

    margin: int
    "Cells left of the words."
    styles: Mapping[str, Style]
    "For plain, margin, below, heading and here."
    pointed: bool
    "Whether it is the row pointed at."

    def draw(self, row: Row, nth: int, pieces: Sequence[Piece]) -> Strip:
        """The n-th screen line of a row."""
        piece = pieces[nth]
        segments = [Segment(self._beside(row, nth), self.styles["margin"])]
        if piece.part == "below":
            return Strip([*segments, Segment(f"  {row.below[piece.start : piece.end]}", self.styles["below"])])
        style = self.styles["heading" if row.heading else "here" if self.pointed else "plain"]
        underlined = style + Style(underline=True)
        hang = [Segment(" " * piece.hang, style)] if piece.hang else []
        words = [Segment(text, underlined if marked else style) for text, marked in row.stretches(piece)]
        return Strip([*segments, *hang, *words])

    def _beside(self, row: Row, nth: int) -> str:
        """What stands left of the words."""
        time = row.margin[: self.margin - 4].rjust(self.margin - 4) if nth == 0 and self.margin > 4 else ""
        return (("> " if self.pointed and nth == 0 else "  ") + time).ljust(self.margin)


@lru_cache(8)
def blank(width: int, style: Style) -> Strip:
    """An empty line, one and the same for all: drawing it again costs nothing."""
    return Strip.blank(width, style)
