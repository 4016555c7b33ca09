"""The head line: which machine, which session, how long, and the time."""

from __future__ import annotations

from textual.widgets import Static

from worklog_tui.widgets.literal import literal


class HeadLine(Static):
    """One line at the top."""

    DEFAULT_CSS = """
    HeadLine { height: 1; width: 1fr; text-style: bold; }
    """

    def __init__(self) -> None:
        super().__init__("", markup=False)
        self.said = ""
        "What stands there, as plain text."

    def say(self, *parts: str) -> None:
        """Show the parts that are not empty, with commas between."""
        text = ", ".join(filter(None, parts))
        if text != self.said:
            self.said = text
            self.update(literal(text))
