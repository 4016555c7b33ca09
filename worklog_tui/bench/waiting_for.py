"""What is waited for, on one machine or on all: it comes from the notes, so a restart changes nothing."""

from __future__ import annotations

from typing import TYPE_CHECKING

from worklog_tui.bench.history import history
from worklog_tui.bench.machines import machines
from worklog_tui.logbook.how_left import let_go
from worklog_tui.logbook.matters import anchor_text
from worklog_tui.logbook.standing import standing
from worklog_tui.logbook.wait import Wait
from worklog_tui.logbook.waits import waits as fold_waits

if TYPE_CHECKING:
    from worklog_tui.bench.desk import Desk


def waits(desk: Desk, machine_name: str | None = None, all_of_them: bool = False) -> list[tuple[str, Wait]]:
    """What is still waited for, each with the name of its machine, the one that is ready first before the others.

    `all_of_them`: also what is over. One that was let go by `bench.answering.let_go(desk, wait_key(wait))` is left out.
    """
    names = [machine_name] if machine_name is not None else [one.name for one in machines(desk)]
    found = []
    for name in names:
        known = history(desk, name)
        gone = let_go(standing(known.acts))
        for wait in fold_waits(known):
            if (all_of_them or wait.is_on(desk.now())) and wait_key(wait) not in gone:
                found.append((known.machine.name, wait))
    return sorted(found, key=lambda row: (row[1].ready is None, row[1].ready.timestamp() if row[1].ready else 0.0))


def wait_key(wait: Wait) -> str:
    """How a person's act names a wait."""
    return anchor_text(wait.reading.key)
