"""Where sessions begin and end, put right from the keys: one divided at a note, two made one; `u` takes it back."""

from __future__ import annotations

from typing import TYPE_CHECKING

from worklog_tui.screens import deeds
from worklog_tui.screens.acting import Acting
from worklog_tui.widgets.timeline import Timeline

if TYPE_CHECKING:
    from worklog_tui.bench.acting import Done
    from worklog_tui.screens.acting import Wish

MOVES = ("split session", "join sessions")


class Dividing(Acting):
    """A screen whose keys divide and join sessions."""

    def sessions_moved(self) -> None:
        """Sessions begin or end elsewhere: which one the next note goes into is found out anew with it."""
        self.session = None

    def _acted(self, wish: Wish, done: Done) -> None:
        if done.act.verb in MOVES:
            self.sessions_moved()
        super()._acted(wish, done)

    def action_divide(self) -> None:
        """From the note pointed at on it is a session of its own."""
        row = self.query_one(Timeline).row
        if row is None or not row.key:
            self.say("Point at the note that the new session begins with.")
        else:
            self.act(deeds.divide(row.key), row.key)

    def action_join(self) -> None:
        """The session pointed at and the one before it are one."""
        timeline = self.query_one(Timeline)
        two = timeline.two_sessions()
        if two is None:
            self.say("There is no session before this one to join it with.")
        else:
            self.act(deeds.join(*two), timeline.row.key if timeline.row is not None else "")
