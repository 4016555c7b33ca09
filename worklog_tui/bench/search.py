"""Finding notes by their words."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from worklog_tui import store
from worklog_tui.bench.machines import named
from worklog_tui.model import Instant, Note

if TYPE_CHECKING:
    from worklog_tui.bench.desk import Desk


@dataclass(frozen=True, slots=True)
class Hit:
    """A note that was found, and where it stands."""

    machine: str
    "The name of the machine."
    start: Instant | None
    "When its session began; None when that is not known."
    note: Note


def find_notes(
    desk: Desk, text: str, machine_name: str | None = None, limit: int = 20, best_first: bool = False
) -> list[Hit]:
    """Notes that hold all the words, newest first; `"in quotes"` is a phrase, `word*` a beginning."""
    with store.reading(desk.logbook) as connection:
        machine = named(connection, machine_name).uid if machine_name is not None else None
        names = {one.uid: one.name for one in store.machines.all_machines(connection)}
        hits = []
        for note in store.search.find(connection, text, machine, limit, best_first):
            session = store.sessions.find(connection, note.session)
            assert session is not None, "a note has its session"
            hits.append(Hit(names[session.machine], session.start, note))
    return hits
