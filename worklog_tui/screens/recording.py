"""The recorder: the note line, what is understood, and the places of one machine, each behind a key of its own."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import TYPE_CHECKING, ClassVar

from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.containers import Horizontal, Vertical
from textual.message import Message

from worklog_tui.screens.far import Far
from worklog_tui.screens.filming import FILM_KEYS
from worklog_tui.screens.layout import HEIGHTS, LAYOUT, PLACES, WIDTHS
from worklog_tui.screens.reviewing import Reviewing
from worklog_tui.widgets.head_line import HeadLine, film_told, waits_told
from worklog_tui.widgets.key_line import KeyLine
from worklog_tui.widgets.note_line import NoteLine
from worklog_tui.widgets.places import Places
from worklog_tui.widgets.timeline import Timeline
from worklog_tui.widgets.understood import Understood

if TYPE_CHECKING:
    from worklog_tui.bench.outlook import Outlook
    from worklog_tui.bench.pages import Page
    from worklog_tui.bench.record import Kept
    from worklog_tui.screens.errands import Errands
    from worklog_tui.widgets.rows import Rows

LEAVES = "Esc leaves."
BREAK = 4 * 3600.0
"Seconds without a note after which since-last-time is shown first."


class RecordingScreen(Far):
    """One machine on the bench."""

    AUTO_FOCUS = "NoteLine"
    HORIZONTAL_BREAKPOINTS = WIDTHS
    VERTICAL_BREAKPOINTS = HEIGHTS
    DEFAULT_CSS = LAYOUT
    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("question_mark", "app.keys", "keys", id="go.keys", tooltip="All keys of this place", key_display="?"),
        Binding("n", "write", "note", id="go.note", tooltip="To the note line"),
        Binding("slash", "find", "find", id="go.find", tooltip="Find a note by its words", key_display="/"),
        Binding("escape", "go('timeline')", "timeline", id="go.back", tooltip="Back to the timeline", show=False),
        *(
            Binding(one.key, f"go('{place}')", one.short, show=False, id=f"go.{place}", tooltip=one.tells)
            for place, one in PLACES.items()
        ),
        Binding("g,f5", "close_up", "closing up", id="go.closing", tooltip="What was begun and not heard finished"),
        Binding("b", "before_start", "before a start", id="go.before", tooltip="What to look at before it is started"),
        *FILM_KEYS,
        Binding("z", "far", "far view", id="go.far", tooltip="Large and little, to read from far", show=False),
        Binding("k", "lock", "wipe the keys", id="go.lock", tooltip="Keys do nothing while you wipe them", show=False),
        Binding("u", "undo", "take back", id="acts.undo", tooltip="Take back what was corrected last", show=False),
        Binding("y", "redo", "do again", id="acts.redo", tooltip="Do again what was taken back", show=False),
        Binding("m", "app.machines", "machines", id="go.machines", tooltip="Put another machine on the bench"),
    ]

    def __init__(self, errands: Errands, machine: str) -> None:
        super().__init__(errands, machine)
        self.opening = True
        "Until the note line takes keys."
        self._reviewing = Reviewing(self, errands, machine, self._log_came, self.show_outlook, self.unread)

    class Ready(Message):
        """The note line takes keys."""

        def __init__(self, screen: RecordingScreen) -> None:
            super().__init__()
            self.screen = screen

    def compose(self) -> ComposeResult:
        yield HeadLine()
        yield Places(PLACES)
        with Horizontal(id="log"):
            timeline = Timeline()
            timeline.id = "timeline-list"
            yield timeline
        with Vertical(id="write"):
            yield NoteLine("What do you see, measure or do? Enter keeps it.")
            yield Understood()
        yield KeyLine()

    def on_mount(self) -> None:
        self.query_one("#write").border_title = "note"
        self.query_one(NoteLine).focus()
        self.post_message(self.Ready(self))
        self.show_head()
        self.call_after_refresh(self._begin)

    async def _begin(self) -> None:
        """After the first paint."""
        await self.complete()
        self._reviewing.begin()
        self.look_at_camera()
        if self.has_class("-low") and not self.query_one(Understood).said:  # there is no room for the line of keys
            self.say("Esc: places and keys; there ? tells all.")
        self.set_interval(1.0, self._every_second)

    def action_write(self) -> None:
        self.query_one(NoteLine).focus()

    def on_timeline_earlier(self, message: Timeline.Earlier) -> None:
        self._reviewing.go_up(message.all_of_them)

    def on_rows_chosen(self, message: Rows.Chosen) -> None:
        """A note opens the page of what was read from it; anything else leads to the note where it was said."""
        from worklog_tui.widgets.items import OpenItems

        rows, key = message.rows, message.row.key
        if isinstance(rows, Timeline):
            if key:
                self._open_page(key)
            return
        note = rows.note_of(key) if isinstance(rows, OpenItems) else key
        if note:
            self.jump(note)

    def jump(self, note: str) -> None:
        """To a note of the timeline, however far up it stands."""
        timeline = self.query_one(Timeline)
        place = timeline.log_rows.place(note)
        self.action_go("timeline")
        if place is not None:
            timeline.point(place)
        else:
            self._reviewing.go_up(all_of_them=True, point_at=note)

    def _open_page(self, note: str) -> None:
        from worklog_tui.screens.note_page import NotePage

        def closed(changed: bool | None) -> None:
            if changed:
                self.log_changed(note)

        self.app.push_screen(NotePage(self.errands, note), closed)

    def action_find(self) -> None:
        """Find a note by its words or by what was read from it."""
        from worklog_tui.screens.finding import Finding

        self.app.push_screen(Finding(self.errands, self.machine), self._to_note)

    def action_before_start(self) -> None:
        """What to go through before a start."""
        from worklog_tui.screens.before_start import BeforeStartScreen

        if self.outlook is None or not self.outlook.whole:
            self.say("It is still being worked out; ask again in a moment.")
            return
        self.app.push_screen(BeforeStartScreen(self.outlook.before, self.outlook.cautions), self._to_note)

    def action_close_up(self) -> None:
        """Ask what was begun and not heard finished."""
        from worklog_tui.screens.closing_up import ClosingUpScreen

        if self.outlook is None or not self.outlook.asked.questions:
            working = self.outlook is None and self.query_one(Timeline).rows
            self.say("It is still being worked out; ask again in a moment." if working else "There is nothing to ask.")
            return
        self.app.push_screen(
            ClosingUpScreen(self.errands, self.machine, self.outlook.asked),
            lambda changed: self.log_changed("") if changed else None,
        )

    def closes_up(self, then: Callable[[], None]) -> bool:
        """At the end of a session of this window the questions come, then what follows; False where there are none."""
        asked = self.outlook.asked if self.outlook is not None else None
        if asked is None or not asked.questions or self.session is None or self.clip is not None:
            return False
        from worklog_tui.screens.closing_up import ClosingUpScreen

        self.app.push_screen(ClosingUpScreen(self.errands, self.machine, asked, LEAVES), lambda _: then())
        return True

    def show_outlook(self, outlook: Outlook) -> None:
        """What was worked out is there; so are the questions of a paste."""
        super().show_outlook(outlook)
        self._offer_closing_up()

    def _offer_closing_up(self) -> None:
        """After a paste, once: what was begun and not heard finished. Never while filming or over half typed words."""
        if not self.pasted or self.outlook is None or self.clip is not None or self.half_typed:
            return
        self.pasted, count = False, len(self.outlook.asked.questions)
        if count:
            what = "One thing was" if count == 1 else f"{count} things were"
            self.say(f"{self.query_one(Understood).said} {what} begun and not heard finished: F5 asks about it.")

    def _to_note(self, note: str | None) -> None:
        if note:
            self.jump(note)

    def sessions_moved(self) -> None:
        """None stands last for being recorded in until the next note."""
        super().sessions_moved()
        self._reviewing.own = ""

    def log_changed(self, note: str) -> None:
        """What is shown is read again."""
        self._reviewing.changed()

    def key_came(self) -> None:
        """The look at the whole log can wait."""
        self._reviewing.put_off()

    def notes_kept(self, kept: Sequence[Kept]) -> None:
        """The rest is worked out anew; after since-last-time the timeline shows the note."""
        if self.session is not None:
            self._reviewing.own = self.session.uid
        if self.at == "last":
            self.show_place("timeline")
        self._reviewing.note_kept()
        self._every_second()

    def _log_came(self, page: Page) -> None:
        """The end of the log is there: after a break, what is known since last time is shown first."""
        self.begin_notes()
        self.show_head()
        last = page.last_worked
        quiet = abs((self.now() - last.moment()).total_seconds()) if last is not None else BREAK
        if page.parts and quiet >= BREAK and self.session is None and self.at == "timeline":
            self.show_place("last")

    def _every_second(self) -> None:
        self._reviewing.look()
        self.save_draft()
        self.show_head()

    def show_head(self) -> None:
        """The head line, and the view from far when it is shown."""
        log = self.query_one(Timeline).log_rows
        now = self.now()
        film = film_told(self.clip, now)
        waits = waits_told(self.outlook.waits, self.outlook.items, now) if self.outlook is not None else ""
        self.query_one(HeadLine).show(self.machine, log, self.session, now, film, waits)
        if self.has_class("-far"):
            self.show_far(now)

    def camera_changed(self) -> None:
        """The head line says it; what waited for the camera to stop is offered."""
        self.show_head()
        self._offer_closing_up()
