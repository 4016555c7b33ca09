"""Long work: how far it is, and one key that stops it; what is stopped has changed nothing."""

from __future__ import annotations

from typing import ClassVar

from textual import events
from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.containers import Vertical
from textual.widgets import ProgressBar, Static

from worklog_tui.screens.one_answer import OneAnswer
from worklog_tui.widgets.key_line import KeyLine
from worklog_tui.widgets.literal import literal


class LongWork(OneAnswer[None]):
    """Stands while something long is under way. The thread that works calls `tell`."""

    DEFAULT_CSS = """
    LongWork {
        align: center middle;
        & > Vertical {
            width: 64; max-width: 100%; height: auto; background: $surface; padding: 0 2;
            border: solid $foreground 30%;
        }
        Static { height: auto; }
    }
    """
    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("escape,x", "stop", "stop it", id="long.stop", tooltip="Stop; nothing of it is kept, nothing is lost"),
    ]

    def __init__(self, what: str, total: int) -> None:
        super().__init__()
        self._what, self._total = what, max(total, 1)
        self.done = 0
        self.stopped = False

    def compose(self) -> ComposeResult:
        with Vertical():
            yield Static(literal(self._what), markup=False)
            yield ProgressBar(total=self._total, show_eta=False)
            yield Static("Esc stops it: nothing of it is kept then, and you are asked again.", markup=False)
            yield Static("", classes="pasted", markup=False)
            yield KeyLine(wraps=True)

    def on_mount(self) -> None:
        self.set_interval(0.2, self._draw)

    def on_paste(self, event: events.Paste) -> None:
        """What is pasted meanwhile waits with the person."""
        event.stop()
        self.query_one(".pasted", Static).update(literal("That paste was not taken: paste it again when this is done."))

    def tell(self, done: int) -> bool:
        """In the thread that works: so much is done. Gives False when it is to stop."""
        self.done = done
        return not self.stopped

    def action_stop(self) -> None:
        self.stopped = True

    def _draw(self) -> None:
        self.query_one(ProgressBar).progress = min(self.done, self._total)
