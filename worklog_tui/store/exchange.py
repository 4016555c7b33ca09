"""The logbook as records that another computer can take in: what came and what persons did, nothing that is derived.

Taking in is a union by uid: in any order and as often as one likes, the result is the same. Where two logbooks hold the
same thing with another place in its order, the earlier place counts.
"""

from __future__ import annotations

import json
from collections.abc import Iterator
from dataclasses import dataclass, field
from typing import Any

from worklog_tui.store import acts, rows
from worklog_tui.store.files import Connection

KINDS = ("machine", "session", "note", "comment", "clip", "act")
"In the order in which they are written: what is named comes before what names it."
_MOMENT = "utc, zone, utc_offset, known"
_EXPORTS = {
    "machine": "SELECT machine.uid, coalesce(came.name, machine.name) AS name,"
    " coalesce(came.card, machine.card) AS card FROM machine"
    " LEFT JOIN card_as_it_came AS came ON came.machine_id = machine.id ORDER BY machine.uid",
    "session": "SELECT session.uid, machine.uid AS machine, session.arrival, session.source,"
    " CASE WHEN came.session_id IS NULL THEN session.utc ELSE came.utc END AS utc,"
    " coalesce(came.zone, session.zone) AS zone, coalesce(came.utc_offset, session.utc_offset) AS utc_offset,"
    " coalesce(came.known, session.known) AS known"
    " FROM session LEFT JOIN session_as_it_came AS came ON came.session_id = session.id"
    " JOIN machine ON machine.id = coalesce(came.machine_id, session.machine_id) ORDER BY session.uid",
    "note": "SELECT note.uid, session.uid AS session, note.arrival, note.track, note.first_words AS words,"
    " CASE WHEN came.note_id IS NULL THEN note.film ELSE came.film END AS film,"
    " CASE WHEN came.note_id IS NULL THEN note.stands_at ELSE came.stands_at END AS stands_at,"
    " CASE WHEN came.note_id IS NULL THEN note.at ELSE came.at END AS at,"
    " CASE WHEN came.note_id IS NULL THEN note.said_at ELSE came.said_at END AS said_at,"
    " CASE WHEN came.note_id IS NULL THEN note.utc ELSE came.utc END AS utc,"
    " CASE WHEN came.note_id IS NULL THEN note.zone ELSE came.zone END AS zone,"
    " CASE WHEN came.note_id IS NULL THEN note.utc_offset ELSE came.utc_offset END AS utc_offset,"
    " CASE WHEN came.note_id IS NULL THEN note.known ELSE came.known END AS known"
    " FROM note LEFT JOIN note_as_it_came AS came ON came.note_id = note.id"
    " JOIN session ON session.id = coalesce(came.session_id, note.session_id) ORDER BY note.uid",
    "comment": "SELECT comment.uid, machine.uid AS machine, comment.number, comment.words FROM comment"
    " JOIN machine ON machine.id = comment.machine_id ORDER BY comment.uid",
    "clip": "SELECT clip.uid, session.uid AS session, clip.end_utc, clip.camera_offset, clip.utc, clip.zone,"
    " clip.utc_offset, clip.known FROM clip JOIN session ON session.id = clip.session_id ORDER BY clip.uid",
    "act": f"SELECT uid, device, counter, verb, target, seen, value, {_MOMENT} FROM act ORDER BY uid",
}
_JSON = {"machine": ("card",), "act": ("seen", "value")}


@dataclass(slots=True)
class Taken:
    """What a merge brought."""

    new: dict[str, list[str]] = field(default_factory=lambda: {kind: [] for kind in KINDS})
    "The uids that were not known, by kind."
    moved: list[str] = field(default_factory=list)
    "Notes that were known and now stand elsewhere in the order."
    left_out: int = 0
    "Records of what they name neither logbook nor file holds."


def records(connection: Connection) -> Iterator[dict[str, Any]]:
    """Every record, with its kind; in an order that depends on nothing but what it holds."""
    for kind in KINDS:
        yield from records_of(connection, kind)


def records_of(connection: Connection, kind: str, ids: tuple[int, int] | None = None) -> Iterator[dict[str, Any]]:
    """The records of one kind; with `ids` those from the first to the last of these integer ids."""
    sql = _EXPORTS[kind]
    if ids is not None:
        sql = sql.replace(" ORDER BY ", f" WHERE {kind}.id BETWEEN {ids[0]:d} AND {ids[1]:d} ORDER BY ")
    for row in connection.execute(sql):
        data = {"kind": kind, **dict(row)}
        for name in _JSON.get(kind, ()):
            data[name] = None if data[name] is None else json.loads(data[name])
        yield data


