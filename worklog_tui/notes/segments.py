"""Transcripts as JSON: a list of segments with their text and start in seconds."""

from __future__ import annotations

import json
from collections.abc import Iterator
from typing import Any

from worklog_tui.model.moments import clock
from worklog_tui.notes.cleaning import sanitise
from worklog_tui.notes.lines import Line

_STARTS = ("start", "offset", "from", "time", "startTime", "start_time", "begin")
_WORDS = ("text", "words", "content", "body", "transcript")


def read_segments(text: str) -> list[Line] | None:
    """The lines of a JSON transcript, numbered by segment; None when the text is none."""
    if text.lstrip()[:1] not in ("{", "["):
        return None
    try:
        found = json.loads(text)
    except (ValueError, RecursionError):
        return None
    lines = [line for number, segment in enumerate(_segments(found), start=1) for line in _line(segment, number)]
    return lines or None


def _segments(found: Any) -> Iterator[dict[str, Any]]:
    """The segments of a list, or of the first list of an object that holds any."""
    if isinstance(found, dict):
        found = next((value for value in found.values() if isinstance(value, list) and value), [])
    if isinstance(found, list):
        yield from (segment for segment in found if isinstance(segment, dict))


def _line(segment: dict[str, Any], number: int) -> list[Line]:
    words = next((segment[key] for key in _WORDS if isinstance(segment.get(key), str)), "")
    words = " ".join(sanitise(words).split())
    at = next((start for key in _STARTS if (start := _whole(segment.get(key))) is not None), None)
    if not words:
        return []
    return [Line(at, "" if at is None else clock(at), words, number)]


def _whole(value: Any) -> int | None:
    """Seconds floored, of a number or of a number in quotes; None for anything else."""
    try:
        at = int(float(value)) if isinstance(value, (int, float, str)) else -1
    except (ValueError, OverflowError):
        return None
    return at if 0 <= at < 10**9 else None
