"""Machines: their cards, and the line that each has in the list."""

from __future__ import annotations

from worklog_tui.model import Instant, Machine
from worklog_tui.store import rows
from worklog_tui.store.files import Connection


def save(connection: Connection, machine: Machine) -> None:
    """Add a machine, or put a new card in the place of the one with the same uid."""
    connection.execute(
        "INSERT INTO machine (uid, name, card) VALUES (?, ?, ?)"
        " ON CONFLICT (uid) DO UPDATE SET name = excluded.name, card = excluded.card",
        (machine.uid, machine.name, rows.card(machine)),
    )


def keep_first_card(connection: Connection, uid: str) -> None:
    """Keep the card that a machine came with, before an act gives it another; only the first time."""
    connection.execute(
        "INSERT OR IGNORE INTO card_as_it_came (machine_id, name, card) SELECT id, name, card FROM machine"
        " WHERE uid = ?",
        (uid,),
    )


def as_it_came(connection: Connection, uid: str) -> Machine | None:
    """The machine with the card that it came with; None when there is no such machine."""
    row = connection.execute(
        "SELECT machine.uid, coalesce(came.name, machine.name) AS name, coalesce(came.card, machine.card) AS card"
        " FROM machine LEFT JOIN card_as_it_came AS came ON came.machine_id = machine.id WHERE machine.uid = ?",
        (uid,),
    ).fetchone()
    return None if row is None else rows.machine(row)


def all_machines(connection: Connection) -> list[Machine]:
    """Every machine, in the order in which they came."""
    return [rows.machine(row) for row in connection.execute("SELECT uid, name, card FROM machine ORDER BY id")]


def called(connection: Connection, name: str) -> list[Machine]:
    """The machines with exactly that name."""
    found = connection.execute("SELECT uid, name, card FROM machine WHERE name = ? ORDER BY id", (name,))
    return [rows.machine(row) for row in found]


def by_uid(connection: Connection, uid: str) -> Machine:
    """The machine with that uid; a KeyError when there is none."""
    row = connection.execute("SELECT uid, name, card FROM machine WHERE uid = ?", (uid,)).fetchone()
    if row is None:
        raise KeyError(uid)
    return rows.machine(row)


def tallies(connection: Connection) -> dict[str, tuple[int, int, Instant | None]]:
    """For each machine's uid: sessions, notes, and when it was last worked on (None: not known)."""
    found = connection.execute(
        """
        SELECT machine.uid, (SELECT count(*) FROM session WHERE machine_id = machine.id) AS sessions,
            (SELECT count(*) FROM note WHERE machine_id = machine.id) AS notes, last.*
        FROM machine LEFT JOIN (
            SELECT machine_id, max(utc) AS utc, zone, utc_offset, known FROM (
                SELECT machine_id, utc, zone, utc_offset, known FROM session WHERE utc IS NOT NULL
                UNION ALL
                SELECT note.machine_id, note.utc, note.zone, note.utc_offset, note.known
                FROM machine JOIN note ON note.id = (
                    SELECT id FROM note WHERE machine_id = machine.id AND utc IS NOT NULL ORDER BY utc DESC LIMIT 1)
            ) GROUP BY machine_id
        ) AS last ON last.machine_id = machine.id
        """
    )
    return {row["uid"]: (row["sessions"], row["notes"], rows.instant(row)) for row in found}
