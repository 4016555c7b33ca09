"""Keeps the lists of a recording screen up to date with the logbook: timeline, open items, next step."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING, NamedTuple

from textual.screen import Screen

from worklog_tui.model import Advice
from worklog_tui.screens.background import Latest, Rest
from worklog_tui.screens.errands import Errands
from worklog_tui.widgets.items import OpenItems, still_open
from worklog_tui.widgets.next_step import NextStep
from worklog_tui.widgets.places import Places
from worklog_tui.widgets.timeline import Log, Timeline

if TYPE_CHECKING:
    from worklog_tui.bench.review import Review


class Seen(NamedTuple):
    """A whole log, and its rows."""

    review: Review
    log: Log


class Reviewing:
    """Reads the log in a worker thread, and hands it to the lists. The advice follows when it is ready."""

    def __init__(
        self,
        screen: Screen[None],
        errands: Errands,
        machine: str,
        shown: Callable[[], None],
        failed: Callable[[object, Exception], None],
    ) -> None:
        self._screen = screen
        self._shown = shown
        self._kept = 0
        "So many times something was kept; it tells whether a log that was read is of now."
        self._logs = Latest[int, Seen](screen, lambda _: see(errands.review(machine)), self._show_log, failed)
        self._reviews = Latest[int, "Review"](screen, lambda _: errands.review(machine), self._show_review, failed)
        self._rest = Rest(screen, 1.0, lambda: self._reviews.want(self._kept))
        self._advice = Latest["Review", Advice](screen, errands.advice, self._show_advice, failed)

    def begin(self) -> None:
        """Read the whole log."""
        self._logs.want(self._kept)

    def note_kept(self) -> None:
        """One more note stands in the timeline already; the rest is worked out anew."""
        self._kept += 1
        self._rest.want()

    def put_off(self) -> None:
        """A key came: what is worked out anew can wait a little longer."""
        self._rest.put_off()

    def lines_kept(self) -> None:
        """Many notes were kept: read the whole log again."""
        self._kept += 1
        self._logs.want(self._kept)

    def _show_log(self, kept: int, seen: Seen) -> None:
        if kept != self._kept:  # a note came while the log was read
            self._logs.want(self._kept)
            return
        self._screen.query_one(Timeline).show_log(seen.log)
        self._shown()
        self._show_review(kept, seen.review)

    def _show_review(self, _: int, review: Review) -> None:
        self._screen.query_one(OpenItems).show_items(review.items)
        self._screen.query_one(Places).count("items", still_open(review.items))
        self._advice.want(review)

    def _show_advice(self, _: Review, advice: Advice) -> None:
        self._screen.query_one(NextStep).show_advice(advice)


def see(review: Review) -> Seen:
    """The rows of a log; made in the worker thread."""
    return Seen(review, Log.of(review.history))
