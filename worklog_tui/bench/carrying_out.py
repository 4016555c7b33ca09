"""What acts alter in the logbook: words, places, cards and facts become what all acts that stand make of them."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from typing import TYPE_CHECKING

from worklog_tui import store
from worklog_tui.bench.taking_in import read_into
from worklog_tui.logbook.places_of_notes import laid_out
from worklog_tui.logbook.standing import standing
from worklog_tui.logbook.wordings import is_struck, wordings
from worklog_tui.model import Act
from worklog_tui.model.acts import NOTE_VERBS, PLACE_VERBS
from worklog_tui.store import rows

if TYPE_CHECKING:
    from worklog_tui.bench.desk import Desk


def erasures(desk: Desk, connection: store.Connection, notes: Sequence[str]) -> None:
    """Take the words of erased notes away, wherever they stand, and read what follows from that."""
    changed: dict[tuple[str, str], list[str]] = {}
    for uid in notes:
        where = store.wordings.note_session(connection, uid)
        if where is not None and store.erasing.erase(connection, uid):
            changed.setdefault(where, []).append(uid)
    for (session, machine), uids in changed.items():
        wanted = set(uids)
        store.derived.clear(connection, uids)
        fresh = [n for n in store.sessions.notes_of(connection, session, with_struck=True) if n.uid in wanted]
        if read_into(desk, connection, store.machines.by_uid(connection, machine), session, fresh):
            store.derived.clear_session(connection, session)


def words(desk: Desk, connection: store.Connection, notes: Sequence[str]) -> None:
    """Have notes show their present wording, or be struck out, and read what follows from it."""
    changed: dict[tuple[str, str], list[str]] = {}
    for uid in notes:
        where = store.wordings.note_session(connection, uid)
        if where is None or store.erasing.is_erased(connection, uid):
            continue
        every = store.acts.on_note(connection, uid, NOTE_VERBS)
        acts = standing(every)
        row = wordings(store.wordings.first_words(connection, uid), uid, acts)
        known = [(str(act.value["words"]), act.instant) for act in every if act.verb == "edit note" and act.value]
        known += [(said, acts[-1].instant) for said in row[1:]]
        if store.wordings.put(connection, uid, known, row[-1], is_struck(uid, acts)):
            changed.setdefault(where, []).append(uid)
    for (session, machine), uids in changed.items():
        wanted = set(uids)
        fresh = [n for n in store.sessions.notes_of(connection, session, with_struck=True) if n.uid in wanted]
        read_into(desk, connection, store.machines.by_uid(connection, machine), session, fresh)


def facts(desk: Desk, connection: store.Connection, notes: Sequence[str]) -> None:
    """Apply the corrections of facts in these notes anew."""
    known = store.sessions.known_notes(connection, notes)
    store.derived.correct_again(connection, [uid for uid in notes if uid in known], desk.confidence_line())


def places(desk: Desk, connection: store.Connection, acts: Sequence[Act]) -> None:
    """Bring notes and sessions to where the acts on them have put them, and read anew what now stands elsewhere."""
    if not acts:
        return
    every = store.acts.of_verbs(connection, PLACE_VERBS)
    sessions, notes = _named(every)
    for machine in {act.target for act in every if act.verb == "same machine"}:
        sessions |= store.moves.sessions_of(connection, machine)
    came = store.moves.as_they_came(connection, sessions, notes)
    now = laid_out(came, standing(every))
    split = {str(act.value["new"]): act.target for act in every if act.verb == "split session"}
    changed, moved = store.moves.put(connection, now, split)
    store.derived.clear(connection, moved)
    for uid in changed:
        read_anew(desk, connection, uid)


def read_anew(desk: Desk, connection: store.Connection, session: str) -> None:
    """Read a whole session from its first note."""
    found = store.sessions.find(connection, session)
    if found is None:
        return
    notes = store.sessions.notes_of(connection, session, with_struck=True)
    store.derived.clear(connection, [note.uid for note in notes])
    store.derived.clear_session(connection, session)
    read_into(desk, connection, store.machines.by_uid(connection, found.machine), session, notes)


def _named(acts: Sequence[Act]) -> tuple[set[str], set[str]]:
    """The sessions and the notes that acts on places name."""
    sessions: set[str] = set()
    notes: set[str] = set()
    for act in acts:
        if act.verb in ("undo", "same machine") or not isinstance(act.value, dict):
            continue
        if act.verb == "shift lines":
            notes.update(act.value.get("notes", ()))
        elif act.verb == "place in film":
            notes.update(act.value.get("places", ()))
        else:
            sessions.add(act.target)
            sessions.update(str(act.value[key]) for key in ("into", "new") if act.value.get(key))
    return sessions, notes


def cards(connection: store.Connection, acts: Sequence[Act]) -> None:
    """Give machines the card that the last act which stands gave them, else the one they came with."""
    for target in dict.fromkeys(act.target for act in acts):
        every = store.acts.of_verbs(connection, ("set card",))
        came = store.machines.as_it_came(connection, target)
        if came is None:
            continue
        given = [act.value for act in standing(every) if act.target == target and isinstance(act.value, dict)]
        card = rows.machine_of(given[-1]) if given else came
        store.machines.save(connection, replace(card, uid=target))
