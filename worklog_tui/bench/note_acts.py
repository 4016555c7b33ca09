"""Acts on the words of notes: edit, strike out, put a mis-heard word right. Every wording is kept."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from worklog_tui import store
from worklog_tui.bench.acting import CannotAct, Done, acting, sign
from worklog_tui.model import Revision
from worklog_tui.model.note import ERASED

if TYPE_CHECKING:
    from worklog_tui.bench.desk import Desk
    from worklog_tui.model import Note

SHOWN = 60
"Characters of a note that a sentence about it repeats."


def edit_note(desk: Desk, note: str, words: str) -> Done:
    """Give a note (its uid) other words; it is read again, and what a person corrected about it stays."""
    from worklog_tui.notes.cleaning import sanitise

    said = " ".join(sanitise(words).split())
    if not said:
        raise CannotAct("There are no words to put in its place; strike the note out instead.")
    with acting(desk) as connection:
        (old,) = known_notes(connection, [note])
        if old.words == said:
            raise CannotAct("The note says that already.")
        act = sign(desk, connection, "edit note", note, {"words": said})
    return Done(act, f"Note edited; it now says {short(said)}.")


def strike_notes(desk: Desk, notes: Sequence[str]) -> Done:
    """Strike one note or a run of them out: they are kept, but neither read nor shown; undo brings them back."""
    with acting(desk) as connection:
        found = [note for note in known_notes(connection, notes) if not note.struck]
        if not found:
            raise CannotAct("That is struck out already.")
        uids = [note.uid for note in found]
        if len(uids) == 1:
            act = sign(desk, connection, "strike note", uids[0], None)
            return Done(act, f"Note struck out: {short(found[0].words)}.")
        act = sign(desk, connection, "strike lines", found[0].session, {"notes": uids})
    return Done(act, f"{len(uids)} notes struck out.")


def mend_word(desk: Desk, notes: Sequence[str], said: str, meant: str) -> Done:
    """Put one word or phrase in the place of a mis-heard one in a run of notes (whole words, whatever the capitals)."""
    from worklog_tui.logbook.wordings import mended
    from worklog_tui.notes.cleaning import sanitise

    wrong, right = (" ".join(sanitise(one).split()) for one in (said, meant))
    if not wrong or not right:
        raise CannotAct("Name the word that was heard, and the word that was meant.")
    with acting(desk) as connection:
        found = known_notes(connection, notes)
        hit = [note.uid for note in found if mended(note.words, wrong, right) != note.words]
        if not hit:
            raise CannotAct(f"“{wrong}” is in none of these notes.")
        act = sign(desk, connection, "mend word", found[0].session, {"notes": hit, "said": wrong, "meant": right})
    places = "one note" if len(hit) == 1 else f"{len(hit)} notes"
    return Done(act, f"“{wrong}” put right to “{right}” in {places}.")


def wordings(desk: Desk, note: str) -> list[Revision]:
    """Every wording that a note has had, the first one first."""
    with store.reading(desk.logbook) as connection:
        every_note(connection, [note])
        return store.wordings.of_note(connection, note)


def struck_notes(desk: Desk, session: str) -> list[Note]:
    """The notes of a session that are struck out."""
    with store.reading(desk.logbook) as connection:
        return [note for note in store.sessions.notes_of(connection, session, with_struck=True) if note.struck]


def known_notes(connection: store.Connection, uids: Sequence[str]) -> list[Note]:
    """The notes with these uids, in the order in which they are named, without those that were erased.

    CannotAct when one is unknown, or none is left.
    """
    found = [note for note in every_note(connection, uids) if note.words != ERASED]
    if not found:
        raise CannotAct("That note was erased; its words are gone for good.")
    return found


def every_note(connection: store.Connection, uids: Sequence[str]) -> list[Note]:
    """The notes with these uids, those that were erased too; CannotAct when one is unknown or none named."""
    found = [store.sessions.note(connection, uid) for uid in dict.fromkeys(uids)]
    known = [note for note in found if note is not None]
    if not known or len(known) != len(found):
        raise CannotAct("There is no such note in the logbook.")
    return known


def short(words: str) -> str:
    """The words in quotation marks, cut where they are long."""
    return f"“{words}”" if len(words) <= SHOWN else f"“{words[: SHOWN - 1].rstrip()}…”"
