"""Wiping the keys, and reading from across the shop."""

from __future__ import annotations

from datetime import datetime

from worklog_tui.screens.filming import Filming
from worklog_tui.widgets.note_line import NoteLine
from worklog_tui.widgets.timeline import Timeline


class Far(Filming):
    """A screen that can be read from far, and whose keys can be wiped."""

    def show_head(self) -> None:
        """The head line is to be brought up to date."""

    async def on_note_line_left(self) -> None:
        """Esc ends the view from far; else it leads to the list that is shown."""
        if self.has_class("-far"):
            await self.action_far()
        self.to_list()

    def action_lock(self) -> None:
        """Keys do nothing until the word open is typed."""
        from worklog_tui.screens.locked import Locked

        self.app.push_screen(Locked())

    async def action_far(self) -> None:
        """Large and little, or all of it again."""
        from worklog_tui.widgets.far_view import FarView

        if not self.query(FarView):
            await self.mount(FarView(), before="#write")
        self.toggle_class("-far")
        self.query_one(FarView).display = self.has_class("-far")
        self.query_one(NoteLine).focus()
        self.show_head()

    def show_far(self, now: datetime) -> None:
        """The clock, the last note, and what comes next."""
        from worklog_tui.model import clock
        from worklog_tui.widgets.far_view import FarView

        what, shown = "session", f"{now:%H:%M}"
        if self.clip is not None:
            what, shown = "film", clock(self.clip.second(now))
        elif self.session is not None and self.session.start is not None:
            shown = clock(int((now - self.session.start.moment()).total_seconds()) // 60)
        rows = [row for row in self.query_one(Timeline).rows if row.key]
        step = self.outlook.advice.steps[0].step if self.outlook and self.outlook.advice.steps else ""
        which = what if self.session or self.clip else "time of day"
        self.query_one(FarView).show(
            f"{which} (Esc ends this view)", shown, f"Last: {rows[-1].words}" if rows else "",
            f"Next: {step}" if step else "",
        )  # fmt: skip
