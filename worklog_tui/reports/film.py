"""The films of a machine: the lines that have a place in one, clip after clip."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, replace

from worklog_tui.model import Fact, Note
from worklog_tui.reports.material import Material
from worklog_tui.reports.when import session_title

_TIME = re.compile(r"(?:(\d{1,3}):)?(\d{1,3}):(\d{2})(?:[.,]\d{1,3})?")


@dataclass(frozen=True, slots=True)
class FilmLine:
    """A note with its place in the film."""

    second: int
    words: str
    facts: tuple[Fact, ...]


@dataclass(frozen=True, slots=True)
class Film:
    """One film, or one clip of a film."""

    title: str
    lines: tuple[FilmLine, ...]
    length: int
    "In seconds: as it was given, else the second of the last line."


class NoFilm(ValueError):
    """There is no film to be told of; the message is a plain sentence."""


def films(of: Material) -> tuple[Film, ...]:
    """One for each clip of each session that was filmed: its captions, or notes whose place in the film is known."""
    facts: dict[str, list[Fact]] = {}
    for _, fact in of.told():
        facts.setdefault(fact.main.note, []).append(fact)
    found = []
    for number, record in enumerate(of.history.sessions, 1):
        placed = [(second, note) for note in record.notes if (second := film_second(note)) is not None]
        if number >= of.first and placed:
            placed.sort(key=lambda row: row[0])
            clips = _clips(placed)
            for part, clip in enumerate(clips, 1):
                lines = tuple(FilmLine(at, n.words, tuple(facts.get(n.uid, ()))) for at, n in clip)
                title = session_title(number, record.session.start) + (f", clip {part}" if len(clips) > 1 else "")
                found.append(Film(title, lines, lines[-1].second))
    return tuple(found)


def _clips(placed: Sequence[tuple[int, Note]]) -> list[list[tuple[int, Note]]]:
    """The notes clip by clip, each with its second in its own clip.

    Captions of several clips in one file begin at nought again; they were counted on when they came in. A time that is
    out of step for a line or two makes no clip.
    """
    shifts = [second - said if (said := _as_written(n)) is not None else None for second, n in placed]
    clips: list[list[tuple[int, Note]]] = [[]]
    start = 0
    for place, (second, note) in enumerate(placed):
        shift = shifts[place]
        if shift is not None and shift > start and all(s is None or s >= shift for s in shifts[place : place + 3]):
            if clips[-1]:
                clips.append([])
            start = shift
        clips[-1].append((second - start, note))
    return clips


def _as_written(note: Note) -> int | None:
    found = _TIME.fullmatch(note.said_at) if note.track == "captions" else None
    return int(found[1] or 0) * 3600 + int(found[2]) * 60 + int(found[3]) if found else None


def film_second(note: Note) -> int | None:
    """Where a note is in the film; None when it is in none, or nothing tells."""
    if note.film is not None:
        return note.film
    return note.at if note.track == "captions" else None


def joined(clips: Sequence[Film], lengths: Sequence[int]) -> Film:
    """Clips one after the other as one film; nothing but their lengths tells how long each runs on."""
    if len(lengths) != len(clips):
        raise NoFilm(f"There are {len(clips)} clips and {len(lengths)} lengths: give the length of each clip.")
    lines: list[FilmLine] = []
    start = 0
    for clip, length in zip(clips, lengths, strict=True):
        if length < clip.length:
            raise NoFilm(f"{clip.title}: something is said after the end that was given for this clip.")
        lines += [replace(line, second=start + line.second) for line in clip.lines]
        start += length
    return Film("", tuple(lines), start)
