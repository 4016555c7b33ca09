"""What can be read from across the shop: the clock in large figures, the last note, the next step."""

from __future__ import annotations

from textual.app import ComposeResult
from textual.containers import VerticalScroll
from textual.widgets import Digits, Static

from worklog_tui.widgets.literal import literal


class FarView(VerticalScroll, can_focus=False):
    """Few words, far apart."""

    DEFAULT_CSS = """
    FarView {
        height: 1fr; padding: 1 2; scrollbar-size-vertical: 1;
        & Static { height: auto; text-style: bold; margin-bottom: 1; }
        & Digits { width: auto; }
    }
    """

    def compose(self) -> ComposeResult:
        yield Static("", id="far-what", markup=False)
        yield Digits("", id="far-clock")
        yield Static("", id="far-last", markup=False)
        yield Static("", id="far-next", markup=False)

    def show(self, what: str, clock: str, last: str, following: str) -> None:
        """Which clock it is and what it shows, the last note, and what comes next."""
        for place, text in (("what", what), ("last", last), ("next", following)):
            self.query_one(f"#far-{place}", Static).update(literal(text))
        self.query_one(Digits).update(value=literal(clock).plain)
