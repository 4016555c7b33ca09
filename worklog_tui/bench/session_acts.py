"""Acts on sessions and runs of lines: split, join, give to another machine, date, shift in time."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import asdict
from typing import TYPE_CHECKING, Any

from worklog_tui import store
from worklog_tui.bench.acting import CannotAct, Done, acting, sign
from worklog_tui.bench.machines import known_machines, named
from worklog_tui.bench.note_acts import every_note
from worklog_tui.model import Instant, Machine, Note, Session
from worklog_tui.model.ids import derived

if TYPE_CHECKING:
    from worklog_tui.bench.desk import Desk


def split_session(desk: Desk, note: str) -> Done:
    """Have a session of its own begin with a note, which must not be the first of its session."""
    with acting(desk) as connection:
        (found,) = every_note(connection, [note])
        row = store.sessions.notes_of(connection, found.session, with_struck=True)
        going = row[[one.uid for one in row].index(note) :]
        if len(going) == len(row):
            raise CannotAct("The session begins with that note already.")
        value = {"notes": [one.uid for one in going], "new": _new_uid(desk, connection, found.session)}
        act = sign(desk, connection, "split session", found.session, value)
    said = "is now a session of its own" if len(going) == 1 else "are now a session of their own"
    return Done(act, f"{_count(going)} {said}.")


def join_sessions(desk: Desk, one: str, other: str) -> Done:
    """Make two sessions of one machine one; the notes of the later one go into the earlier."""
    with acting(desk) as connection:
        first, second = _session(connection, one), _session(connection, other)
        if first.uid == second.uid:
            raise CannotAct("That is one session already.")
        if first.machine != second.machine:
            raise CannotAct("The two sessions are of different machines; move one of them first.")
        early, late = store.sessions.in_order([first, second])
        act = sign(desk, connection, "join sessions", late.uid, {"into": early.uid})
    return Done(act, "The two sessions are one.")


def move_session(desk: Desk, session: str, machine_name: str) -> Done:
    """Give a session to another machine; its notes are read again with that machine's card."""
    with acting(desk) as connection:
        found, machine = _session(connection, session), named(connection, machine_name)
        if found.machine == machine.uid:
            raise CannotAct(f"The session is one of {machine.name} already.")
        act = sign(desk, connection, "move session", session, {"machine": machine.uid})
    return Done(act, f"The session is now one of {machine.name}.")


def date_session(desk: Desk, session: str, start: Instant | None) -> Done:
    """Say when a session began; None: not known."""
    with acting(desk) as connection:
        if _session(connection, session).start == start:
            raise CannotAct("The session has that date already.")
        act = sign(desk, connection, "date session", session, {"start": asdict(start) if start else None})
    return Done(act, "The date of the session is set." if start else "The date of the session is not known.")


def same_machine(desk: Desk, other: str, machine_name: str) -> Done:
    """Say that two machines are one: the sessions and comments of the other go to the one that is named last.

    Each is named by its name, or by its uid where both have the same name.
    """
    with acting(desk) as connection:
        gone, stays = _machine(connection, other), _machine(connection, machine_name)
        if gone.uid == stays.uid:
            others = [one for one in known_machines(connection) if one.name == stays.name]
            gone = next((one for one in others if one.uid != stays.uid), gone)
        if gone.uid == stays.uid:
            raise CannotAct("That is one machine already.")
        act = sign(desk, connection, "same machine", gone.uid, {"as": stays.uid})
    return Done(act, f"{gone.name} and {stays.name} are one machine; its card is that of {stays.name}.")


def _machine(connection: store.Connection, said: str) -> Machine:
    """A machine by its uid, or by its name; of several with one name the one that came first."""
    known = known_machines(connection)
    found = [one for one in known if one.uid == said] or [one for one in known if one.name == said]
    return found[0] if found else named(connection, said)


def move_lines(desk: Desk, notes: Sequence[str], machine_name: str) -> Done:
    """Give a run of lines to another machine, where they are a session of their own."""
    with acting(desk) as connection:
        machine = named(connection, machine_name)
        return _apart(desk, connection, notes, {"machine": machine.uid}, f"now of {machine.name}")


def date_lines(desk: Desk, notes: Sequence[str], start: Instant | None) -> Done:
    """Say when a run of lines was said; they become a session of their own, unless they are all of theirs."""
    given = {"start": asdict(start) if start else None}
    with acting(desk) as connection:
        found = every_note(connection, notes)
        if len(found) == len(store.sessions.notes_of(connection, found[0].session)):
            act = sign(desk, connection, "date session", found[0].session, given)
            return Done(act, "The date of the session is set.")
        return _apart(desk, connection, notes, given, "now a session of that date")


def shift_lines(desk: Desk, notes: Sequence[str], seconds: int) -> Done:
    """Move a run of lines in time, by so many seconds; fewer than none is earlier."""
    if not seconds:
        raise CannotAct("Nothing is to be shifted.")
    with acting(desk) as connection:
        found = every_note(connection, notes)
        value = {"notes": [note.uid for note in found], "seconds": int(seconds)}
        act = sign(desk, connection, "shift lines", found[0].session, value)
    return Done(act, f"{_count(found)} moved by {abs(seconds)} seconds to {'later' if seconds > 0 else 'earlier'}.")


def _apart(
    desk: Desk, connection: store.Connection, notes: Sequence[str], given: dict[str, Any], says: str
) -> Done:  # fmt: skip
    """A run of lines of one session as a session of its own."""
    found = every_note(connection, notes)
    if len({note.session for note in found}) > 1:
        raise CannotAct("The lines are of more than one session; take them session by session.")
    new = _new_uid(desk, connection, found[0].session)
    value = {"notes": [note.uid for note in found], "new": new} | given
    act = sign(desk, connection, "split session", found[0].session, value)
    return Done(act, f"{_count(found)} {says}.")


def _new_uid(desk: Desk, connection: store.Connection, session: str) -> str:
    """A uid that sorts after the session it is split from, which is how two without a date are told apart."""
    uid, number = desk.uid(), 0
    while uid <= session or store.sessions.find(connection, uid) is not None:
        number += 1
        uid = derived("split", session, number) if uid <= session else desk.uid(number)
        if number > 10_000:
            break
    return uid


def _session(connection: store.Connection, uid: str) -> Session:
    found = store.sessions.find(connection, uid)
    if found is None:
        raise CannotAct("There is no such session in the logbook.")
    return found


def _count(notes: Sequence[Note]) -> str:
    return "1 line" if len(notes) == 1 else f"{len(notes)} lines"
