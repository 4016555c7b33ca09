"""Finding notes by their words and by what was read from them, and items by what they are about."""

from __future__ import annotations

from typing import TYPE_CHECKING

from worklog_tui import store
from worklog_tui.bench.machines import named
from worklog_tui.logbook.finding_items import holding
from worklog_tui.model import Hit, ItemHit

if TYPE_CHECKING:
    from worklog_tui.bench.desk import Desk


def find_notes(
    desk: Desk, text: str, machine_name: str | None = None, limit: int = 20, best_first: bool = False
) -> list[Hit]:
    """Notes that hold all the words, said or read, newest first; `"in quotes"` is a phrase, `word*` a beginning."""
    with store.reading(desk.logbook) as connection:
        machine = named(connection, machine_name).uid if machine_name is not None else None
        names = {one.uid: one.name for one in store.machines.all_machines(connection)}
        hits = []
        for note in store.search.find(connection, text, machine, limit, best_first):
            session = store.sessions.find(connection, note.session)
            assert session is not None, "a note has its session"
            read = tuple(store.derived.facts_of_note(connection, note.uid))
            hits.append(Hit(names[session.machine], session.start, note, read))
    return hits


def find_items(desk: Desk, text: str, machine_name: str | None = None, limit: int = 20) -> list[ItemHit]:
    """Items of one machine or of all that hold all the words, the open ones first."""
    from worklog_tui.bench.review import present_items

    with store.reading(desk.logbook) as connection:
        known = store.machines.all_machines(connection)
        those = [named(connection, machine_name)] if machine_name is not None else known
    found = [ItemHit(one.name, item) for one in those for item in holding(present_items(desk, one.name), text)]
    return sorted(found, key=lambda hit: hit.item.state == "done")[:limit]
