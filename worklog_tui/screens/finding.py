"""Find a note: by its words, or by what was read from it; Enter leads to it."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING, ClassVar, NamedTuple

from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.containers import Vertical
from textual.widgets import Input, Static

from worklog_tui.screens.background import Latest, reason
from worklog_tui.screens.one_answer import OneAnswer
from worklog_tui.widgets.counted import counted
from worklog_tui.widgets.field import Field
from worklog_tui.widgets.found_rows import FoundRows
from worklog_tui.widgets.key_line import KeyLine
from worklog_tui.widgets.literal import literal

if TYPE_CHECKING:
    from worklog_tui.bench.finding_lines import FoundLine
    from worklog_tui.screens.errands import Errands
    from worklog_tui.widgets.rows import Rows

KINDS = {
    "": "all", "reading": "readings", "finding": "what was found", "work": "what was done", "suspect": "causes",
    "follow_up": "what is to be come back to", "asked": "what was not sure",
}  # fmt: skip


class Sought(NamedTuple):
    """What is looked for."""

    words: str
    kind: str


class Finding(OneAnswer[str]):
    """The answer is the note to go to, or nothing."""

    DEFAULT_CSS = """
    Finding {
        align: center bottom;
        & > Vertical { width: 100%; height: 100%; background: $surface; padding: 0 1; }
        .told { height: 1; color: $text-muted; }
        & FoundRows { height: 1fr; }
    }
    """
    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("tab", "kind(1)", "only one kind", id="find.kind", tooltip="Only readings …", priority=True),
        Binding("down", "to_list", "to the list", id="find.list", tooltip="Into the list", show=False),
        Binding("escape", "dismiss('')", "close", id="find.leave", tooltip="Back to the log"),
    ]

    def __init__(self, errands: Errands, machine: str) -> None:
        super().__init__()
        self._kind = ""
        self._looks = Latest[Sought, "Sequence[FoundLine]"](
            self, lambda sought: errands.find(machine, sought.words, sought.kind), self._show, self._failed
        )

    def compose(self) -> ComposeResult:
        with Vertical():
            yield Field(placeholder='words of the note; "in quotes" a phrase, word* a beginning', compact=True)
            yield Static("", classes="told", markup=False)
            yield FoundRows()
            yield KeyLine(wraps=True)

    def on_mount(self) -> None:
        self.query_one(Input).focus()
        self._look()

    def on_input_changed(self) -> None:
        self._look()

    def on_input_submitted(self) -> None:
        rows = self.query_one(FoundRows)
        if rows.row is not None and rows.row.key:
            self.dismiss(rows.row.key)

    def action_to_list(self) -> None:
        self.query_one(FoundRows).focus()

    def action_kind(self, by: int) -> None:
        """The next kind."""
        kinds = list(KINDS)
        self._kind = kinds[(kinds.index(self._kind) + by) % len(kinds)]
        self._look()

    def on_rows_chosen(self, message: Rows.Chosen) -> None:
        message.stop()
        if message.row.key:
            self.dismiss(message.row.key)

    def _look(self) -> None:
        self._looks.want(Sought(self.query_one(Input).value, self._kind))

    def _show(self, sought: Sought, found: Sequence[FoundLine]) -> None:
        self.query_one(FoundRows).show_found(found)
        only = f", only {KINDS[sought.kind]}" if sought.kind else ""
        self.query_one(".told", Static).update(literal(f"{counted(len(found), 'line')}{only}, newest first."))

    def _failed(self, _: Sought, error: Exception) -> None:
        self.query_one(".told", Static).update(literal(f"{reason(error)}."))
