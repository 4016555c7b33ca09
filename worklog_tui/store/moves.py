"""Where notes stand and to which machine sessions belong, as they came and as they are after a person moved them."""

from __future__ import annotations

import sqlite3
from collections.abc import Iterable

from worklog_tui.logbook.places_of_notes import Frame, Layout, Spot
from worklog_tui.store import rows
from worklog_tui.store.files import Connection

_MOMENT = "utc, zone, utc_offset, known"


def as_they_came(connection: Connection, sessions: Iterable[str], notes: Iterable[str]) -> Layout:
    """These notes and sessions with all notes that are or were in such a session, as they were before any act."""
    wanted, layout = set(sessions), Layout({}, {})
    ids: set[int] = set()
    for uid in wanted:
        ids |= _notes_of(connection, uid)
    ids |= {row["id"] for uid in notes for row in connection.execute("SELECT id FROM note WHERE uid = ?", (uid,))}
    for note_id in ids:
        uid, spot = _spot(connection, note_id)
        layout.spots[uid] = spot
        wanted.add(spot.session)
    for uid in wanted:
        frame = _frame(connection, uid)
        if frame is not None:
            layout.frames[uid] = frame
    return layout


def sessions_of(connection: Connection, machine: str) -> set[str]:
    """The sessions that came with a machine."""
    found = connection.execute(
        "SELECT session.uid FROM session LEFT JOIN session_as_it_came AS came ON came.session_id = session.id"
        " JOIN machine ON machine.id = coalesce(came.machine_id, session.machine_id) WHERE machine.uid = ?",
        (machine,),
    )
    return {row["uid"] for row in found}


def _notes_of(connection: Connection, session: str) -> set[int]:
    found = connection.execute(
        "SELECT note.id FROM note JOIN session ON session.id = note.session_id WHERE session.uid = ?1"
        " UNION SELECT note_id FROM note_as_it_came JOIN session ON session.id = session_id WHERE session.uid = ?1",
        (session,),
    )
    return {row["id"] for row in found}


def _spot(connection: Connection, note_id: int) -> tuple[str, Spot]:
    columns = "note.uid, note.track, session.uid AS session"
    row = connection.execute(
        f"SELECT {columns}, came.at, came.said_at, came.stands_at, came.utc, came.zone, came.utc_offset, came.known,"
        " came.film FROM note_as_it_came AS came JOIN note ON note.id = came.note_id"
        " JOIN session ON session.id = came.session_id WHERE note.id = ?",
        (note_id,),
    ).fetchone()
    if row is None:
        row = connection.execute(
            f"SELECT {columns}, at, said_at, stands_at, note.utc, note.zone, note.utc_offset, note.known,"
            " note.film FROM note JOIN session ON session.id = note.session_id WHERE note.id = ?",
            (note_id,),
        ).fetchone()
    stood = row["session"], row["at"], row["said_at"], row["stands_at"]
    spot = Spot(*stood, rows.instant(row), row["track"], row["film"])
    return row["uid"], spot


def _frame(connection: Connection, session: str) -> Frame | None:
    row = (
        connection.execute(
            "SELECT machine.uid AS machine, came.utc, came.zone, came.utc_offset, came.known"
            " FROM session_as_it_came AS came JOIN session ON session.id = came.session_id"
            " JOIN machine ON machine.id = came.machine_id WHERE session.uid = ?",
            (session,),
        ).fetchone()
        or connection.execute(
            "SELECT machine.uid AS machine, session.utc, session.zone, session.utc_offset, session.known"
            " FROM session JOIN machine ON machine.id = session.machine_id WHERE session.uid = ?",
            (session,),
        ).fetchone()
    )
    return None if row is None else Frame(row["machine"], rows.instant(row))


