"""Typed lines with the time of day in front: `14:05 pulled head`."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from worklog_tui.notes.lines import Line
from worklog_tui.notes.stamps import Lead, half_day, lead
from worklog_tui.notes.wrapped import continues, page_width


def timed_by_clock(rows: Sequence[tuple[int, str]]) -> tuple[list[Line], list[str]]:
    """Lines from rows (number, text), `at` in seconds of the day; below a lone time each row is a note at that time."""
    width = page_width([text for _, text in rows])
    halves = _speaks_in_half_days(rows)
    lines: list[Line] = []
    complaints: list[str] = []
    before, above = "", None
    for number, text in rows:
        found = lead(text)
        stamp = _of_day(found, number, halves) if found is not None and not found.bracketed else None
        if stamp is not None:
            above = None if stamp.words else stamp
            lines += [stamp] if stamp.words else []
        elif text.strip() and above is not None:
            lines.append(replace(above, words=text.strip(), number=number))
        elif text.strip() and lines and continues(text, before, width):
            lines[-1] = replace(lines[-1], words=f"{lines[-1].words} {text.strip()}")
        elif text.strip():
            lines.append(Line(None, "", text.strip(), number))
            complaints.append(f"line {number}: no time in front; kept without one")
        before = text
    return lines, complaints


def _of_day(found: Lead, number: int, halves: bool) -> Line | None:
    """The line of a time of day; None when no day has that time."""
    half = half_day(found) if halves and found.parts == 2 else None
    if half is not None:
        said, minutes, words = half
        return Line(minutes * 60, said, words, number)
    at = found.at * 60 if found.parts == 2 else found.at
    return Line(at, found.said, found.tail, number) if at <= 24 * 3600 else None


def _speaks_in_half_days(rows: Sequence[tuple[int, str]]) -> bool:
    """Whether am or pm follows most times, so that `9:05 am going` is not taken for one."""
    leads = [found for _, text in rows if (found := lead(text)) is not None and found.parts == 2]
    return bool(leads) and 3 * sum(half_day(found) is not None for found in leads) >= 2 * len(leads)
