"""Before a start: what is not refitted, what was not looked at, how to stop it, and the usual cautions."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING, ClassVar

from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.containers import Vertical
from textual.widgets import Static

from worklog_tui.screens.one_answer import OneAnswer
from worklog_tui.widgets.before_rows import BeforeRows
from worklog_tui.widgets.key_line import KeyLine

if TYPE_CHECKING:
    from worklog_tui.logbook.outcomes import BeforeStart
    from worklog_tui.widgets.rows import Rows


class BeforeStartScreen(OneAnswer[str]):
    """The answer is a note to go to, or nothing."""

    DEFAULT_CSS = """
    BeforeStartScreen {
        align: center bottom;
        & > Vertical { width: 100%; height: 100%; background: $surface; padding: 0 1; }
        .asks { text-style: bold; height: auto; }
        & BeforeRows { height: 1fr; }
    }
    """
    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("escape,q,b", "dismiss('')", "close", id="before.leave", tooltip="Back to the log"),
    ]

    def __init__(self, seen: BeforeStart, cautions: Sequence[str]) -> None:
        super().__init__()
        self._seen, self._cautions = seen, cautions

    def compose(self) -> ComposeResult:
        with Vertical():
            yield Static("Before a start: look at each; nothing here is a promise", classes="asks", markup=False)
            yield BeforeRows()
            yield KeyLine(wraps=True)

    def on_mount(self) -> None:
        rows = self.query_one(BeforeRows)
        rows.show_before(self._seen, self._cautions)
        rows.focus()

    def on_rows_chosen(self, message: Rows.Chosen) -> None:
        message.stop()
        if message.row.key:
            self.dismiss(message.row.key)
