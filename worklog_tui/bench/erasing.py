"""Erasing: the words of a note are gone for good, here and in every logbook that is merged with this one."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from typing import TYPE_CHECKING

from worklog_tui import store
from worklog_tui.bench.acting import CannotAct, Done, acting, sign_each
from worklog_tui.bench.history import history
from worklog_tui.bench.lines import lines
from worklog_tui.bench.note_acts import every_note
from worklog_tui.model.note import ERASED

if TYPE_CHECKING:
    from worklog_tui.bench.desk import Desk
    from worklog_tui.model import Note

ELSEWHERE = "Backups, copies and files that were published before still hold them."
"What erasing does not reach, in a plain sentence."


def to_erase(desk: Desk, machine_name: str, said: str) -> list[Note]:
    """The lines that are meant, those that were struck out too; see `lines.lines` for how they are named.

    CannotAct when there is no such line, or all of them are erased.
    """
    known = history(desk, machine_name)
    with store.reading(desk.logbook) as connection:
        records = tuple(
            replace(one, notes=tuple(store.sessions.notes_of(connection, one.session.uid, with_struck=True)))
            for one in known.sessions
        )
    numbered = said.count("/") > 1  # the third number counts what the timeline prints
    found = lines(known if numbered else replace(known, sessions=records), said)
    return _with_words(found)


def erase_notes(desk: Desk, notes: Sequence[str]) -> Done:
    """Erase the words of notes (their uids) for good; a mark stays that something was there. It cannot be undone."""
    with acting(desk) as connection:
        found = _with_words(every_note(connection, notes))
        act = sign_each(desk, connection, "erase", [note.uid for note in found])[-1]
    count = "One note was" if len(found) == 1 else f"{len(found)} notes were"
    return Done(act, f"{count} erased for good. {ELSEWHERE}{_scoured(desk)}")


def _with_words(notes: Sequence[Note]) -> list[Note]:
    found = [note for note in notes if note.words != ERASED]
    if not found:
        raise CannotAct("That is erased already.")
    return found


def _scoured(desk: Desk) -> str:
    """Take the words out of the unused parts of the file too; says so when that was not possible."""
    try:
        store.scour(desk.logbook, desk.patience)
    except store.Refused as fault:
        return f" Unused parts of the file may hold them until the next erasing: {fault}"
    return ""
