"""The places of the recorder as plain text: what their lists hold, row by row, for a screen reader or a pipe."""

from __future__ import annotations

from collections.abc import Iterable
from typing import TYPE_CHECKING

from worklog_tui.reports.lines import heading, wrapped
from worklog_tui.screens.layout import PLACES, STANDING, made_later
from worklog_tui.widgets.row import Row

if TYPE_CHECKING:
    from worklog_tui.bench.desk import Desk

NAMES = {one.name.replace(" ", "-").replace("'", ""): place for place, one in PLACES.items()}
"Places by the words that a command calls them."


def place_text(desk: Desk, machine: str, name: str, units: str, width: int) -> str:
    """What stands in a place (one of NAMES); readings are told in `units`. Raises UnknownMachine."""
    place = NAMES[name]
    return rows_text(*_rows(desk, machine, place, units), width)


def note_text(desk: Desk, machine: str, said: str, width: int) -> str:
    """What was read from one line, such as 2/14:05, with what is doubtful. CannotAct for no line."""
    from worklog_tui.bench.history import history
    from worklog_tui.bench.lines import line
    from worklog_tui.bench.note_facts import note_facts
    from worklog_tui.widgets.note_rows import NoteRows

    page = NoteRows()
    page.show_note(note_facts(desk, line(history(desk, machine), said).uid))
    return rows_text(page.rows, "", width)


def rows_text(rows: Iterable[Row], empty: str, width: int) -> str:
    """Rows one below the other; where there are none, what the list says then."""
    told: list[str] = []
    for row in rows:
        if row.heading:
            told += ["", *heading(row.words)]
            continue
        indent = " " * (2 + len(row.words) - len(row.words.lstrip()))
        told += wrapped(" ".join(filter(None, (row.margin, row.words))), width, indent, f"{indent}  ")
        told += wrapped(row.below, width, "      ") if row.below else []
    return "\n".join(told).strip("\n") or empty


def _rows(desk: Desk, machine: str, place: str, units: str) -> tuple[Iterable[Row], str]:
    if place == "timeline":
        from worklog_tui.bench.pages import Wanted, page
        from worklog_tui.screens.reviewing import EVERYTHING
        from worklog_tui.widgets.log_rows import Log
        from worklog_tui.widgets.timeline import Timeline

        found = page(desk, machine, Wanted(None, EVERYTHING))
        return Log.of(found.parts, found.lengths).rows, Timeline().empty
    from worklog_tui.bench.outlook import outlook
    from worklog_tui.screens.filled import fill
    from worklog_tui.widgets.items import OpenItems
    from worklog_tui.widgets.next_step import NextStep
    from worklog_tui.widgets.readings import Readings

    shown = made_later(place) if place not in STANDING else OpenItems() if place == "items" else NextStep()
    if isinstance(shown, Readings):
        shown.units = units
    fill(place, shown, outlook(desk, machine), desk.now())
    return shown.rows, shown.empty
