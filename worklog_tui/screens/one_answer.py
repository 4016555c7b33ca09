"""What stands before the log for a while and gives one answer, however often its key repeats."""

from __future__ import annotations

from typing import TypeVar

from textual.await_complete import AwaitComplete
from textual.screen import ModalScreen

Answer = TypeVar("Answer")


class OneAnswer(ModalScreen[Answer]):
    """A screen before others. A key that is held down answers it once, and closes nothing behind it."""

    _answered_once = False

    def dismiss(self, result: Answer | None = None) -> AwaitComplete:
        """Give the answer and go; after that, nothing."""
        if self._answered_once:
            return AwaitComplete()
        self._answered_once = True
        return super().dismiss(result)
