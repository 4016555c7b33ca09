"""A throw-away logbook filled with the invented machines."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from worklog_tui.bench.desk import Desk


def fill(logbook: Path, folder: Path | None = None) -> tuple[Desk, list[str]]:
    """A desk on a new logbook with every machine of the folder, else of the shipped one; and the machines' names."""
    from worklog_tui import places
    from worklog_tui.bench.desk import open_desk
    from worklog_tui.bench.history import keep_comments
    from worklog_tui.bench.machines import add_machine, read_card
    from worklog_tui.bench.record import import_sessions

    desk, names = open_desk(logbook), []
    for card in sorted((folder or places.demo_sessions()).glob("*/machine.toml")):
        machine = add_machine(desk, read_card(card)[0])
        import_sessions(desk, machine, sorted(card.parent.glob("session-*.*")))
        written = card.parent / "comments.txt"
        if written.is_file():
            from worklog_tui.notes.comments import read_comments

            keep_comments(desk, machine.name, [c.words for c in read_comments(written.read_text(encoding="utf-8"))])
        names.append(machine.name)
    return desk, names
