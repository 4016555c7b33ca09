"""Plain text for a terminal: wrapped lines, columns and headings, in letters of one width."""

from __future__ import annotations

import textwrap
import unicodedata
from collections.abc import Iterable, Sequence


def wrapped(text: str, width: int, first: str = "", rest: str = "") -> list[str]:
    """The text in lines of at most `width` columns, with what stands before the first and the other lines."""
    whole = max(width, len(first) + 12)
    below = rest or " " * len(first)
    found = textwrap.wrap(
        " ".join(text.split()), whole, initial_indent=first, subsequent_indent=below, break_on_hyphens=False
    )
    return found or [first.rstrip()]


def heading(text: str) -> list[str]:
    """A heading with a line below it."""
    return [text, "-" * columns(text)]


def columns(text: str) -> int:
    """How many columns of a terminal the text takes (Unicode Standard Annex 11)."""
    return sum(0 if unicodedata.combining(c) else 2 if unicodedata.east_asian_width(c) in "WF" else 1 for c in text)


def table(head: Sequence[str], rows: Iterable[Sequence[str]], width: int) -> list[str]:
    """Rows in columns; the widest column gives way when they do not fit."""
    body = [list(row) for row in rows]
    if not body:
        return []
    whole = [list(head), *body]
    sizes = [max(columns(row[n]) for row in whole) for n in range(len(head))]
    over = sum(sizes) + 2 * (len(sizes) - 1) - width
    while over > 0 and max(sizes) > 8:
        sizes[sizes.index(max(sizes))] -= 1
        over -= 1
    return [_row(row, sizes) for row in whole]


def widest(rows: Sequence[Sequence[str]]) -> int:
    """The columns that a table of the rows takes."""
    sizes = [max(columns(row[n]) for row in rows) for n in range(len(rows[0]))] if rows else [0]
    return sum(sizes) + 2 * (len(sizes) - 1)


def _row(row: Sequence[str], sizes: Sequence[int]) -> str:
    cells = [_cell(text, size) for text, size in zip(row, sizes, strict=True)]
    return "  ".join(cells).rstrip()


def _cell(text: str, size: int) -> str:
    if columns(text) > size:
        while columns(text) > size - 1:
            text = text[:-1]
        text += "…"
    return text + " " * (size - columns(text))
