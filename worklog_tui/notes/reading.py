"""The text of a session, recognised by its shape."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from datetime import timedelta

from worklog_tui.notes.cleaning import sanitise
from worklog_tui.notes.cues import has_arrows, is_webvtt, read_arrows, read_webvtt
from worklog_tui.notes.cutting import LONGEST, cut_long
from worklog_tui.notes.film_lines import has_time_behind, timed_behind, timed_below, timed_in_front, without_speakers
from worklog_tui.notes.header import Header, looks_like_header, read_header
from worklog_tui.notes.lines import Line, ReadSession
from worklog_tui.notes.order import across_clips, across_midnight, past_noon
from worklog_tui.notes.prose import untimed
from worklog_tui.notes.rolling import unroll
from worklog_tui.notes.segments import read_segments
from worklog_tui.notes.stamps import Lead, lead
from worklog_tui.notes.wall_lines import timed_by_clock

Rows = Sequence[tuple[int, str]]
Lines = tuple[list[Line], list[str]]

_FILM_BEGINS_BEFORE = 120  # seconds: a film's first line comes early, a working day's seldom just after midnight
_EARLY = 300  # seconds that the first typed line may lie before the header's time
_LATE = 4 * 3600  # and behind it


def read_text(text: str) -> ReadSession:
    """Any text as a session: captions, timed lines, a paste of either, or prose. It never raises."""
    text = sanitise(text)
    if is_webvtt(text):
        return _film(None, read_webvtt(text), [])
    segments = read_segments(text)
    if segments is not None:
        return _film(None, (segments, []), [])
    header, rows, complaints = _header(list(enumerate(text.split("\n"), start=1)))
    rows = without_speakers(rows)
    if has_arrows(rows):
        return _film(header, read_arrows(rows), complaints)
    leads = [found for _, row in rows if (found := lead(row)) is not None]
    read = _shape(rows, leads)
    if read is None:
        return _done(header, "typed", (untimed(rows), []), complaints)
    if read is timed_by_clock and not _is_film(leads, header):
        lines, more = timed_by_clock(rows)
        lines, turns = past_noon(lines, _second_of_day(header))
        ordered, slips = across_midnight(lines, _second_of_day(header))
        return _done(_begun(header, lines), "typed", (ordered, more + turns + slips), complaints)
    return _film(header, timed_in_front(rows) if read is timed_by_clock else read(rows), complaints)


def _header(rows: list[tuple[int, str]]) -> tuple[Header | None, Rows, list[str]]:
    """The header if the first words are one, the rows that follow, and what is wrong with it."""
    first = next((index for index, (_, text) in enumerate(rows) if text.strip()), None)
    if first is None or not looks_like_header(rows[first][1]):
        return None, rows, []
    number, text = rows[first]
    header = read_header(text)
    if header is None:
        wish = "this header gives no day that can be read; write it as session 2031-04-12 14:05"
        return None, rows, [f"line {number}: {wish}"]
    left = [(number, header.rest)] if header.rest else []
    more = "a further session begins here; paste each one by itself to keep its date"
    further = [f"line {row}: {more}" for row, line in rows[first + 1 :] if looks_like_header(line)]
    return header, [*left, *rows[first + 1 :]], further


def _shape(rows: Rows, leads: Sequence[Lead]) -> Callable[[Rows], Lines] | None:
    """The reader for the rows; None for prose."""
    filled = [text for _, text in rows if text.strip()]
    alone = [found for found in leads if not found.rest]
    if alone and 2 * len(alone) > len(leads) and lead(filled[0]) is None and lead(filled[-1]) is not None:
        return lambda these: (timed_below(these), [])
    if 5 * len(leads) >= 2 * len(filled) > 0 or (len(leads) > 1 and lead(filled[0]) is not None):
        return timed_in_front if 2 * sum(found.bracketed for found in leads) >= len(leads) else timed_by_clock
    behind = sum(map(has_time_behind, filled))
    if behind and 2 * behind >= len(filled):
        return lambda these: (timed_behind(these), [])
    return None


def _is_film(leads: Sequence[Lead], header: Header | None) -> bool:
    """Whether bare times are those of a film and not of the day."""
    if any(found.parts == 2 and found.at > 24 * 60 for found in leads):
        return True
    first = leads[0]
    if first.parts == 3:
        return first.at < _FILM_BEGINS_BEFORE
    start = _second_of_day(header)
    if start is not None:
        hands = (0, 12) if 60 <= first.at < 13 * 60 else (0,)  # a dial shows 1:05 for 13:05, and never 0:05
        if any((first.at * 60 + hour * 3600 - start + _EARLY) % (24 * 3600) <= _EARLY + _LATE for hour in hands):
            return False
    return first.at < _FILM_BEGINS_BEFORE


def _second_of_day(header: Header | None) -> int | None:
    if header is None or not header.timed:
        return None
    return header.start.hour * 3600 + header.start.minute * 60 + header.start.second


def _begun(header: Header | None, lines: Sequence[Line]) -> Header | None:
    """The header with the first line's time of day where it gives the day only."""
    at = next((line.at for line in lines if line.at is not None), None)
    if header is None or header.timed or at is None:
        return header
    return Header(header.start + timedelta(seconds=at), header.text, True)


def _film(header: Header | None, read: Lines, complaints: list[str]) -> ReadSession:
    lines, more = read
    ordered, slips = across_clips(unroll(lines))
    return _done(header, "captions", (ordered, more + slips), complaints)


def _done(header: Header | None, track: str, read: Lines, complaints: list[str]) -> ReadSession:
    lines, more = read
    long = [f"line {line.number}: it is very long and is kept in pieces" for line in lines if len(line.words) > LONGEST]
    told = sorted(complaints + more + long, key=lambda said: int(said.split()[1].rstrip(":")))
    instant = header.instant() if header is not None else None
    return ReadSession(instant, header.text if header is not None else "", track, tuple(cut_long(lines)), tuple(told))
