"""Lines with the time of a film or of a recording in front: `[1:23] text`, `0:02 text`, a time above its text."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace

from worklog_tui.notes.lines import Line
from worklog_tui.notes.stamps import is_label, lead, seconds, written
from worklog_tui.notes.wrapped import continues, page_width

_INLINE = re.compile(r"\[\s*((?:\d{1,3}:)?\d{0,3}:[0-5]\d(?:[.,]\d{1,3})?)\s*\]")
_BEHIND = re.compile(
    r"\(\s*((?:\d{1,3}:)?\d{0,3}:[0-5]\d)(?:\s*(?:[-–—]|to)\s*(?:\d{1,3}:)?\d{0,3}:[0-5]\d)?\s*\)[;,.]?"
)

_SPEAKER = re.compile(
    r"\s*(?:Speaker \d{1,2}|[A-Z][\w.'-]{0,30}(?: [A-Z][\w.'-]{0,30}){0,2}(?=:?(?:\s{2}|\s*[\[(])))"
    r":?\s*[\[(]?((?:\d{1,2}:)?\d{1,2}:[0-5]\d)[\])]?:?\s*"
)


def without_speakers(rows: Sequence[tuple[int, str]]) -> Sequence[tuple[int, str]]:
    """The rows with a lone time for each `Speaker 1  0:04`, where such rows head the talk throughout."""
    filled = [text for _, text in rows if text.strip()]
    heads = sum(_SPEAKER.fullmatch(text) is not None for text in filled)
    if heads < 2 or _SPEAKER.fullmatch(filled[0]) is None or 4 * heads < len(filled):
        return rows
    return [(number, found[1] if (found := _SPEAKER.fullmatch(text)) else text) for number, text in rows]


def timed_in_front(rows: Sequence[tuple[int, str]]) -> tuple[list[Line], list[str]]:
    """Lines from rows (number, text); a row without a time goes on with the one above or stands without one."""
    width = page_width([text for _, text in rows])
    lines: list[Line] = []
    complaints: list[str] = []
    before, waiting = "", False
    for number, text in rows:
        found = lead(text)
        if found is not None:
            lines.append(Line(found.at, found.said, found.rest, number))
            waiting = not found.rest
        elif waiting and text.strip():
            _take_below(lines, text)
        elif text.strip() and lines and continues(text, before, width, spoken=True):
            lines[-1] = replace(lines[-1], words=f"{lines[-1].words} {text.strip()}")
        elif text.strip():
            lines.append(Line(None, "", text.strip(), number))
            complaints.append(f"line {number}: no time in front; kept without one")
        before = text if text.strip() or not waiting else before
    return [part for line in lines for part in _inline(line) if part.words], complaints


def _take_below(lines: list[Line], text: str) -> None:
    """Put the text below a lone time to it, leaving out the same time in words."""
    line = lines[-1]
    if not line.words and line.at is not None and is_label(text, line.at):
        return
    lines[-1] = replace(line, words=f"{line.words} {text.strip()}".strip())


def _inline(line: Line) -> list[Line]:
    """A line with further times inside, in parts: `[0:02] set the gap [0:04] to twelve`."""
    parts: list[Line] = []
    begin, at, said = 0, line.at, line.said_at
    for found in _INLINE.finditer(line.words):
        parts.append(Line(at, said, line.words[begin : found.start()].strip(), line.number))
        begin, at, said = found.end(), seconds(found[1]), written(found[1])
    parts.append(Line(at, said, line.words[begin:].strip(), line.number))
    return parts


def timed_below(rows: Sequence[tuple[int, str]]) -> list[Line]:
    """Lines whose time stands alone below their text."""
    lines: list[Line] = []
    texts: list[str] = []
    first = 0
    for number, text in rows:
        found = lead(text)
        if found is not None and not found.rest:
            lines.append(Line(found.at, found.said, " ".join(texts), first or number))
            texts, first = [], 0
        elif text.strip():
            texts.append(text.strip())
            first = first or number
    if texts:
        lines.append(Line(None, "", " ".join(texts), first))
    return [line for line in lines if line.words]


def timed_behind(rows: Sequence[tuple[int, str]]) -> list[Line]:
    """Lines with times in round brackets behind their words: `checks the cap (1:24); then the cup (1:42)`."""
    lines: list[Line] = []
    for number, text in rows:
        begin = 0
        for found in _BEHIND.finditer(text):
            lines.append(Line(seconds(found[1]), _full(written(found[1])), text[begin : found.start()].strip(), number))
            begin = found.end()
        lines.append(Line(None, "", text[begin:].strip(), number))
    return [line for line in lines if line.words]


def has_time_behind(text: str) -> bool:
    """Whether a time in round brackets stands behind some words of the line."""
    found = _BEHIND.search(text)
    return found is not None and bool(text[: found.start()].strip())


def _full(time: str) -> str:
    return f"0{time}" if time.startswith(":") else time
