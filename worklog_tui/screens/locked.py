"""The keys do nothing while they are wiped."""

from __future__ import annotations

from typing import ClassVar

from textual import events
from textual.app import ComposeResult
from textual.binding import BindingType
from textual.containers import Vertical
from textual.widgets import Static

from worklog_tui.screens.one_answer import OneAnswer

WORD = "open"


class Locked(OneAnswer[None]):
    """Takes every key and every click; the word `open` ends it."""

    DEFAULT_CSS = """
    Locked {
        align: center middle;
        & > Vertical { width: 40; max-width: 100%; height: auto; background: $surface; padding: 1 2; }
        Static { width: 1fr; height: auto; text-style: bold; text-align: center; }
    }
    """
    BINDINGS: ClassVar[list[BindingType]] = []

    def __init__(self) -> None:
        super().__init__()
        self._typed = ""

    def compose(self) -> ComposeResult:
        with Vertical():
            yield Static("Wipe the keys now; none does anything. Type open to go on.", markup=False)

    def on_key(self, event: events.Key) -> None:
        event.stop()
        event.prevent_default()
        self._typed = (self._typed + (event.character or " "))[-len(WORD) :]
        if self._typed == WORD:
            self.dismiss(None)

    def on_paste(self, event: events.Paste) -> None:
        event.stop()
