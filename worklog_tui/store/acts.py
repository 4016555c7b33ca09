"""Acts of the person: only ever added, each with a counter greater than any seen."""

from __future__ import annotations

import json
from collections.abc import Iterable, Sequence

from worklog_tui.model import Act
from worklog_tui.store import rows
from worklog_tui.store.files import Connection

_ORDER = "ORDER BY counter, device, uid"


def next_counter(connection: Connection) -> int:
    """A counter greater than any that this logbook has seen, from whichever device."""
    counter: int = connection.execute("SELECT coalesce(max(counter), 0) + 1 FROM act").fetchone()[0]
    return counter


def seen_on(connection: Connection, target: str) -> tuple[str, ...]:
    """The uids of the acts on a target, in their order: what a new act on it has seen."""
    found = connection.execute(f"SELECT uid FROM act WHERE target = ? {_ORDER}", (target,))
    return tuple(row["uid"] for row in found)


def add(connection: Connection, act: Act) -> bool:
    """Add an act; the same uid again changes nothing. Returns whether it is new."""
    done = connection.execute(
        "INSERT INTO act (uid, device, counter, verb, target, seen, value, utc, zone, utc_offset, known)"
        " VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?) ON CONFLICT (uid) DO NOTHING",
        (
            act.uid, act.device, act.counter, act.verb, act.target, json.dumps(act.seen),
            None if act.value is None else json.dumps(act.value, ensure_ascii=False), *rows.instant_values(act.instant),
        ),
    )  # fmt: skip
    return done.rowcount > 0


def load(connection: Connection, targets: Iterable[str] | None = None) -> list[Act]:
    """All acts, or those on the given targets, in their order."""
    found = [rows.act(row) for row in connection.execute(f"SELECT * FROM act {_ORDER}")]
    if targets is None:
        return found
    wanted = set(targets)
    return [act for act in found if act.target in wanted]


def of_verbs(connection: Connection, verbs: Sequence[str]) -> list[Act]:
    """The acts with one of the verbs, and all undos, in their order."""
    marks = ", ".join("?" * len(verbs))
    found = connection.execute(f"SELECT * FROM act WHERE verb IN ({marks}, 'undo') {_ORDER}", tuple(verbs))
    return [rows.act(row) for row in found]


def on_note(connection: Connection, note: str, verbs: Sequence[str]) -> list[Act]:
    """The acts with one of the verbs on a note, on what was read from it, or on a run of lines that holds it.

    With them come all undos, when there is any such act.
    """
    marks = ", ".join("?" * len(verbs))
    found = [
        rows.act(row)
        for row in connection.execute(
            f"SELECT * FROM act WHERE target = ? AND verb IN ({marks})"
            f" UNION ALL SELECT * FROM act WHERE target > ? AND target < ? AND verb IN ({marks})"
            f" UNION ALL SELECT * FROM act WHERE verb IN ({marks}) AND verb IN ('strike lines', 'mend word',"
            " 'set subject') AND target <> ? AND instr(value, ?)",
            (note, *verbs, f"{note}/", f"{note}0", *verbs, *verbs, note, note),
        )
    ]
    if found:
        found += [rows.act(row) for row in connection.execute("SELECT * FROM act WHERE verb = 'undo'")]
    return sorted(found, key=lambda act: act.order)


def by_uid(connection: Connection, uid: str) -> Act | None:
    """The act with that uid."""
    row = connection.execute("SELECT * FROM act WHERE uid = ?", (uid,)).fetchone()
    return None if row is None else rows.act(row)


def of_device(connection: Connection, device: str) -> list[Act]:
    """The acts of one device, in their order."""
    found = connection.execute(f"SELECT * FROM act WHERE device = ? {_ORDER}", (device,))
    return [rows.act(row) for row in found]
