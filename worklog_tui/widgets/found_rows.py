"""Notes that were found, each with what was read from it."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import TYPE_CHECKING, Protocol

from worklog_tui.reports.sentence import sentence
from worklog_tui.reports.when import day
from worklog_tui.widgets.log_rows import marks_in, time_of
from worklog_tui.widgets.row import Row
from worklog_tui.widgets.rows import Rows

if TYPE_CHECKING:
    from worklog_tui.model import Fact, Instant, Note


class Found(Protocol):
    """A note with where it stands."""

    @property
    def note(self) -> Note:
        """The note."""

    @property
    def start(self) -> Instant | None:
        """When its session began."""

    @property
    def facts(self) -> Sequence[Fact]:
        """What was read from it."""


class FoundRows(Rows):
    """The list of what was found."""

    margin = 11

    def __init__(self) -> None:
        super().__init__("Nothing was found.")

    def show_found(self, found: Iterable[Found]) -> None:
        """Show these notes."""
        self.here = 0
        self.show(_row(one) for one in found)


def _row(one: Found) -> Row:
    said = "; ".join(dict.fromkeys(sentence(fact, brief=True) for fact in one.facts))
    below = ", ".join(filter(None, (day(one.start), said)))
    return Row.of(one.note.words, time_of(one.note), marks_in(one.facts, one.note.uid), below, key=one.note.uid)
