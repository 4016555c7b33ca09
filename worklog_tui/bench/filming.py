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
from worklog_tui.logbook.told_signs import signs
from worklog_tui.model import Instant

if TYPE_CHECKING:
    from worklog_tui.bench.desk import Desk
    from worklog_tui.logbook.told_signs import Sign
    from worklog_tui.model import Fact, Machine, Note
    from worklog_tui.notes.lines import ReadSession


def places_in_film(desk: Desk, session: str, text: str) -> Done:
    """Give the notes of a session their places in the film whose captions the text is; the captions are not kept.

    By one act, which can be taken back. CannotAct when the text has no film times or tells nothing of the notes.
    """
    from worklog_tui.notes.reading import read_text

    return _places(desk, session, read_text(text))


def places_from_file(desk: Desk, session: str, path: Path) -> Done:
    """The same from a file of captions."""
    from worklog_tui.notes.files import read_session_file

    return _places(desk, session, read_session_file(path))


def _places(desk: Desk, session: str, read: ReadSession) -> Done:
    if not _captions(read):
        raise CannotAct("These lines have no film times, such as [1:23] or those of a caption file.")
    with store.reading(desk.logbook) as connection:
        known = store.sessions.find(connection, session)
        notes, facts = store.pages.part(connection, session, 0, EVERYTHING)
        machine = store.machines.by_uid(connection, known.machine) if known is not None else None
    told = _read_captions(desk, machine, read) if machine is not None else {}
    found = _told_in(read, told, notes, facts)
    if not found:
        raise CannotAct("None of the captions tells what a note of that session tells.")
    lying = between(found, [(note.uid, note.at) for note in notes])
    with acting(desk) as connection:
        act = sign(desk, connection, "place in film", session, {"places": found | lying})
    more = f"; {len(lying)} more lie{'s' if len(lying) == 1 else ''} between them" if lying else ""
    return Done(act, f"{len(found)} of {len(notes)} notes are told in the film{more}.")


def _captions(read: ReadSession) -> list[tuple[int, str]]:
    """Lines with their seconds in the film; none when they are no captions."""
    return [(line.at, line.words) for line in read.lines if line.at is not None] if read.track == "captions" else []


def _read_captions(desk: Desk, machine: Machine, read: ReadSession) -> dict[int, frozenset[Sign]]:
    """What is read from captions, by their position; nothing when it cannot be read: the words are compared still."""
    from worklog_tui.bench.trying import tried_out

    if len(read.lines) > MOST_READ:
        return {}
    places = [place for place, line in enumerate(read.lines) if line.at is not None]
    try:
        facts = tried_out(desk, machine, read).facts
    except Exception:  # a grammar that does not load
        return {}
    return {nth: signs(facts[place]) for nth, place in enumerate(places) if place in facts}


def _told_in(
    read: ReadSession, told: dict[int, frozenset[Sign]], notes: Sequence[Note], facts: Sequence[Fact]
) -> dict[str, int]:
    """For each of the notes that the captions tell, its second in the film."""
    of_note: dict[str, list[Fact]] = {}
    for fact in facts:
        of_note.setdefault(fact.main.note, []).append(fact)
    known = {uid: signs(of) for uid, of in of_note.items()}
    return film_places([(note.uid, note.words) for note in notes], _captions(read), known, told)


EVERYTHING = 1_000_000
"Notes; more than any session has."
MOST_READ = 5_000
"Captions (a film of four hours); of more than these only the words are compared."
LOOKED_AT = 12
"So many sessions of a machine, the latest, are compared with the captions of a film."
TOLD, TOLD_SHARE = 2, 0.2
"So many notes, and such a share of a session's notes, must be told in the captions of its film (judgement)."
TOLD_MOST, TOLD_MANY, NEW_MOST = 0.5, 4, 0.5
"""Where less than that share of the notes is told, or fewer of them, at most such a share of what the film tells may
be new: a later film of the same machine talks of the same parts (judgement)."""


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
    fresh: tuple[int, ...] = ()
    "Positions of the captions that tell something which no note of it tells."


def film_of(desk: Desk, machine_name: str, read: ReadSession) -> FilmOf | None:
    """The session that was worked on in the film whose captions these are; None when they tell of none.

    Sessions that are captions themselves are left out.
    """
    if not _captions(read):
        return None
    with store.reading(desk.logbook) as connection:
        machine = named(connection, machine_name)
        lengths = [*enumerate(store.pages.lengths(connection, machine.uid), 1)][-LOOKED_AT:]
        found = [
            (session, number, *store.pages.part(connection, session.uid, 0, count))
            for number, (session, count) in lengths
        ]
    signs_told = _read_captions(desk, machine, read) if any(found) else {}
    best: FilmOf | None = None
    for session, number, everything, facts in found:
        notes = [note for note in everything if note.track != "captions"]
        told = len(_told_in(read, signs_told, notes, facts)) if notes else 0
        if told >= max(TOLD, TOLD_SHARE * len(notes)) and (best is None or told >= best.told):
            fresh = _fresh(read, signs_told, facts)
            few = told < max(TOLD_MOST * len(notes), TOLD_MANY)
            if few and len(fresh) > NEW_MOST * (len(fresh) + told):
                continue
            best = FilmOf(session.uid, number, told, len(notes), session.start, fresh)
    return best


def _fresh(read: ReadSession, told: dict[int, frozenset[Sign]], facts: Sequence[Fact]) -> tuple[int, ...]:
    known = signs(facts)
    places = [place for place, line in enumerate(read.lines) if line.at is not None]
    return tuple(places[nth] for nth, found in sorted(told.items()) if found and not found & known)


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
