"""Acts of the person: only ever added, each with a counter greater than any seen."""

from __future__ import annotations

import json
from collections.abc import Iterable

from worklog_tui.model import Act
from worklog_tui.store import rows
from worklog_tui.store.files import Connection


def next_counter(connection: Connection) -> int:
    """A counter greater than any that this logbook has seen, from whichever device."""
    counter: int = connection.execute("SELECT coalesce(max(counter), 0) + 1 FROM act").fetchone()[0]
    return counter


def seen_on(connection: Connection, target: str) -> tuple[str, ...]:
    """The uids of the acts on a target, in their order: what a new act on it has seen."""
    found = connection.execute("SELECT uid FROM act WHERE target = ? ORDER BY counter, device", (target,))
    return tuple(row["uid"] for row in found)


def add(connection: Connection, act: Act) -> None:
    """Add an act; the same uid again changes nothing."""
    connection.execute(
        "INSERT INTO act (uid, device, counter, verb, target, seen, value, utc, zone, utc_offset, known)"
        " VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?) ON CONFLICT (uid) DO NOTHING",
        (
            act.uid, act.device, act.counter, act.verb, act.target, json.dumps(act.seen),
            None if act.value is None else json.dumps(act.value, ensure_ascii=False), *rows.instant_values(act.instant),
        ),
    )  # fmt: skip


def load(connection: Connection, targets: Iterable[str] | None = None) -> list[Act]:
    """All acts, or those on the given targets, in their order."""
    found = [rows.act(row) for row in connection.execute("SELECT * FROM act ORDER BY counter, device")]
    if targets is None:
        return found
    wanted = set(targets)
    return [act for act in found if act.target in wanted]
