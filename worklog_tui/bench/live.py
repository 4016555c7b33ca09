"""Notes that are said now: kept in the open session, or beside the logbook while another program writes to it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from worklog_tui import store
from worklog_tui.bench.machines import named
from worklog_tui.bench.open_session import session_at
from worklog_tui.bench.reading import Changes, Track, Unread, read_on
from worklog_tui.bench.taking_in import pen
from worklog_tui.model import Fact, FactKey, Instant, Machine, Note, Session
from worklog_tui.store.derived import Mark, Readout
from worklog_tui.store.sessions import LastNote

if TYPE_CHECKING:
    from worklog_tui.bench.desk import Desk

LIVE_TRACK = "typed"


class NoWords(ValueError):
    """There was nothing to keep; the message is a plain sentence."""


@dataclass(frozen=True, slots=True)
class Kept:
    """A note that is on the disk, and what was read from it."""

    note: Note
    session: Session
    facts: tuple[Fact, ...] = ()
    "Read with confidence, of this note or added to an earlier one."
    questions: tuple[Fact, ...] = ()
    "Doubtful ones, to be asked about."
    withdrawn: tuple[FactKey, ...] = ()
    "Facts of earlier notes that this one takes back."
    spooled: bool = False
    "It waits beside the logbook for the next writer; it is as safe there."
    unread: str = ""
    "Why nothing could be read from it, when the reader failed; it will be read again."


@dataclass(frozen=True, slots=True)
class _Tail:
    """All that the next note depends on."""

    machine: Machine
    last: LastNote | None
    mark: Mark | None = None
    stamp: str | None = None


@dataclass(frozen=True, slots=True)
class _Plan:
    """What is about to be written."""

    session: Session
    notes: tuple[Note, ...]
    changes: tuple[Changes, ...] = ()
    readout: Readout | None = None
    unread: str = ""


def keep_note(desk: Desk, machine_name: str, words: str) -> Kept:
    """Keep one note in the open session of a machine, or in a new one after the quiet hours.

    When this returns, the note is on the disk. Raises UnknownMachine, NoWords and the refusals of the store.
    """
    return keep_words(desk, machine_name, [words])[0]


def keep_words(desk: Desk, machine_name: str, lines: Sequence[str]) -> list[Kept]:
    """Keep several notes that are said now, all of them or none."""
    said = _clean(lines)
    left = desk.recall(f"tail of {machine_name}")  # as the note before left it: looked up again under the lock
    before = left if isinstance(left, _Tail) else _looked_up(desk, machine_name)
    plan = _plan(desk, before, said)
    try:
        with pen(desk) as connection:
            now = _tail(connection, named(connection, machine_name))
            if now != before:
                plan = _plan(desk, now, said)
            kept = _written(desk, connection, plan)
            after = _tail(connection, now.machine)
        desk.remember(f"tail of {machine_name}", after)
        return kept
    except store.LockedOut:
        for note in plan.notes:
            store.spool.put(desk.logbook, plan.session, note)
        return [replace(kept, spooled=True) for kept in _kept(desk, plan)]


def keep_beside(desk: Desk, machine_name: str, words: str, before: Kept | None = None) -> Kept:
    """Keep a note beside the logbook without reading it, as fast as the disk is; the next writer takes it in.

    `before` is the note of the machine that was kept so before it, if any. Raises as `keep_note` does.
    """
    said, tail, now = _clean([words]), _looked_up(desk, machine_name), desk.instant()
    last = tail.last
    if before is not None:
        last = LastNote(before.session, before.note.arrival + 1, before.note.at or 0, before.note.instant)
    joined = session_at(last, now, desk.quiet_hours)
    session = joined or Session(desk.uid(), tail.machine.uid, now)
    (note,) = _notes(desk, session, now, last if joined else None, said)
    store.spool.put(desk.logbook, session, note)
    return Kept(note, session, spooled=True)


def preview(desk: Desk, machine_name: str, words: str) -> tuple[Fact, ...]:
    """What would be read from a note if it were kept now; nothing is written."""
    try:
        said = _clean([words])
    except NoWords:
        return ()
    return tuple(f for changes in _plan(desk, _looked_up(desk, machine_name), said).changes for f in changes.added)


def _clean(lines: Sequence[str]) -> list[str]:
    from worklog_tui.notes.cleaning import sanitise

    said = [" ".join(sanitise(line).split("\n")).strip() for line in lines]
    kept = [words for words in said if words]
    if not kept:
        raise NoWords("There are no words to keep.")
    return kept


def _looked_up(desk: Desk, machine_name: str) -> _Tail:
    with store.reading(desk.logbook) as connection:
        return _tail(connection, named(connection, machine_name))


def _tail(connection: store.Connection, machine: Machine) -> _Tail:
    last = store.sessions.last_live(connection, machine.uid)
    if last is None:
        return _Tail(machine, None)
    uid = last.session.uid
    return _Tail(machine, last, store.derived.tail(connection, uid, LIVE_TRACK), store.derived.stamp(connection, uid))


def _plan(desk: Desk, tail: _Tail, said: Sequence[str]) -> _Plan:
    """The notes with their session and facts, as they will be if nobody writes in between."""
    now, machine = desk.instant(), tail.machine
    joined = session_at(tail.last, now, desk.quiet_hours)
    session = joined or Session(desk.uid(), machine.uid, now)
    notes = _notes(desk, session, now, tail.last if joined else None, said)
    try:
        stamp = tail.stamp if joined and tail.stamp is not None else desk.stamp(machine)
        track = Track(desk.reader(), machine, session.uid, LIVE_TRACK, stamp)
        readout, changes = read_on(track, tail.mark if joined else None, notes)
        return _Plan(session, notes, changes, readout)
    except Exception as mistake:  # a grammar that does not load must not cost the words
        return _Plan(session, notes, unread=str(mistake) or type(mistake).__name__)


def _notes(desk: Desk, session: Session, now: Instant, last: LastNote | None, said: Sequence[str]) -> tuple[Note, ...]:
    moment = now.moment()
    since = int((moment - session.start.moment()).total_seconds()) if session.start else 0
    at = max(since, last.at if last else 0, 0)
    clock, first = f"{moment:%H:%M}", last.notes if last else 0
    return tuple(
        Note(desk.uid(later), session.uid, words, at, clock, "live", first + later, instant=now)
        for later, words in enumerate(said)
    )


def _written(desk: Desk, connection: store.Connection, plan: _Plan) -> list[Kept]:
    session = store.sessions.begin(connection, plan.session)
    notes = tuple(store.sessions.add_note(connection, note, note.at or 0) for note in plan.notes)
    if plan.readout is None:
        store.derived.mark_unread(connection, session.uid)
    else:
        store.derived.save(connection, plan.readout)
    return _kept(desk, replace(plan, session=session, notes=notes))


def _kept(desk: Desk, plan: _Plan) -> list[Kept]:
    if plan.readout is None:
        return [Kept(note, plan.session, unread=plan.unread) for note in plan.notes]
    line = desk.confidence_line()
    return [
        Kept(
            note, plan.session,
            tuple(fact for fact in changes.added if fact.confidence >= line),
            tuple(fact for fact in changes.added if fact.confidence < line),
            tuple(changes.withdrawn), unread=changes.problem if isinstance(changes, Unread) else "",
        )
        for note, changes in zip(plan.notes, plan.changes, strict=True)
    ]  # fmt: skip