def take(connection: Connection, data: dict[str, Any], taken: Taken) -> None:
    """Take one record in; raises KeyError or TypeError for one that lacks what it must hold."""
    known = connection.execute(f"SELECT id FROM {data['kind']} WHERE uid = ?", (data["uid"],)).fetchone()
    if known is not None:
        _agree(connection, known["id"], data, taken)
        return
    if _TAKE[data["kind"]](connection, data):
        taken.new[data["kind"]].append(data["uid"])
    else:
        taken.left_out += 1


def _moment(data: dict[str, Any]) -> tuple[Any, ...]:
    return data["utc"], data["zone"], data["utc_offset"], data["known"]


def _machine(connection: Connection, data: dict[str, Any]) -> bool:
    card = rows.card(rows.machine_of(data["card"]))
    connection.execute("INSERT INTO machine (uid, name, card) VALUES (?, ?, ?)", (data["uid"], data["name"], card))
    return True


def _session(connection: Connection, data: dict[str, Any]) -> bool:
    done = connection.execute(
        f"INSERT INTO session (uid, machine_id, arrival, source, {_MOMENT})"
        " SELECT ?, id, ?, ?, ?, ?, ?, ? FROM machine WHERE uid = ?",
        (data["uid"], data["arrival"], data["source"], *_moment(data), data["machine"]),
    )
    return done.rowcount > 0


def _note(connection: Connection, data: dict[str, Any]) -> bool:
    done = connection.execute(
        f"INSERT INTO note (uid, session_id, machine_id, arrival, stands_at, at, said_at, track, first_words, words,"
        f" film, {_MOMENT}) SELECT ?, id, machine_id, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ? FROM session WHERE uid = ?",
        (
            data["uid"], data["arrival"], data["stands_at"], data["at"], data["said_at"], data["track"], data["words"],
            data["words"], data["film"], *_moment(data), data["session"],
        ),
    )  # fmt: skip
    return done.rowcount > 0


def _comment(connection: Connection, data: dict[str, Any]) -> bool:
    done = connection.execute(
        "INSERT INTO comment (uid, machine_id, number, words) SELECT ?, id, ?, ? FROM machine WHERE uid = ?",
        (data["uid"], data["number"], data["words"], data["machine"]),
    )
    return done.rowcount > 0


def _clip(connection: Connection, data: dict[str, Any]) -> bool:
    done = connection.execute(
        f"INSERT INTO clip (uid, session_id, end_utc, camera_offset, {_MOMENT})"
        " SELECT ?, id, ?, ?, ?, ?, ?, ? FROM session WHERE uid = ?",
        (data["uid"], data["end_utc"], data["camera_offset"], *_moment(data), data["session"]),
    )
    return done.rowcount > 0


def _act(connection: Connection, data: dict[str, Any]) -> bool:
    act = {**data, "seen": json.dumps(data["seen"]), "value": None}
    if data["value"] is not None:
        act["value"] = json.dumps(data["value"], ensure_ascii=False)
    return acts.add(connection, rows.act(act))


_TAKE = {
    "machine": _machine, "session": _session, "note": _note, "comment": _comment, "clip": _clip, "act": _act,
}  # fmt: skip


def _agree(connection: Connection, row: int, data: dict[str, Any], taken: Taken) -> None:
    """Let two tellings of one thing agree: the earlier place in the order counts, and a place in the film is kept."""
    match data["kind"]:
        case "session":
            connection.execute("UPDATE session SET arrival = min(arrival, ?) WHERE id = ?", (data["arrival"], row))
        case "comment":
            connection.execute("UPDATE comment SET number = min(number, ?) WHERE id = ?", (data["number"], row))
        case "note":
            if _earlier(connection, row, data):
                taken.moved.append(data["uid"])


def _earlier(connection: Connection, row: int, data: dict[str, Any]) -> bool:
    """Whether the note stands elsewhere now, or has a place in the film that it had not."""
    place = "UPDATE {} SET stands_at = min(stands_at, ?1) WHERE {} = ?2 AND stands_at > ?1"
    stood = (data["stands_at"], row)
    came = connection.execute("SELECT 1 FROM note_as_it_came WHERE note_id = ?", (row,)).fetchone()
    table = ("note", "id") if came is None else ("note_as_it_came", "note_id")
    moved = connection.execute(place.format(*table), stood).rowcount
    moved += connection.execute(
        "UPDATE note SET arrival = ?1 WHERE id = ?2 AND arrival > ?1", (data["arrival"], row)
    ).rowcount
    moved += connection.execute(
        f"UPDATE {table[0]} SET film = ?1 WHERE {table[1]} = ?2 AND ?1 IS NOT NULL AND (film IS NULL OR film > ?1)",
        (data["film"], row),
    ).rowcount
    return moved > 0
