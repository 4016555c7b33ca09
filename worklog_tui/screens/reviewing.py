"""Keeps the lists of a recording screen up to date with the logbook."""

from __future__ import annotations

from collections.abc import Callable
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING, NamedTuple

from textual.screen import Screen

from worklog_tui.screens.background import Latest, Rest, hand_back
from worklog_tui.screens.heap import give_back
from worklog_tui.widgets.log_rows import Log
from worklog_tui.widgets.timeline import Timeline

if TYPE_CHECKING:
    from worklog_tui.bench.outlook import Outlook
    from worklog_tui.bench.pages import Page, Wanted
    from worklog_tui.screens.errands import Errands

EVERYTHING = 10_000_000
"Notes; more than any machine has."
PAUSE = 1.0
"Seconds without a key before what depends on the whole log is worked out anew."
Lengths = tuple[tuple[str, int], ...]


class LogScreen(Screen[None]):
    """A screen with a timeline."""

    def log_shown(self) -> None:
        """The timeline shows a page of the logbook."""


class Came(NamedTuple):
    """A page of the log and its rows, both made in the worker thread."""

    page: Page
    log: Log


class Reviewing:
    """Reads the log in worker threads and hands it to the lists; what other windows add comes by itself."""

    def __init__(
        self,
        screen: LogScreen,
        errands: Errands,
        machine: str,
        shown: Callable[[Page], None],
        worked_out: Callable[[Outlook], None],
        failed: Callable[[object, Exception], None],
    ) -> None:
        self._screen, self._errands, self._machine = screen, errands, machine
        self._shown = shown
        self.own = ""
        "The session that this window records in."
        self._point_at = ""
        self._acts = 0
        self._file: object = None
        self._first = Latest[None, Came](screen, lambda _: self._read(), self._show_first, failed)
        self._news = Latest[Lengths, "Came | None"](screen, self._read_news, self._show_news, failed)
        self._again = Latest[int, Came](screen, self._read_so_many, self._show_again, failed)
        self._earlier = Latest["Wanted", Came](screen, self._read_before, self._show_earlier, failed)
        self._worked_out = worked_out
        self._outlooks = Latest[None, "Outlook | None"](screen, self._work_out, self._show_outlook, failed)
        self._rest = Rest(screen, PAUSE, lambda: self._outlooks.want(None))

    def begin(self) -> None:
        """Read the end of the log, then the rest of what is shown."""
        self._file = state_of(self._errands.logbook)
        self._first.want(None)

    def note_kept(self) -> None:
        """One more note stands in the timeline already; the rest is worked out anew."""
        self._rest.want()

    def changed(self) -> None:
        """The log was corrected: what is shown is read again."""
        self._again.want(max(self._log.notes - self._log.earlier, 1))
        self._rest.want()

    def put_off(self) -> None:
        """A key came: what is worked out anew can wait a little longer."""
        self._rest.put_off()

    def look(self) -> None:
        """See whether something was added to the logbook, by this window or by another."""
        state = state_of(self._errands.logbook)
        if state != self._file and not self._news.waiting and not self._first.waiting:
            self._file = state
            self._news.want(tuple(self._log.lengths.items()))

    def go_up(self, all_of_them: bool = False, point_at: str = "") -> None:
        """Have earlier notes shown; then point at one, by its uid."""
        from worklog_tui.bench.pages import PAGE, Wanted

        self._point_at = point_at
        if self._log.start is not None:
            self._earlier.want(Wanted(self._log.start, EVERYTHING if all_of_them else PAGE, self.own))

    @property
    def _log(self) -> Log:
        return self._screen.query_one(Timeline).log_rows

    def _wanted(self, acts: int | None = None) -> Wanted:
        from worklog_tui.bench.pages import PAGE, Wanted

        return Wanted(None, PAGE, self.own, acts)

    def _read(self) -> Came:
        return came(self._errands.page(self._machine, self._wanted()))

    def _read_news(self, known: Lengths) -> Came | None:
        page = self._errands.news(self._machine, known, self._wanted(self._acts))
        return came(page) if page is not None else None

    def _read_so_many(self, count: int) -> Came:
        from worklog_tui.bench.pages import PAGE, Wanted

        return came(self._errands.page(self._machine, Wanted(None, max(count, PAGE), self.own)))

    def _read_before(self, wanted: Wanted) -> Came:
        return came(self._errands.page(self._machine, wanted))

    def _work_out(self, _: None) -> Outlook | None:
        """What is known first is shown at once."""
        for found in self._errands.outlooks(self._machine):
            if found.whole:
                return found
            hand_back(self._screen, partial(self._worked_out, found))
        return None

    def _show_outlook(self, _: None, found: Outlook | None) -> None:
        if found is not None:
            self._worked_out(found)
            give_back()

    def _show_first(self, _: None, found: Came) -> None:
        self._acts = found.page.acts
        timeline = self._screen.query_one(Timeline)
        if timeline.log_rows.notes:  # a note was kept while the log was read
            timeline.show_news(found.log)
        else:
            timeline.show_log(found.log)
        self._screen.log_shown()
        self._file = None  # what came in between is looked for at once
        self._shown(found.page)
        self._outlooks.want(None)

    def _show_news(self, known: Lengths, found: Came | None) -> None:
        if found is None:
            return
        if tuple(self._log.lengths.items()) != known:  # a note of this window came in between
            self._file = None
            return
        self._acts = found.page.acts
        self._screen.query_one(Timeline).show_news(found.log)
        self._screen.log_shown()
        self._rest.want()

    def _show_again(self, _: int, found: Came) -> None:
        self._acts = found.page.acts
        self._screen.query_one(Timeline).show_news(found.log)
        self._screen.log_shown()

    def _show_earlier(self, wanted: Wanted, found: Came) -> None:
        timeline = self._screen.query_one(Timeline)
        if wanted.before == self._log.start:
            timeline.show_earlier(found.log)
        if wanted.count == EVERYTHING:
            place = timeline.log_rows.place(self._point_at)
            timeline.point(place if place is not None else 0)


def came(page: Page) -> Came:
    """A page with its rows."""
    return Came(page, Log.of(page.parts, page.lengths))


def state_of(logbook: Path) -> object:
    """What changes when the logbook is written to; a few millionths of a second."""
    found = []
    for path in (logbook, logbook.with_name(f"{logbook.name}-wal")):
        try:
            seen = path.stat()
            found.append((seen.st_ino, seen.st_size, seen.st_mtime_ns))
        except OSError:
            found.append((0, 0, 0))
    return found
