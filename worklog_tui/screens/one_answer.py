"""What stands before the log for a while and gives one answer, however often its key repeats."""

from __future__ import annotations

from typing import Protocol, TypeVar, runtime_checkable

from textual import events
from textual.await_complete import AwaitComplete
from textual.screen import ModalScreen

Answer = TypeVar("Answer")


@runtime_checkable
class TakesPastes(Protocol):
    """A screen that pastes go to."""

    def take_paste(self, text: str) -> None:
        """Take it, and say what becomes of it."""


class OneAnswer(ModalScreen[Answer]):
    """A screen before others. A key that is held down answers it once, and closes nothing behind it."""

    _answered_once = False

    def on_paste(self, event: events.Paste) -> None:
        """A paste that no field took goes where pastes go, whatever stands before it."""
        event.stop()
        for screen in reversed(self.app.screen_stack):
            if isinstance(screen, TakesPastes):
                screen.take_paste(event.text)
                return

    def dismiss(self, result: Answer | None = None) -> AwaitComplete:
        """Give the answer and go; after that, nothing."""
        if self._answered_once:
            return AwaitComplete()
        self._answered_once = True
        return super().dismiss(result)
