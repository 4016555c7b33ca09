"""The timeline of a machine: the end of its log, and more of it as one goes up."""

from __future__ import annotations

from collections.abc import Iterable
from typing import TYPE_CHECKING, ClassVar

from textual.binding import Binding, BindingType
from textual.message import Message

from worklog_tui.widgets.log_rows import Log
from worklog_tui.widgets.rows import Rows

if TYPE_CHECKING:
    from worklog_tui.model import Fact, FactKey, Note, Session


class Timeline(Rows):
    """The end of the log, and more of it as the person goes up."""

    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("enter", "choose", "look", id="timeline.choose", tooltip="What was read from this note, to put right"),
        Binding("e", "screen.edit", "edit", id="timeline.edit", tooltip="Give this note other words"),
        Binding("a", "screen.add_fact", "add", id="timeline.add", tooltip="Add what was not read from this note"),
        Binding(
            "space",
            "screen.mark_lines",
            "several",
            id="timeline.lines",
            tooltip="Mark the first line, then the last: one act over all of them",
        ),
        Binding(
            "h",
            "screen.hear_as",
            "always hear it so",
            id="timeline.hear",
            show=False,
            tooltip="The word put right last is always heard so",
        ),
        Binding(
            "d",
            "screen.divide",
            "divide here",
            id="timeline.divide",
            show=False,
            tooltip="From this note on it is a session of its own",
        ),
        Binding(
            "j",
            "screen.join",
            "join",
            id="timeline.join",
            show=False,
            tooltip="This session and the one before it are one",
        ),
        Binding("x", "screen.strike", "strike", id="timeline.strike", tooltip="Strike this note out"),
    ]

    margin = 11
    keeps_end = True
    first_marked = ""
    "The note that a run of lines begins with."

    def __init__(self) -> None:
        super().__init__("No notes yet. The first one begins the first session.")
        self.log_rows = Log()
        self._asked = False

    class Earlier(Message):
        """Notes from before those that are held are wanted, some or all."""

        def __init__(self, all_of_them: bool = False) -> None:
            super().__init__()
            self.all_of_them = all_of_them

    def run_to_here(self) -> list[str]:
        """The notes from the one that was marked to the one pointed at, in order."""
        begin = self.log_rows.place(self.first_marked)
        if begin is None:
            return []
        first, last = sorted((begin, self.here))
        return [row.key for row in self.rows[first : last + 1] if row.key]

    def two_sessions(self) -> tuple[str, str] | None:
        """The session pointed at and the one before it, by their uids; None at the first one."""
        below = next((row.key for row in self.rows[self.here :] if row.key), "")
        note = self.log_rows.note(below)
        before = self.log_rows.before(note.session) if note is not None else ""
        return (note.session, before) if note is not None and before else None

    def show_log(self, log: Log) -> None:
        """Show a log, with its last note in sight."""
        self.log_rows, self._asked = log, False
        self.show(log.rows, at_end=True)

    def show_news(self, log: Log) -> None:
        """Show a log that has come to be longer; what is looked at stays in sight unless that was the end."""
        looked_at = self.row.key if self.row is not None else ""
        place, at_last = log.place(looked_at), self.here >= len(self.rows) - 1
        if self.follows:
            self.show_log(log)
            if not at_last and place is not None:  # the row pointed at stays so, as long as all of it is in sight
                self.point(place)
            return
        here = self.here if place is None else place  # a note that was struck out: the one in its place
        self.log_rows, self._asked = log, False
        self.show(log.rows)
        self.point(here)

    def show_earlier(self, log: Log) -> None:
        """Put earlier notes above those that are there."""
        self._asked = False
        off = self.log_rows.put_before(log)
        self.put_above(self.log_rows.rows, off)

    def take(
        self, note: Note, session: Session | None, facts: Iterable[Fact], withdrawn: Iterable[FactKey] = ()
    ) -> None:
        """Show a note that was just kept: it comes in sight."""
        first = self.log_rows.take(note, session, facts, withdrawn)
        self.follows = True
        self.change(first, self.log_rows.rows[first:])

    def watch_scroll_y(self, old_value: float, new_value: float) -> None:
        super().watch_scroll_y(old_value, new_value)
        if new_value < old_value and new_value < 2 * self.size.height:
            self._ask(all_of_them=False)

    def action_edge(self, index: int) -> None:
        if not index:
            self._ask(all_of_them=True)
        super().action_edge(index)

    def _ask(self, all_of_them: bool) -> None:
        if self.log_rows.earlier > 0 and self.log_rows.start is not None and not self._asked:
            self._asked = True
            self.post_message(self.Earlier(all_of_them))
