"""Caption files: WebVTT (W3C) through webvtt-py, SubRip and everything else with arrows by a reader of our own.

SubRip has no standard: numbers may be missing, commas or points, blank lines inside a text.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from typing import TYPE_CHECKING

from worklog_tui.model.moments import clock
from worklog_tui.notes.cleaning import sanitise
from worklog_tui.notes.lines import Line
from worklog_tui.notes.stamps import seconds

if TYPE_CHECKING:
    from webvtt.models import Caption

_ARROW = re.compile(
    r"\s*((?:\d{1,10}:)?\d{1,3}:\d{1,2}(?:[.,]\d{1,9})?)\s*-{1,3}>\s*(?:\d{1,10}:)?\d{1,3}:\d{1,2}(?:[.,]\d{1,9})?(?!\d)"
)
_TAG = re.compile(r"</?[a-zA-Z][^<>\n]{0,200}>|</?>|<\s?[\d:.]{4,20}\s?>|\{\\[^{}\n]{0,200}\}")
_ENTITY = re.compile(r"&#?\w{1,31};")
_BLOCKS_ASIDE = ("NOTE", "STYLE", "REGION")


def is_webvtt(text: str) -> bool:
    """Whether the text begins as WebVTT does."""
    return re.match(r"WEBVTT(?![^\s])", text) is not None


def has_arrows(rows: Sequence[tuple[int, str]]) -> bool:
    """Whether at least one line is the times of a caption."""
    return any("->" in text and _ARROW.match(text) for _, text in rows)


def read_webvtt(text: str) -> tuple[list[Line], list[str]]:
    """The captions of a WebVTT text; what the library refuses is read by our own reader."""
    import webvtt

    rows = list(enumerate(text.split("\n"), start=1))
    try:
        captions = webvtt.from_string(text).captions
        if not captions:
            return read_arrows(rows)
        return _placed(rows, captions)
    except Exception:  # whatever a library makes of odd text, the person gets the words
        return read_arrows(rows)


def _placed(rows: Sequence[tuple[int, str]], captions: Sequence[Caption]) -> tuple[list[Line], list[str]]:
    """The library's captions with their line numbers, and the words of those that it left out, without a time."""
    lines: list[Line] = []
    complaints: list[str] = []
    place, begun = 0, [index for index, (_, text) in enumerate(rows) if "-->" in text]
    for caption in captions:
        while place < len(begun) and not _starts_at(rows[begun[place]][1], caption.start_in_seconds):
            _leave_out(rows, begun, place, lines, complaints)
            place += 1
        number = rows[begun[place]][0] if place < len(begun) else 1
        lines += _cue(caption.start_in_seconds, list(caption.lines), number)
        place += 1
    for left in range(place, len(begun)):
        _leave_out(rows, begun, left, lines, complaints)
    return lines, complaints


def _starts_at(row: str, start: int) -> bool:
    found = _ARROW.match(row)
    return found is not None and seconds(found[1]) == start


def _leave_out(
    rows: Sequence[tuple[int, str]], begun: Sequence[int], place: int, lines: list[Line], complaints: list[str]
) -> None:
    """Keep the words below an unreadable caption time without one."""
    first = begun[place]
    end = begun[place + 1] if place + 1 < len(begun) else len(rows)
    texts: list[str] = []
    for _, text in rows[first + 1 : end]:
        if not text.strip():
            break
        texts.append(text)
    words = _plain(texts)
    if words:
        complaints.append(f"line {rows[first][0]}: the time of this caption could not be read; kept without one")
        lines.append(Line(None, "", words, rows[first][0]))


def read_arrows(rows: Sequence[tuple[int, str]]) -> tuple[list[Line], list[str]]:
    """The captions of SubRip and its relatives: times with an arrow, their text below up to the next times."""
    lines: list[Line] = []
    complaints: list[str] = []
    at: int | None = None
    first, begun, texts = 0, 1, list[str]()
    for number, text in [*rows, (0, "0:00 --> 0:00")]:
        found = _ARROW.match(text) if "->" in text else None
        if found is None:
            first = first or number
            texts.append(text)
            continue
        if number:
            texts = _without_number(texts, at is not None, begun)
            begun += 1
        made = _cue(at, texts, first) if at is not None else _aside(texts, first, complaints)
        lines += made
        at, first, texts = seconds(found[1]), number, _same_row(text[found.end() :])
    return lines, complaints


def _same_row(rest: str) -> list[str]:
    """Words behind the times on their own row; settings such as `line:40%` and `X1:40` are none."""
    words = [word for word in rest.split() if not re.fullmatch(r"[A-Za-z]\w*:\S+", word)]
    return [" ".join(words)] if words else []


def _without_number(texts: list[str], in_cue: bool, expected: int) -> list[str]:
    """The text without the number of the caption that follows: the next one, or a number below a blank line."""
    kept = list(texts)
    while kept and not kept[-1].strip():
        kept.pop()
    if not kept or not kept[-1].strip().isdecimal():
        return kept
    alone = not kept[-2].strip() if len(kept) > 1 else not in_cue
    return kept[:-1] if alone or (len(kept) > 1 and kept[-1].strip() == str(expected)) else kept


def _aside(texts: list[str], first: int, complaints: list[str]) -> list[Line]:
    """The words before the first caption: kept without a time, unless they are the format's own."""
    words = _plain([text for text in texts if not text.startswith(("WEBVTT", *_BLOCKS_ASIDE))])
    if not words:
        return []
    complaints.append(f"line {max(first, 1)}: no time in front; kept without one")
    return [Line(None, "", words, max(first, 1))]


def _cue(at: int, texts: Sequence[str], number: int) -> list[Line]:
    """One caption as lines that may still repeat the one before; none when it is empty."""
    words = [plain for text in texts if (plain := _plain([text]))]
    return [Line(at, clock(at), "\n".join(words), number)] if words else []


def _sign(entity: re.Match[str]) -> str:
    import html  # two thousand names: not for talk without any

    return html.unescape(entity[0])


def _plain(texts: Sequence[str]) -> str:
    """The words of caption lines without tags, with signs for entities (cleaned again: they may be controls)."""
    joined = " ".join(text.strip() for text in texts if text.strip())
    words = _ENTITY.sub(_sign, _TAG.sub("", joined))
    return " ".join(sanitise(words).split())
