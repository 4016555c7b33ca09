"""Words on their way into the logbook: kept in the order in which they were said, and in the draft until they are."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import TYPE_CHECKING, NamedTuple

from textual.screen import Screen

from worklog_tui.screens.background import Queue
from worklog_tui.screens.draft import Draft
from worklog_tui.screens.heap import give_back

if TYPE_CHECKING:
    from worklog_tui.bench.record import Kept
    from worklog_tui.screens.errands import Errands


class Words(NamedTuple):
    """What is to be kept: one note, the many lines of a paste, or viewers' comments."""

    text: str
    how: str = "note"
    "note, lines or comments."
    told: Callable[[int], bool] | None = None
    "Called with how many lines are read; False stops it."
    without: frozenset[int] = frozenset()
    "Lines of a paste to leave out, from 0."


class StoppedByHand(Exception):
    """The person stopped it; nothing of it was kept."""


class Outcome(NamedTuple):
    """What was kept."""

    notes: Sequence[Kept] = ()
    comments: int = 0


class Keeping:
    """Keeps notes and pastes one after the other, each in a worker thread."""

    def __init__(
        self,
        screen: Screen[None],
        errands: Errands,
        machine: str,
        done: Callable[[Words, Outcome], None],
        failed: Callable[[Words, Exception], None],
    ) -> None:
        self._screen = screen
        self._errands = errands
        self._machine = machine
        self._queue: Queue[Words, Outcome] = Queue(screen, self._keep, done, failed)
        self._draft = Draft(errands.logbook, machine)

    def keep(self, words: Words) -> None:
        """Have words kept; `done` or `failed` tells what became of them."""
        self._queue.want(words)

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

    def _keep(self, words: Words) -> Outcome:
        """In the worker thread; what the database needed for it is given back at once."""
        try:
            return self._written(words)
        finally:
            give_back()

    def _written(self, words: Words) -> Outcome:
        if words.how == "comments":
            return Outcome(comments=self._errands.keep_comments(self._machine, words.text))
        if words.how == "note":
            return Outcome([self._errands.keep_note(self._machine, words.text)])
        from worklog_tui.bench.telling import Stopped

        try:
            return Outcome(self._errands.keep_lines(self._machine, words.text, words.told, words.without))
        except Stopped as stopped:
            raise StoppedByHand from stopped
