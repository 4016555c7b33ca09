"""Words on their way into the logbook: kept in the order in which they were said, and in the draft until they are."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import TYPE_CHECKING, NamedTuple

from textual.screen import Screen

from worklog_tui.screens.background import Queue
from worklog_tui.screens.draft import Draft
from worklog_tui.screens.errands import Errands

if TYPE_CHECKING:
    from worklog_tui.bench.record import Kept


class Words(NamedTuple):
    """What is to be kept: one note, or the many lines of a paste."""

    text: str
    many: bool = False


class Keeping:
    """Keeps notes and pastes one after the other, each in a worker thread."""

    def __init__(
        self,
        screen: Screen[None],
        errands: Errands,
        machine: str,
        done: Callable[[Words, Sequence[Kept]], None],
        failed: Callable[[Words, Exception], None],
    ) -> None:
        self._screen = screen
        self._errands = errands
        self._machine = machine
        self._queue: Queue[Words, Sequence[Kept]] = Queue(screen, self._keep, done, failed)
        self._draft = Draft(errands.logbook, machine)

    def keep(self, text: str, many: bool = False) -> None:
        """Have words kept; `done` or `failed` tells what became of them."""
        self._queue.want(Words(text, many))

    async def settled(self) -> None:
        """Wait until all words are kept or given back."""
        await self._queue.settled()

    def take_draft(self) -> str:
        """The words that a crash left behind; call it in a worker thread."""
        return self._draft.take()

    def save_draft(self, half_typed: str) -> None:
        """Have what is not kept yet written beside the logbook, when it is other than before."""
        words = "\n".join([*(words.text for words in self._queue.waiting), half_typed]).strip("\n")
        if words != self._draft.words:
            self._draft.words = words
            self._screen.run_worker(self._draft.write, thread=True, exit_on_error=False)

    def leave(self, half_typed: str) -> None:
        """The screen goes: write the draft at once."""
        self._draft.words = "\n".join([*(words.text for words in self._queue.waiting), half_typed]).strip("\n")
        self._draft.leave()

    def _keep(self, words: Words) -> Sequence[Kept]:
        if words.many:
            return self._errands.keep_lines(self._machine, words.text)
        return [self._errands.keep_note(self._machine, words.text)]
