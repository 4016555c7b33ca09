"""The recorder: the note line, what is understood, and the places of one machine, each behind a key of its own."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING, ClassVar

from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.containers import Horizontal, Vertical
from textual.widgets import Footer, Static

from worklog_tui.screens.errands import Errands
from worklog_tui.screens.layout import HEIGHTS, LAYOUT, LISTS, PLACES, WIDTHS
from worklog_tui.screens.note_taking import NoteTaking
from worklog_tui.screens.reviewing import Reviewing
from worklog_tui.widgets.head_line import HeadLine
from worklog_tui.widgets.items import OpenItems
from worklog_tui.widgets.last_time import LastTime
from worklog_tui.widgets.next_step import NextStep
from worklog_tui.widgets.note_line import NoteLine
from worklog_tui.widgets.places import Places
from worklog_tui.widgets.rows import Rows
from worklog_tui.widgets.timeline import Timeline
from worklog_tui.widgets.understood import Understood

if TYPE_CHECKING:
    from worklog_tui.bench.pages import Page
    from worklog_tui.bench.record import Kept

BREAK = 4 * 3600.0
"Seconds without a note after which since-last-time is shown first."


class RecordingScreen(NoteTaking):
    """One machine on the bench."""

    HORIZONTAL_BREAKPOINTS = WIDTHS
    VERTICAL_BREAKPOINTS = HEIGHTS
    DEFAULT_CSS = LAYOUT
    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("n", "write", "note", id="go.note", tooltip="To the note line"),
        Binding("escape", "write", "write a note", id="go.back", tooltip="To the note line", show=False),
        Binding("t", "go('timeline')", "timeline", id="go.timeline", tooltip="What was said, session by session"),
        Binding("l", "go('last')", "last time", id="go.last", tooltip="How it was left, and what was to come next"),
        Binding("o", "go('items')", "open", id="go.items", tooltip="What must be come back to, and why"),
        Binding("s", "go('step')", "next", id="go.step", tooltip="What to do next, and why"),
        Binding("m", "app.machines", "machines", id="go.machines", tooltip="Put another machine on the bench"),
    ]

    def __init__(self, errands: Errands, machine: str) -> None:
        super().__init__(errands, machine)
        self._reviewing = Reviewing(self, errands, machine, self._log_came, self.unread, errands.now)

    def compose(self) -> ComposeResult:
        yield HeadLine()
        yield Places(PLACES)
        with Horizontal(id="log"):
            yield Timeline()
            yield LastTime()
            with Vertical(id="side"):
                yield Static("Open items", classes="title", markup=False)
                yield OpenItems()
                yield Static("Next step", classes="title", markup=False)
                yield NextStep()
        with Vertical(id="write"):
            yield NoteLine("What do you see, measure or do? Enter keeps it.")
            yield Understood()
        yield Footer(show_command_palette=False)

    def on_mount(self) -> None:
        self.query_one("#write").border_title = "note"
        self.query_one(NoteLine).focus()
        self._show_head()
        self.call_after_refresh(self._begin)

    def _begin(self) -> None:
        """After the first paint."""
        self.begin_notes()
        self._reviewing.begin()
        self.set_interval(1.0, self._every_second)

    def action_write(self) -> None:
        self.query_one(NoteLine).focus()

    def action_go(self, place: str) -> None:
        """To one of PLACES."""
        self._show_place(place)
        self.query_one(LISTS[place]).focus()

    @property
    def _at(self) -> str:
        return self.query_one(Places).here

    def _show_place(self, place: str) -> None:
        for name in PLACES:
            self.set_class(name == place, f"at-{name}")
        self.query_one(Places).show(place)

    def on_places_wanted(self, message: Places.Wanted) -> None:
        self.action_go(message.place)

    def on_note_line_left(self) -> None:
        self.query_one(LISTS[self.query_one(Places).here]).focus()

    def on_timeline_earlier(self, message: Timeline.Earlier) -> None:
        self._reviewing.go_up(message.all_of_them)

    def on_rows_chosen(self, message: Rows.Chosen) -> None:
        """An open item leads to where it was said; a note tells what was read from which words."""
        timeline = self.query_one(Timeline)
        if message.rows is not timeline:
            place = timeline.log_rows.place(message.row.key)
            if not message.row.key:
                return
            self.action_go("timeline")
            if place is not None:
                timeline.point(place)
            else:
                self._reviewing.go_up(all_of_them=True, point_at=message.row.key)
        else:
            self.query_one(Understood).explain(timeline.log_rows.facts_of(message.row.key))

    def key_came(self) -> None:
        """The look at the whole log can wait."""
        self._reviewing.put_off()

    def notes_kept(self, kept: Sequence[Kept]) -> None:
        """The rest is worked out anew; after since-last-time the timeline shows the note."""
        if self.session is not None:
            self._reviewing.own = self.session.uid
        if self._at == "last":
            self._show_place("timeline")
        self._reviewing.note_kept()
        self._every_second()

    def _log_came(self, page: Page) -> None:
        """The end of the log is there: after a break, what is known since last time is shown first."""
        self._show_head()
        last = page.last_worked
        quiet = (self.now() - last.moment()).total_seconds() if last is not None else BREAK
        if page.parts and quiet >= BREAK and self.session is None and self._at == "timeline":
            self._show_place("last")

    def _every_second(self) -> None:
        self._reviewing.look()
        self.save_draft()
        self._show_head()

    def _show_head(self) -> None:
        log = self.query_one(Timeline).log_rows
        self.query_one(HeadLine).show(self.machine, log, self.session, self.now())
