"""The recorder: the note line, what is understood, the timeline, open items and the next step."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING, ClassVar

from textual import events
from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.containers import Horizontal, Vertical
from textual.screen import Screen
from textual.widgets import Footer, Static, TextArea

from worklog_tui.model import Session
from worklog_tui.screens.background import Latest, Rest, reason
from worklog_tui.screens.errands import Errands, Preview
from worklog_tui.screens.keeping import Keeping, Words
from worklog_tui.screens.layout import HEIGHTS, LAYOUT, LISTS, PLACES, WIDTHS
from worklog_tui.screens.reviewing import Reviewing
from worklog_tui.widgets.head_line import HeadLine
from worklog_tui.widgets.items import OpenItems
from worklog_tui.widgets.last_time import LastTime
from worklog_tui.widgets.log_rows import marks_in
from worklog_tui.widgets.next_step import NextStep
from worklog_tui.widgets.note_line import NoteLine
from worklog_tui.widgets.places import Places
from worklog_tui.widgets.rows import Rows
from worklog_tui.widgets.timeline import Timeline
from worklog_tui.widgets.understood import Understood

if TYPE_CHECKING:
    from worklog_tui.bench.pages import Page
    from worklog_tui.bench.record import Kept
    from worklog_tui.notes import ReadSession

BREAK = 4 * 3600.0
"Seconds without a note after which since-last-time is shown first."


class RecordingScreen(Screen[None]):
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
        super().__init__()
        self.errands = errands
        self.machine = machine
        self._now = errands.now
        self._session: Session | None = None
        self._half_typed = ""
        self._keeping = Keeping(self, errands, machine, self._kept, self._not_kept)
        self._drafts = Latest[None, str](self, lambda _: self._keeping.take_draft(), self._restore, self._unread)
        self._reviewing = Reviewing(self, errands, machine, self._log_came, self._unread, errands.now)
        self._previews = Latest[str, Preview](
            self, lambda words: errands.preview(machine, words), self._show_preview, self._unread
        )
        self._stop = Rest(self, 0.05, lambda: self._previews.want(self._half_typed))
        self._grammar = Latest[None, None](self, lambda _: errands.get_ready(), lambda _, __: None, self._unread)
        self._looks = Latest[str, "ReadSession"](self, errands.look, self._ask, self._unread)

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
        """After the first paint: the draft, the log, and the first reading of words, which loads the grammar."""
        self._drafts.want(None)
        self._reviewing.begin()
        self._grammar.want(None)
        self.set_interval(1.0, self._every_second)

    def on_unmount(self) -> None:
        self._keeping.leave(self._half_typed)

    async def settled(self) -> None:
        """Wait until every note is kept."""
        await self._keeping.settled()

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

    def on_paste(self, event: events.Paste) -> None:
        """A paste anywhere goes to the note line."""
        event.stop()
        line = self.query_one(NoteLine)
        line.focus()
        line.take_paste(event.text)

    def on_text_area_changed(self, event: TextArea.Changed) -> None:
        if isinstance(event.text_area, NoteLine) and event.text_area.text != self._half_typed:
            self._half_typed = event.text_area.text
            if self._half_typed.strip():
                self._reviewing.put_off()
                self._stop.want()
            else:
                self._show_preview(self._half_typed, Preview())

    def on_note_line_kept(self, message: NoteLine.Kept) -> None:
        self._keeping.keep(message.words)

    def on_note_line_pasted(self, message: NoteLine.Pasted) -> None:
        self.query_one(Understood).say("Looking at the paste …")
        self._looks.want(message.text)

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

    def _ask(self, text: str, read: ReadSession) -> None:
        from worklog_tui.screens.paste import PasteQuestion, shape_of

        def answer(keep: bool | None) -> None:
            if keep:
                self.query_one(Understood).say(f"Keeping {shape_of(read)} …")
                self._keeping.keep(text, many=True)
            else:
                self.query_one(Understood).say("Nothing of the paste was kept.")

        self.app.push_screen(PasteQuestion(read), answer)

    def _kept(self, words: Words, kept: Sequence[Kept]) -> None:
        when = f"{self._now():%H:%M}"
        for one in kept:
            self._session = one.session
            self._reviewing.own = one.session.uid
        if words.many:
            facts = sum(len(one.facts) for one in kept)
            self.query_one(Understood).say(f"Kept {when}: {len(kept)} notes, {facts} facts.")
        else:
            self._leave_last_time()
            for one in kept:
                self.query_one(Timeline).take(one.note, one.session, one.facts, one.withdrawn)
                self.query_one(Understood).kept(when, one.facts, one.questions, one.spooled, one.unread)
        self._reviewing.note_kept()
        self._every_second()

    def _not_kept(self, words: Words, error: Exception) -> None:
        self._put_back(words.text)
        self.query_one(Understood).say(f"Not kept: {reason(error)}. The words are back in the note line.")

    def _unread(self, _: object, error: Exception) -> None:
        self.query_one(Understood).say(f"That could not be read: {reason(error)}. Notes are kept all the same.")

    def _restore(self, _: None, words: str) -> None:
        if words:
            self._put_back(words)
            self.query_one(Understood).say("These words were left half typed; they are back.")

    def _put_back(self, words: str) -> None:
        """Put words before those that stand in the note line."""
        line = self.query_one(NoteLine)
        line.put("\n".join(filter(None, (words, line.text))))
        self._half_typed = line.text

    def _show_preview(self, words: str, seen: Preview) -> None:
        line = self.query_one(NoteLine)
        if line.text != words:
            return
        known = self.query_one(Timeline).log_rows
        here = next((f.main.note for f in reversed(seen.facts) if not known.holds(f.main.note)), "")
        line.underline(marks_in(seen.facts, here))
        self.query_one(Understood).hear(words, seen.facts, seen.unsure)

    def _log_came(self, page: Page) -> None:
        """The end of the log is there: after a break, what is known since last time is shown first."""
        self._show_head()
        last = page.last_worked
        quiet = (self._now() - last.moment()).total_seconds() if last is not None else BREAK
        if page.parts and quiet >= BREAK and self._session is None and self._at == "timeline":
            self._show_place("last")

    def _leave_last_time(self) -> None:
        """A note was kept: the timeline shows it."""
        if self._at == "last":
            self._show_place("timeline")

    def _every_second(self) -> None:
        self._reviewing.look()
        self._keeping.save_draft(self._half_typed)
        self._show_head()

    def _show_head(self) -> None:
        log = self.query_one(Timeline).log_rows
        self.query_one(HeadLine).show(self.machine, log, self._session, self._now())
