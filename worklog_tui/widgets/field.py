"""A field for a few words. A short paste goes into it on one line; a long one is nobody's field: it goes further up."""

from __future__ import annotations

from textual import events
from textual.widgets import Input

from worklog_tui.widgets.literal import literal

LINES, SIGNS = 3, 400
"A paste of more than that was not meant for a field."


class Field(Input):
    """As Textual's, but of a paste of several lines none is dropped."""

    def _on_paste(self, event: events.Paste) -> None:
        event.prevent_default()
        if len(event.text.strip().splitlines()) > LINES or len(event.text) > SIGNS:
            return
        event.stop()
        words = literal(" ".join(event.text.split())).plain
        self.replace(words, *self.selection)
