"""Plain prose without times: a note for each line or paragraph, long ones in sentences."""

from __future__ import annotations

from collections.abc import Sequence

from worklog_tui.notes.cutting import pieces
from worklog_tui.notes.lines import Line
from worklog_tui.notes.wrapped import continues, page_width

_LONGEST = 400  # characters of a prose note: a few sentences, so that what is found in it can be pointed at


def untimed(rows: Sequence[tuple[int, str]]) -> list[Line]:
    """Lines from rows (number, text); broken paragraphs are put together again."""
    width = page_width([text for _, text in rows])
    paragraphs: list[tuple[int, list[str]]] = []
    before = ""
    for number, text in rows:
        if text.strip() and paragraphs and width and continues(text, before, width):
            paragraphs[-1][1].append(text.strip())
        elif text.strip():
            paragraphs.append((number, [text.strip()]))
        before = text
    return [Line(None, "", piece, number) for number, texts in paragraphs for piece in _sentences(" ".join(texts))]


def _sentences(words: str) -> list[str]:
    """Pieces of a few sentences where there are sentence marks, else the words whole."""
    if not any(mark in words for mark in (". ", "! ", "? ")):
        return [words]
    return list(pieces(words, _LONGEST))
