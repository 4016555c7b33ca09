"""Times that go back: a new day, a new clip, or a slip of the pen."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from worklog_tui.notes.lines import Line

_HALF_DAY, _DAY = 12 * 3600, 24 * 3600
_DIAL_FALL = 4 * 3600
_NEW_CLIP_AT_MOST, _NEW_CLIP_FALL = 30, 60
_OVERLAP = 2  # captions of two speakers may overlap by a breath


def across_midnight(lines: Sequence[Line], start: int | None) -> tuple[list[Line], list[str]]:
    """Wall-clock lines (`at` in seconds of the day) as seconds from the start; back by over 12 h is the next day.

    Without a start the first timed line is the start. A line that goes back by less keeps its place, with a complaint.
    """
    timed = [line for line in lines if line.at is not None]
    begin = start if start is not None else (timed[0].at if timed else 0)
    assert begin is not None
    days, last, raised = 0, begin, []
    for line in lines:
        if line.at is None:
            raised.append(line)
            continue
        if last - line.at > _HALF_DAY:
            days += _DAY
        last = line.at
        raised.append(replace(line, at=line.at + days - begin))
    return in_written_order(raised)


def past_noon(lines: Sequence[Line], start: int | None) -> tuple[list[Line], list[str]]:
    """Times of a twelve-hour dial (`9:40`, `12:30`, `1:15`) as times of the day, counted on at each fall.

    Only where no time is written as on a 24-hour clock: none after 12:59, none with a nought in front.
    """
    timed = [line for line in lines if line.at is not None]
    if any((line.at or 0) >= 13 * 3600 or line.said_at.startswith("0") for line in timed):
        return list(lines), []
    turns, last = 0, start or 0
    raised: list[Line] = []
    complaints: list[str] = []
    for line in lines:
        if line.at is not None and last - line.at > _DIAL_FALL:
            turns += _HALF_DAY
            half = "noon" if turns % _DAY else "midnight"
            complaints.append(f"line {line.number}: the time {line.said_at} is taken as past {half}")
        last = line.at if line.at is not None else last
        raised.append(line if line.at is None else replace(line, at=(line.at + turns) % _DAY))
    return raised, complaints


def across_clips(lines: Sequence[Line]) -> tuple[list[Line], list[str]]:
    """Film lines whose times start again near nought, as in several clips one after the other, counted on."""
    base, last = 0, 0
    raised: list[Line] = []
    complaints: list[str] = []
    for line in lines:
        if line.at is None:
            raised.append(line)
            continue
        if line.at <= _NEW_CLIP_AT_MOST and last - line.at > _NEW_CLIP_FALL:
            base += last
            complaints.append(f"line {line.number}: the times start again at {line.said_at}; taken as a further clip")
        last = line.at
        raised.append(replace(line, at=line.at + base))
    ordered, more = in_written_order(raised)
    return ordered, complaints + more


def in_written_order(lines: Sequence[Line]) -> tuple[list[Line], list[str]]:
    """The lines with times that never fall, so that sorting keeps the written order, and a complaint for each slip.

    A single time that runs ahead of its neighbours is the slip, not all that follow it.
    """
    timed = [index for index, line in enumerate(lines) if line.at is not None]
    ordered, complaints, last = list(lines), [], 0
    for place, index in enumerate(timed):
        line = lines[index]
        at = line.at or 0
        after = lines[timed[place + 1]].at if place + 1 < len(timed) else None
        ahead = after is not None and last <= after < at - _OVERLAP and not _joined_by_more(lines, timed, place)
        if at < last - _OVERLAP or ahead:
            complaints.append(f"line {line.number}: the time {line.said_at} is out of step; the written order is kept")
            at = last
        last = max(at, last)
        ordered[index] = replace(line, at=last)
    return ordered, complaints


def _joined_by_more(lines: Sequence[Line], timed: Sequence[int], place: int) -> bool:
    """Whether the line after next is as late too: then the next one is the slip."""
    if place + 2 >= len(timed):
        return True
    return (lines[timed[place + 2]].at or 0) >= (lines[timed[place]].at or 0)
