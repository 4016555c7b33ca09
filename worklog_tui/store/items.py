"""The open items as they were last worked out, so that a list of machines need not work them out again."""

from __future__ import annotations

import json
from collections.abc import Sequence
from dataclasses import asdict

from worklog_tui.model import Again, Due, FactKey, OpenItem, Place
from worklog_tui.store.files import Connection


def replace(connection: Connection, machine: str, items: Sequence[OpenItem], basis: str) -> None:
    """Put these items in the place of the machine's former ones; `basis` says what they were worked out from."""
    row = connection.execute("SELECT id FROM machine WHERE uid = ?", (machine,)).fetchone()
    connection.execute("DELETE FROM item WHERE machine_id = ?", (row["id"],))
    connection.executemany(
        "INSERT INTO item"
        " (machine_id, about, name, reason, state, raised_session, raised_at, closed_session, closed_at, data)"
        " VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?)",
        [
            (row["id"], one.about, one.name, one.reason, one.state, *_place(one.raised), *_place(one.closed),
             json.dumps(_data(one), ensure_ascii=False))
            for one in items
        ],
    )  # fmt: skip
    connection.execute("INSERT OR REPLACE INTO counted (machine_id, basis) VALUES (?, ?)", (row["id"], basis))


def load(connection: Connection, machine: str) -> list[OpenItem]:
    """The items of a machine as they were kept."""
    found = connection.execute(
        "SELECT item.data FROM item JOIN machine ON machine.id = item.machine_id"
        " WHERE machine.uid = ? ORDER BY item.id",
        (machine,),
    )
    return [_item(json.loads(row["data"])) for row in found]


def basis(connection: Connection, machine: str) -> str:
    """What the items of a machine depend on, as text: notes, acts (an edit is one), comments and stamps."""
    row = connection.execute(
        """
        SELECT
            (SELECT count(*) FROM note WHERE machine_id = machine.id),
            (SELECT count(*) FROM act),
            (SELECT count(*) FROM comment WHERE machine_id = machine.id),
            (SELECT count(*) || '/' || coalesce(min(stamp) || '/' || max(stamp), '')
             FROM stamp JOIN session ON session.id = stamp.session_id WHERE session.machine_id = machine.id)
        FROM machine WHERE uid = ?
        """,
        (machine,),
    ).fetchone()
    return " ".join(map(str, row))


def is_current(connection: Connection, machine: str) -> bool:
    """Whether the items of a machine were worked out since the last change."""
    row = connection.execute(
        "SELECT basis FROM counted JOIN machine ON machine.id = machine_id WHERE machine.uid = ?", (machine,)
    ).fetchone()
    return row is not None and row["basis"] == basis(connection, machine)


def open_counts(connection: Connection) -> dict[str, int | None]:
    """How many items each machine has open, by uid; None where that was not worked out since the last change."""
    found = connection.execute(
        "SELECT machine.uid, counted.basis,"
        " (SELECT count(*) FROM item WHERE machine_id = machine.id AND state = 'open') AS open"
        " FROM machine LEFT JOIN counted ON counted.machine_id = machine.id"
    ).fetchall()
    return {row["uid"]: row["open"] if row["basis"] == basis(connection, row["uid"]) else None for row in found}


def _data(one: OpenItem) -> dict[str, object]:
    """An item as JSON data, its keys by their fields."""
    keys = {"anchors": [key._asdict() for key in one.anchors], "closed_by": one.closed_by and one.closed_by._asdict()}
    return asdict(one) | keys


def _place(place: Place | None) -> tuple[int | None, str | None]:
    return (place.session, place.at) if place else (None, None)


def _item(data: dict[str, object]) -> OpenItem:
    raised, closed, by = data.pop("raised"), data.pop("closed"), data.pop("closed_by")
    due, again = data.pop("due", None), data.pop("again", None)
    anchors = data.pop("anchors")
    assert isinstance(anchors, list)
    return OpenItem(
        anchors=tuple(FactKey(**anchor) for anchor in anchors),
        raised=Place(**raised) if isinstance(raised, dict) else None,
        closed=Place(**closed) if isinstance(closed, dict) else None,
        closed_by=FactKey(**by) if isinstance(by, dict) else None,
        due=Due(**due) if isinstance(due, dict) else None,
        again=_again(again) if isinstance(again, dict) else None,
        **data,  # type: ignore[arg-type]  # the rest are the plain fields that `asdict` wrote
    )


def _again(data: dict[str, object]) -> Again:
    places = {key: Place(**found) for key in ("place", "dealt_with") if isinstance(found := data.get(key), dict)}
    return Again(str(data["how"]), places.get("place"), str(data["what"]), places.get("dealt_with"))