def put(connection: Connection, layout: Layout, after: dict[str, str]) -> tuple[set[str], set[str]]:
    """Bring notes and sessions to where a layout has them; what they were is kept the first time.

    `after` names for each session made by a split the one it came from. Gives the sessions whose notes or machine are
    not what they were, and the notes that are.
    """
    changed: set[str] = set()
    moved: set[str] = set()
    for uid, frame in layout.frames.items():
        if _put_frame(connection, uid, frame, after.get(uid, "")):
            changed.add(uid)
    for uid, spot in layout.spots.items():
        sessions = _put_spot(connection, uid, spot)
        if sessions:
            moved.add(uid)
            changed |= sessions
    return changed, moved


def _put_frame(connection: Connection, uid: str, frame: Frame, after: str) -> bool:
    """Whether the session is now of another machine."""
    now = connection.execute(
        "SELECT session.id, machine.uid AS machine, session.utc, session.zone, session.utc_offset, session.known"
        " FROM session JOIN machine ON machine.id = session.machine_id WHERE session.uid = ?",
        (uid,),
    ).fetchone()
    machine = connection.execute("SELECT id FROM machine WHERE uid = ?", (frame.machine,)).fetchone()
    if machine is None:
        return False
    if now is None:
        _begin(connection, uid, frame, after)
        return True
    if (now["machine"], rows.instant(now)) == (frame.machine, frame.start):
        return False
    connection.execute(
        f"INSERT OR IGNORE INTO session_as_it_came (session_id, machine_id, {_MOMENT})"
        f" SELECT id, machine_id, {_MOMENT} FROM session WHERE id = ?",
        (now["id"],),
    )
    connection.execute(
        "UPDATE session SET machine_id = ?, utc = ?, zone = ?, utc_offset = ?, known = ? WHERE id = ?",
        (machine["id"], *rows.instant_values(frame.start), now["id"]),
    )
    return bool(now["machine"] != frame.machine)


def _begin(connection: Connection, uid: str, frame: Frame, after: str) -> None:
    """A session that a split made stands with the one it came from."""
    connection.execute(
        f"INSERT INTO session (uid, machine_id, arrival, source, {_MOMENT})"
        " SELECT ?, (SELECT id FROM machine WHERE uid = ?), arrival, source, ?, ?, ?, ? FROM session WHERE uid = ?",
        (uid, frame.machine, *rows.instant_values(frame.start), after),
    )


def _put_spot(connection: Connection, uid: str, spot: Spot) -> set[str]:
    """The sessions that the note left and came to, or the one it stands in elsewhere; none when it stays."""
    now = connection.execute(
        "SELECT note.id, session.uid AS session, at, said_at, stands_at, note.utc, note.zone, note.utc_offset,"
        " note.known, note.film FROM note JOIN session ON session.id = note.session_id WHERE note.uid = ?",
        (uid,),
    ).fetchone()
    if _same(now, spot) and now["film"] == spot.film:
        return set()
    connection.execute(
        f"INSERT OR IGNORE INTO note_as_it_came (note_id, session_id, at, said_at, stands_at, film, {_MOMENT})"
        f" SELECT id, session_id, at, said_at, stands_at, film, {_MOMENT} FROM note WHERE id = ?",
        (now["id"],),
    )
    connection.execute("UPDATE note SET film = ? WHERE id = ?", (spot.film, now["id"]))
    if _same(now, spot):
        return set()
    connection.execute(
        "UPDATE note SET (session_id, machine_id) = (SELECT id, machine_id FROM session WHERE uid = ?), at = ?,"
        " said_at = ?, stands_at = ?, utc = ?, zone = ?, utc_offset = ?, known = ? WHERE id = ?",
        (spot.session, spot.at, spot.said_at, spot.stands_at, *rows.instant_values(spot.instant), now["id"]),
    )
    return {now["session"], spot.session}


def _same(now: sqlite3.Row, spot: Spot) -> bool:
    there = (now["session"], now["at"], now["said_at"], now["stands_at"], rows.instant(now))
    return there == (spot.session, spot.at, spot.said_at, spot.stands_at, spot.instant)
