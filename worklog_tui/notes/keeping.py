"""An imported session and its notes, with uids that the same text always gives."""

from __future__ import annotations

from collections import Counter
from dataclasses import replace
from datetime import timedelta

from worklog_tui.model.ids import note_uid, session_uid
from worklog_tui.model.moments import Instant
from worklog_tui.model.note import Note, Session
from worklog_tui.notes.lines import Line, ReadSession


def make_notes(read: ReadSession, machine_uid: str) -> tuple[Session, tuple[Note, ...]]:
    """The session and its notes in the written order; importing the same text again gives the same uids.

    Typed lines below a header have an instant; film times say nothing of the day, so captions have a place in the film.
    """
    uid = session_uid(machine_uid, read.header_text, (f"{line.said_at} {line.words}" for line in read.lines))
    session = Session(uid, machine_uid, read.header, source="import")
    seen: Counter[tuple[str, str]] = Counter()
    notes: list[Note] = []
    for arrival, line in enumerate(read.lines):
        same = (line.said_at, line.words)
        made = note_uid(uid, *same, seen[same])
        seen[same] += 1
        note = Note(made, uid, line.words, line.at, line.said_at, read.track, arrival)
        notes.append(_placed(note, line, read))
    return session, tuple(notes)


def _placed(note: Note, line: Line, read: ReadSession) -> Note:
    """The note with its instant or its place in the film."""
    if line.at is None:
        return note
    if read.track == "captions":
        return replace(note, film=line.at)
    if read.header is None:
        return note
    try:
        moment = read.header.moment() + timedelta(seconds=line.at)
        return replace(note, instant=Instant.of(moment, read.header.zone, read.header.known))
    except (OverflowError, ValueError):
        return note
