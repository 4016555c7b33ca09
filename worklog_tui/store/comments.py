"""Viewers' comments on a machine's films, without names."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Mapping

from worklog_tui.model import Comment
from worklog_tui.model.ids import derived
from worklog_tui.store.files import Connection


def add(connection: Connection, machine: str, texts: Iterable[str]) -> int:
    """Add comments after those that are there; the same paste again adds nothing. Returns how many were new."""
    row = connection.execute(
        "SELECT machine.id, coalesce(max(comment.number) + 1, 0) AS next FROM machine"
        " LEFT JOIN comment ON comment.machine_id = machine.id WHERE machine.uid = ? GROUP BY machine.id",
        (machine,),
    ).fetchone()
    seen: Counter[str] = Counter()
    number = first = int(row["next"])
    for words in texts:
        uid = derived("comment", machine, words, seen[words])
        seen[words] += 1
        number += connection.execute(
            "INSERT INTO comment (uid, machine_id, number, words) VALUES (?, ?, ?, ?) ON CONFLICT (uid) DO NOTHING",
            (uid, row["id"], number, words),
        ).rowcount
    return number - first


def load(connection: Connection, machine: str, aliases: Mapping[str, str] | None = None) -> list[Comment]:
    """The comments of a machine, in order; those of machines that are the same one too."""
    same = [machine, *(uid for uid, other in (aliases or {}).items() if other == machine)]
    found = connection.execute(
        "SELECT comment.words FROM comment JOIN machine ON machine.id = comment.machine_id"
        f" WHERE machine.uid IN ({', '.join('?' * len(same))}) ORDER BY number, comment.uid",
        same,
    )
    return [Comment(number, row["words"]) for number, row in enumerate(found)]
