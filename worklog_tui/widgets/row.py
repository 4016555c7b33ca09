"""One row of a list: a margin, words that may wrap, and what is said below them."""

from __future__ import annotations

from dataclasses import dataclass
from typing import NamedTuple

from worklog_tui.widgets.literal import literal
from worklog_tui.widgets.wrapping import breaks, height

NARROW = 40
"Below this width the margin is left out."


class Piece(NamedTuple):
    """One screen line of a row: which text (words or below), and from where to where."""

    part: str
    start: int
    end: int
    hang: int = 0
    "Cells by which it stands in."


@dataclass(frozen=True, slots=True)
class Row:
    """A row, its text already made harmless. Make one with `Row.of`."""

    words: str
    margin: str = ""
    marks: tuple[tuple[int, int], ...] = ()
    "Words to underline: from (inclusive) to (exclusive)."
    below: str = ""
    heading: bool = False
    key: str = ""
    "Whatever the owner knows the row by."

    @classmethod
    def of(
        cls,
        words: str,
        margin: str = "",
        marks: tuple[tuple[int, int], ...] = (),
        below: str = "",
        heading: bool = False,
        key: str = "",
    ) -> Row:
        """A row of any text; marks are dropped where making it harmless moved the words."""
        shown = plain(words)
        kept = marks if len(shown) == len(words) else ()
        return cls(shown, plain(margin), kept, plain(below), heading, key)

    def _hang(self, room: int) -> int:
        """Cells by which the lines after the first stand in: more than its words do, where these begin with blanks."""
        if not self.words.startswith(" ") or room < NARROW // 2:
            return 0
        return len(self.words) - len(self.words.lstrip(" ")) + 2

    def height(self, width: int, margin: int) -> int:
        """Screen lines that it takes in a list of that width, with a margin of so many cells."""
        room = text_width(width, margin)
        return height(self.words, room, self._hang(room)) + (height(self.below, room - 2) if self.below else 0)

    def pieces(self, width: int, margin: int) -> list[Piece]:
        """Its screen lines, in order."""
        room = text_width(width, margin)
        hang = self._hang(room)
        lines = [Piece("words", *piece, hang if piece[0] else 0) for piece in breaks(self.words, room, hang)]
        if self.below:
            lines += [Piece("below", *piece) for piece in breaks(self.below, room - 2)]
        return lines

    def stretches(self, piece: Piece) -> list[tuple[str, bool]]:
        """The words of a screen line in stretches, each with whether it is marked."""
        found, at = [], piece.start
        for start, end in self.marks:
            start, end = max(start, at), min(end, piece.end)
            if start < end:
                found += [(self.words[at:start], False), (self.words[start:end], True)]
                at = end
        return [*found, (self.words[at : piece.end], False)]


def text_width(width: int, margin: int) -> int:
    """Cells left for the text beside the margin."""
    return max(width - (margin if width >= NARROW else 2), 3)


def plain(text: str) -> str:
    """The text on one line, as it may be drawn."""
    if text.isascii() and text.isprintable():
        return text
    return literal(text).plain.replace("\n", " ").replace("\t", " ").replace("\r", " ")
