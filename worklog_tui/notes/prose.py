"""Plain prose without times: a note for each line or paragraph, long ones in sentences."""

from __future__ import annotations

from collections.abc import Sequence

from worklog_tui.notes.cutting import pieces
from worklog_tui.notes.lines import Line
from worklog_tui.notes.wrapped import continues, page_width

_LONGEST = 400  # characters of a prose note: a few sentences, so that what is found in it can be pointed at


def untimed(rows: Sequence[tuple[int, str]]) -> list[Line]:
    """Lines from rows (number, text); broken paragraphs are put together again.

    Where no sentence ends for longer than a note is, nothing tells paragraphs from lines: each line stays a note.
    """
    width = page_width([text for _, text in rows])
    paragraphs: list[tuple[int, list[str]]] = []
    before = ""
    for number, text in rows:
        if text.strip() and paragraphs and width and continues(text, before, width):
            paragraphs[-1][1].append(text.strip())
        elif text.strip():
            paragraphs.append((number, [text.strip()]))
        before = text
    whole = [part for number, texts in paragraphs for part in _whole(number, texts)]
    return [Line(None, "", piece, number) for number, words in whole for piece in _sentences(words)]


def _whole(number: int, texts: list[str]) -> list[tuple[int, str]]:
    """A paragraph put together, with the number of its first line; or its lines, when it is none."""
    words = " ".join(texts)
    if len(words) > _LONGEST and not _has_sentences(words):
        return [(number + place, text) for place, text in enumerate(texts)]
    return [(number, words)]


def _sentences(words: str) -> list[str]:
    """Pieces of a few sentences where there are sentence marks, else the words whole."""
    return list(pieces(words, _LONGEST)) if _has_sentences(words) else [words]


def _has_sentences(words: str) -> bool:
    return any(mark in words for mark in (". ", "! ", "? "))
