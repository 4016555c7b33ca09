"""Long text in pieces: cut at the ends of sentences, else at spaces, else where the limit falls."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from dataclasses import replace

from worklog_tui.notes.lines import Line

LONGEST = 4000
"Characters of one note at most."

_SENTENCE_END = re.compile(r"[.!?;…]+[\"'”’)]*\s+")


def pieces(words: str, limit: int = LONGEST) -> Iterator[str]:
    """The words in pieces of at most `limit` characters; nothing but white space between them is lost."""
    begin, size = 0, len(words)
    while size - begin > limit:
        cut = _last_sentence_end(words, begin, begin + limit)
        if cut is None:
            space = words.rfind(" ", begin + 1, begin + limit)
            cut = space if space > begin else begin + limit
        piece = words[begin:cut].strip()
        if piece:
            yield piece
        begin = cut
    if words[begin:].strip():
        yield words[begin:].strip()


def cut_long(lines: Iterable[Line]) -> Iterator[Line]:
    """The lines, those over the limit as several with the same time."""
    for line in lines:
        if len(line.words) <= LONGEST:
            yield line
        else:
            yield from (replace(line, words=piece) for piece in pieces(line.words))


def _last_sentence_end(words: str, begin: int, end: int) -> int | None:
    cut = None
    for found in _SENTENCE_END.finditer(words, begin, end):
        cut = found.end()
    return cut
