"""Clips of the camera."""

from __future__ import annotations

from typing import Any

from worklog_tui.model.clip import Clip
from worklog_tui.store import rows
from worklog_tui.store.files import Connection

_COLUMNS = "clip.*, session.uid AS session"


def add(connection: Connection, clip: Clip) -> None:
    """Keep a clip that begins; the same uid again changes nothing."""
    connection.execute(
        "INSERT INTO clip (uid, session_id, camera_offset, utc, zone, utc_offset, known)"
        " SELECT ?, id, ?, ?, ?, ?, ? FROM session WHERE uid = ? ON CONFLICT (uid) DO NOTHING",
        (clip.uid, clip.offset, *rows.instant_values(clip.start), clip.session),
    )


def end(connection: Connection, uid: str, utc: str) -> None:
    """Say when a clip ended."""
    connection.execute("UPDATE clip SET end_utc = ? WHERE uid = ?", (utc, uid))


def set_offset(connection: Connection, uid: str, seconds: int) -> None:
    """Say how far the camera's counter is ahead of the clip's own time."""
    connection.execute("UPDATE clip SET camera_offset = ? WHERE uid = ?", (seconds, uid))


def running(connection: Connection, machine: str) -> Clip | None:
    """The clip of a machine (its uid) that has not ended; the latest, should there be more."""
    row = connection.execute(
        f"SELECT {_COLUMNS} FROM clip JOIN session ON session.id = clip.session_id"
        " JOIN machine ON machine.id = session.machine_id"
        " WHERE machine.uid = ? AND clip.end_utc IS NULL ORDER BY clip.id DESC LIMIT 1",
        (machine,),
    ).fetchone()
    return None if row is None else _clip(row)


def of_session(connection: Connection, session: str) -> list[Clip]:
    """The clips of a session in order."""
    found = connection.execute(
        f"SELECT {_COLUMNS} FROM clip JOIN session ON session.id = clip.session_id WHERE session.uid = ?"
        " ORDER BY clip.utc, clip.uid",
        (session,),
    )
    return [_clip(row) for row in found]


def _clip(row: Any) -> Clip:
    start = rows.instant(row)
    assert start is not None, "a clip has its start"
    return Clip(row["uid"], row["session"], start, row["end_utc"] or "", row["camera_offset"])
