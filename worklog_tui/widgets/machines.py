"""The machines of a logbook, and below them the ways to get another."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING, ClassVar, Protocol

from textual.binding import Binding, BindingType

from worklog_tui.widgets.counted import counted
from worklog_tui.widgets.days import day
from worklog_tui.widgets.row import Row
from worklog_tui.widgets.rows import Rows

if TYPE_CHECKING:
    from worklog_tui.model import Instant


class MachineSummary(Protocol):
    """What is shown of a machine."""

    @property
    def name(self) -> str:
        """What it is called."""

    @property
    def kind(self) -> str:
        """What it is."""

    @property
    def sessions(self) -> int:
        """How many."""

    @property
    def notes(self) -> int:
        """How many."""

    @property
    def last_worked(self) -> Instant | None:
        """None when no date is known."""

    @property
    def open_items(self) -> int | None:
        """None when they were not counted."""


class Machines(Rows):
    """The list of the first screen."""

    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("enter", "choose", "open", id="machines.choose", tooltip="Open the machine pointed at"),
    ]

    NEW: ClassVar[str] = "\n new"
    "Key of the row that makes a new machine; no name holds a line end."
    DEMO: ClassVar[str] = "\n demo"

    def __init__(self) -> None:
        super().__init__("Looking at the logbook …")

    def show_machines(self, machines: Sequence[MachineSummary]) -> None:
        """Show these machines, and the two ways to get another."""
        rows = [Row.of(one.name, below=_told(one), key=one.name) for one in machines]
        first = "No machine yet: make a card for the first one." if not machines else ""
        rows.append(Row.of("A new machine", below=first or "Make a card; the name is enough.", key=self.NEW))
        rows.append(
            Row.of("The demo", below="Invented machines to look at; your logbook is left alone.", key=self.DEMO)
        )
        self.show(rows)


def _told(machine: MachineSummary) -> str:
    parts = [machine.kind]
    if machine.notes:
        parts.append(counted(machine.sessions, "session"))
    parts.append(counted(machine.notes, "note") if machine.notes else "no notes yet")
    if machine.last_worked is not None:
        parts.append(f"last worked on {day(machine.last_worked)}")
    if machine.open_items:
        parts.append(f"{machine.open_items} open")
    return ", ".join(filter(None, parts))
