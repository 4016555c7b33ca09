"""Whole sessions from files or a paste: importing again doubles nothing."""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterable
from dataclasses import dataclass, replace
from pathlib import Path
from typing import TYPE_CHECKING

from worklog_tui import store
from worklog_tui.bench.live import Kept, NoWords, keep_words
from worklog_tui.bench.machines import find_machine
from worklog_tui.bench.reading import Changes, Track, Unread, read_on
from worklog_tui.bench.taking_in import pen, read_into
from worklog_tui.model import Machine, Note, Session
from worklog_tui.model.moments import Instant
from worklog_tui.store.derived import track_of

if TYPE_CHECKING:
    from worklog_tui.bench.desk import Desk
    from worklog_tui.notes.lines import ReadSession

PATIENCE = 30.0
"Seconds that an import waits for the lock; it has no spool."


@dataclass(frozen=True, slots=True)
class Imported:
    """What an import brought."""

    sessions: int = 0
    notes: int = 0
    facts: int = 0
    complaints: tuple[str, ...] = ()
    "Plain sentences about lines and files that were odd; each names its file."
    doubled: int = 0
    "Notes that the logbook had already; they were not added again."


def import_sessions(
    desk: Desk, machine: Machine, paths: Iterable[Path], told: Callable[[int, int], None] | None = None
) -> Imported:
    """Import session files, each as a session of its own and in a transaction of its own.

    `told` is called after each file with how many are done and how many there are.
    """
    from worklog_tui.notes.files import read_session_file
    from worklog_tui.notes.refusals import Unreadable

    files, total = list(paths), Imported()
    for done, path in enumerate(files, 1):
        try:
            read = read_session_file(path)
        except Unreadable as fault:
            total = _sum(total, Imported(complaints=(str(fault),)))
        else:
            complaints = tuple(f"{path.name}: {one}" for one in read.complaints)
            total = _sum(_sum(total, Imported(complaints=complaints)), _import(desk, machine, read)[0])
        if told:
            told(done, len(files))
    return total


def keep_lines(
    desk: Desk, machine_name: str, text: str, told: Callable[[int], bool] | None = None,
    without: Collection[int] = (),
) -> list[Kept]:  # fmt: skip
    """Keep a paste in one transaction: lines without times as notes of now, lines with times as a session of their own.

    Lines that the logbook has already are not doubled, and not among what is returned. `told` is called with how many
    lines are read; when it gives False, nothing is kept and Stopped is raised. `without`: lines left out, from 0.
    """
    from worklog_tui.notes.reading import read_text

    read = read_text(text)
    if told is not None:
        from worklog_tui.bench.telling import telling

        desk = telling(desk, told)
    if not read.lines:
        raise NoWords("There are no words to keep.")
    if read.header is None and all(line.at is None for line in read.lines):
        return keep_words(desk, machine_name, [one.words for n, one in enumerate(read.lines) if n not in without])
    return _import(desk, find_machine(desk, machine_name), read, without)[1]


def _import(
    desk: Desk, machine: Machine, read: ReadSession, without: Collection[int] = ()
) -> tuple[Imported, list[Kept]]:  # fmt: skip
    """One session: read outside the lock, written inside it."""
    from worklog_tui.notes.keeping import make_notes

    session, notes = make_notes(_at_home(desk, read), machine.uid)
    notes = tuple(note for note in notes if note.arrival not in without)
    if not notes:
        return Imported(), []
    track = Track(desk.reader(), machine, session.uid, track_of(notes[0]), desk.stamp(machine))
    readout, changes = read_on(track, None, notes)
    with pen(desk, PATIENCE) as connection:
        known = store.sessions.known_notes(connection, (note.uid for note in notes))
        fresh = store.sessions.find(connection, session.uid) is None
        before = 0 if fresh else store.derived.count(connection, session.uid)
        session = store.sessions.begin(connection, session)
        added = _add(connection, notes, known)
        if fresh:
            store.derived.save(connection, readout)
            kept = _all_kept(desk, session, added, changes)
        else:
            problem = read_into(desk, connection, machine, session.uid, added) if added else ""
            kept = [Kept(note, session, unread=problem) for note in added]
        facts = store.derived.count(connection, session.uid) - before
    problems = tuple(sorted({f"not read for now: {one.unread}" for one in kept if one.unread}))
    return Imported(int(fresh), len(added), facts, problems, len(known)), kept


def _at_home(desk: Desk, read: ReadSession) -> ReadSession:
    """The session with the offset of this place, where its header gives none."""
    from worklog_tui.notes.header import names_offset

    if read.header is None or names_offset(read.header_text):
        return read
    try:
        start = desk.at_home(read.header.moment().replace(tzinfo=None))
        return replace(read, header=Instant.of(start, known=read.header.known))
    except (OSError, OverflowError, ValueError):
        return read


def _add(connection: store.Connection, notes: Iterable[Note], known: set[str]) -> list[Note]:
    """Add the notes that are not known, each where the written order puts it."""
    added, stands_at = [], 0
    for note in notes:
        stands_at = max(stands_at, note.at or 0)
        if note.uid not in known:
            added.append(store.sessions.add_note(connection, note, stands_at))
    return added


def _all_kept(desk: Desk, session: Session, notes: list[Note], changes: tuple[Changes, ...]) -> list[Kept]:
    line = desk.confidence_line()
    return [
        Kept(
            note, session, tuple(fact for fact in one.added if fact.confidence >= line),
            tuple(fact for fact in one.added if fact.confidence < line), tuple(one.withdrawn),
            unread=one.problem if isinstance(one, Unread) else "",
        )
        for note, one in zip(notes, changes, strict=True)
    ]  # fmt: skip


def _sum(one: Imported, other: Imported) -> Imported:
    return Imported(
        one.sessions + other.sessions, one.notes + other.notes, one.facts + other.facts,
        one.complaints + other.complaints, one.doubled + other.doubled,
    )  # fmt: skip
