"""Notes that stay out of everything that is published, because a person said so."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from worklog_tui import store
from worklog_tui.bench.acting import CannotAct, Done, acting, notes_of, sign
from worklog_tui.bench.note_acts import every_note, short
from worklog_tui.logbook.standing import standing
from worklog_tui.model.acts import KEEP_PRIVATE

if TYPE_CHECKING:
    from worklog_tui.bench.desk import Desk


def keep_private(desk: Desk, notes: Sequence[str]) -> Done:
    """Keep notes (their uids), and all that was read from them, out of everything that is published."""
    with acting(desk) as connection:
        known = _private(connection)
        found = [note for note in every_note(connection, notes) if note.uid not in known]
        if not found:
            raise CannotAct("That is private already.")
        act = sign(desk, connection, KEEP_PRIVATE, found[0].uid, {"notes": [note.uid for note in found]})
    if len(found) == 1:
        return Done(act, f"Private: {short(found[0].words)} is left out of everything that is published.")
    return Done(act, f"Private: {len(found)} notes are left out of everything that is published.")


def private_notes(desk: Desk) -> frozenset[str]:
    """The uids of all notes that are private by an act, of whatever machine they are now."""
    with store.reading(desk.logbook) as connection:
        return _private(connection)


def _private(connection: store.Connection) -> frozenset[str]:
    return frozenset(notes_of(standing(store.acts.of_verbs(connection, (KEEP_PRIVATE,)))))
