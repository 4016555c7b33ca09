"""Film and work: when a film was shot, and where in it a note of the work is told."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

from worklog_tui import store
from worklog_tui.bench.acting import CannotAct, Done, acting, sign
from worklog_tui.bench.machines import named
from worklog_tui.bench.session_acts import date_session
from worklog_tui.logbook.film_match import between, film_places
from worklog_tui.model import Instant

if TYPE_CHECKING:
    from worklog_tui.bench.desk import Desk
    from worklog_tui.notes import ReadSession


def places_in_film(desk: Desk, session: str, text: str) -> Done:
    """Give the notes of a session their places in the film whose captions the text is; the captions are not kept.

    By one act, which can be taken back. CannotAct when the text has no film times or tells nothing of the notes.
    """
    from worklog_tui.notes import read_text

    return _places(desk, session, read_text(text))


def places_from_file(desk: Desk, session: str, path: Path) -> Done:
    """The same from a file of captions."""
    from worklog_tui.notes import read_session_file

    return _places(desk, session, read_session_file(path))


def _places(desk: Desk, session: str, read: ReadSession) -> Done:
    captions = [(line.at, line.words) for line in read.lines if line.at is not None]
    if not captions or read.track != "captions":
        raise CannotAct("These lines have no film times, such as [1:23] or those of a caption file.")
    with store.reading(desk.logbook) as connection:
        notes = store.sessions.notes_of(connection, session)
    found = film_places([(note.uid, note.words) for note in notes], captions)
    if not found:
        raise CannotAct("None of the captions tells what a note of that session tells.")
    lying = between(found, [(note.uid, note.at) for note in notes])
    with acting(desk) as connection:
        act = sign(desk, connection, "place in film", session, {"places": found | lying})
    more = f"; {len(lying)} more lie{'s' if len(lying) == 1 else ''} between them" if lying else ""
    return Done(act, f"{len(found)} of {len(notes)} notes are told in the film{more}.")


LOOKED_AT = 12
"So many sessions of a machine, the latest, are compared with the captions of a film."
TOLD, TOLD_SHARE = 2, 0.2
"So many notes, and such a share of a session's notes, must be told in the captions of its film (judgement)."


@dataclass(frozen=True, slots=True)
class FilmOf:
    """The session that captions tell."""

    session: str
    "Its uid."
    number: int
    "Which one of the machine's, from 1."
    told: int
    "So many of its notes are told."
    notes: int
    start: Instant | None = None
    "When it began: the film was shot then."


def film_of(desk: Desk, machine_name: str, read: ReadSession) -> FilmOf | None:
    """The session that was worked on in the film whose captions these are; None when they tell of none.

    Sessions that are captions themselves are left out.
    """
    captions = [(line.at, line.words) for line in read.lines if line.at is not None]
    if not captions or read.track != "captions":
        return None
    with store.reading(desk.logbook) as connection:
        lengths = store.pages.lengths(connection, named(connection, machine_name).uid)
        found = [
            (session, number, store.sessions.notes_of(connection, session.uid))
            for number, (session, _) in enumerate(lengths, 1)
        ][-LOOKED_AT:]
    best: FilmOf | None = None
    for session, number, everything in found:
        notes = [(note.uid, note.words) for note in everything if note.track != "captions"]
        told = len(film_places(notes, captions)) if notes else 0
        if told >= max(TOLD, TOLD_SHARE * len(notes)) and (best is None or told >= best.told):
            best = FilmOf(session.uid, number, told, len(notes), session.start)
    return best


def undated(desk: Desk, machine_uid: str) -> list[str]:
    """The sessions of a machine, by uid, of which it is not known when they were; to be asked once."""
    with store.reading(desk.logbook) as connection:
        found = store.pages.lengths(connection, machine_uid)
    return [session.uid for session, _ in found if session.start is None]


def shot_on(desk: Desk, sessions: Sequence[str], start: Instant | None) -> int:
    """Say of sessions without a date when they were shot; gives how many were dated. Film time stays film time."""
    if start is not None:
        for session in sessions:
            date_session(desk, session, start)
    return len(sessions) if start is not None else 0
