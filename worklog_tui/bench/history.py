"""The whole history of a machine out of the logbook, and reading it again with a newer grammar."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from typing import TYPE_CHECKING

from worklog_tui import store
from worklog_tui.bench.machines import aliases, named
from worklog_tui.bench.reading import Track, read_all
from worklog_tui.bench.taking_in import pen
from worklog_tui.model import Act, Fact, History, Machine, OpenItem, SessionRecord
from worklog_tui.store.derived import Readout, track_of

if TYPE_CHECKING:
    from worklog_tui.bench.desk import Desk


@dataclass(frozen=True, slots=True)
class Reread:
    """What reading the notes again has changed."""

    added: tuple[Fact, ...]
    gone: tuple[Fact, ...]


def history(desk: Desk, machine_name: str) -> History:
    """All sessions of a machine with their notes and facts as they were read; `is_stale` tells if they still hold."""
    with store.reading(desk.logbook) as connection:
        machine = named(connection, machine_name)
        sessions = store.sessions.of_machine(connection, machine.uid)
        facts = store.derived.facts_of_machine(connection, machine.uid)
        acts = store.acts.load(connection)
        comments = store.comments.load(connection, machine.uid, aliases(connection))
    records = []
    for session, notes in sessions:
        sure, questions = (tuple(facts.get((session.uid, asked), ())) for asked in (False, True))
        records.append(SessionRecord(session, tuple(notes), sure, questions))
    return History(machine, tuple(records), _of_machine(machine, records, acts), tuple(comments))


def is_stale(desk: Desk, machine_name: str) -> bool:
    """Whether a session of the machine was read with another grammar, another card, or not at all."""
    with store.reading(desk.logbook) as connection:
        machine = named(connection, machine_name)
        stamps = store.derived.stamps(connection, machine.uid)
    return bool(stamps) and set(stamps.values()) != {desk.stamp(machine)}


def reread(desk: Desk, machine_name: str) -> Reread:
    """Read all notes of a machine again and swap the facts in one transaction; tells what that changed."""
    with store.reading(desk.logbook) as connection:
        machine = named(connection, machine_name)
        basis = store.items.basis(connection, machine.uid)
        readouts = _read(desk, connection, machine)
    with pen(desk) as connection:
        if store.items.basis(connection, machine.uid) != basis:
            readouts = _read(desk, connection, machine)
        return _swap(connection, machine, readouts)


def _swap(connection: store.Connection, machine: Machine, readouts: Iterable[Readout]) -> Reread:
    """Put what was read in the place of the former facts; the person's corrections are applied to it."""
    before = _facts(connection, machine)
    for readout in readouts:
        store.derived.save(connection, readout)
    after = _facts(connection, machine)
    gone = tuple(fact for key, fact in before.items() if after.get(key) != fact)
    return Reread(tuple(fact for key, fact in after.items() if before.get(key) != fact), gone)


class _Enough(Exception):
    """Everything that was written is rolled back."""


def would_change(desk: Desk, machine_name: str) -> Reread:
    """What `reread` would change; nothing is changed."""
    found: list[Reread] = []
    try:
        with pen(desk) as connection:
            machine = named(connection, machine_name)
            found.append(_swap(connection, machine, _read(desk, connection, machine)))
            raise _Enough
    except _Enough:
        return found[0]


def basis(desk: Desk, machine_name: str) -> str:
    """What the open items of a machine depend on, as text: another text, perhaps other items."""
    with store.reading(desk.logbook) as connection:
        return store.items.basis(connection, named(connection, machine_name).uid)


def remember_items(desk: Desk, machine_name: str, items: Iterable[OpenItem], of: str | None = None) -> None:
    """Keep the open items that were worked out, so that the list of machines can count them.

    `of` is the basis they were worked out from: nothing is kept when it is not that of now, or was kept already.
    """
    with store.reading(desk.logbook) as connection:
        machine = named(connection, machine_name)
        if of is not None and store.items.open_counts(connection)[machine.uid] is not None:
            return
    with pen(desk) as connection:
        now = store.items.basis(connection, machine.uid)
        if of is None or of == now:
            store.items.replace(connection, machine.uid, list(items), now)


def known_items(desk: Desk, machine_name: str) -> list[OpenItem] | None:
    """The open items as they were last worked out; None when something has changed since."""
    with store.reading(desk.logbook) as connection:
        machine = named(connection, machine_name)
        if not store.items.is_current(connection, machine.uid):
            return None
        return store.items.load(connection, machine.uid)


def last_session(desk: Desk, machine_name: str) -> tuple[int, SessionRecord | None]:
    """The number of a machine's last session, and the session with its notes and confident facts; else 0 and None."""
    with store.reading(desk.logbook) as connection:
        found = store.pages.lengths(connection, named(connection, machine_name).uid)
        if not found:
            return 0, None
        session, count = found[-1]
        notes, facts = store.pages.part(connection, session.uid, 0, count)
    return len(found), SessionRecord(session, tuple(notes), tuple(facts))


def keep_comments(desk: Desk, machine_name: str, texts: Iterable[str]) -> int:
    """Keep viewers' comments; the same paste again adds nothing. Returns how many were new."""
    from worklog_tui.notes.cleaning import sanitise

    said = [words for words in (sanitise(text).strip() for text in texts) if words]
    with pen(desk) as connection:
        machine = named(connection, machine_name)
        return store.comments.add(connection, machine.uid, said)


def _read(desk: Desk, connection: store.Connection, machine: Machine) -> list[Readout]:
    reader, stamp = desk.reader(), desk.stamp(machine)
    readouts = []
    for session, notes in store.sessions.of_machine(connection, machine.uid):
        for name in sorted({track_of(note) for note in notes}):
            track = Track(reader, machine, session.uid, name, stamp)
            readouts.append(read_all(track, [note for note in notes if track_of(note) == name]))
    return readouts


def _facts(connection: store.Connection, machine: Machine) -> dict[object, Fact]:
    found = store.derived.facts_of_machine(connection, machine.uid)
    return {fact.key: fact for facts in found.values() for fact in facts}


def _of_machine(machine: Machine, records: list[SessionRecord], acts: list[Act]) -> tuple[Act, ...]:
    """The acts on the machine, on its sessions and notes and what was read from them, and on such acts."""
    import re

    known = {machine.uid}
    for record in records:
        known.add(record.session.uid)
        known.update(note.uid for note in record.notes)
    kept = []
    for act in acts:
        if known.intersection(re.findall(r"[0-9a-f]{8}(?:-[0-9a-f]{4}){3}-[0-9a-f]{12}", act.target)):
            known.add(act.uid)
            kept.append(act)
    return tuple(kept)
