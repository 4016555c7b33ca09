"""The note line: one line of talk or typing, wrapped, with what is understood underlined."""

from __future__ import annotations

from typing import ClassVar

from rich.text import Text
from textual import events
from textual.binding import Binding, BindingType
from textual.message import Message
from textual.widgets import TextArea

from worklog_tui.widgets.literal import literal

Mark = tuple[int, int]


class NoteLine(TextArea):
    """Takes words; Enter keeps them, a paste of several lines is handed over whole."""

    DEFAULT_CSS = """
    NoteLine {
        height: auto;
        min-height: 1;
        max-height: 6;
        border: none;
        padding: 0;
        background: $background;
        &:focus { border: none; }
    }
    """
    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("enter", "keep", "keep", id="note.keep", tooltip="Keep this note"),
        Binding("escape", "leave", "places and keys", id="note.leave", tooltip="To the list, where single keys work"),
        Binding("pageup", "look(-1)", "page up", show=False, id="note.page-up", tooltip="The list, a screenful up"),
        Binding("pagedown", "look(1)", "page down", show=False, id="note.page-down", tooltip="A screenful down in it"),
        Binding("ctrl+q", "app.quit", "quit", id="note.quit", tooltip="Leave; what is half typed comes back"),
    ]

    def __init__(self, placeholder: str = "") -> None:
        super().__init__(
            placeholder=placeholder,
            soft_wrap=True,
            tab_behavior="focus",
            highlight_cursor_line=False,
            compact=True,
        )
        self.cursor_blink = False
        self.marks: tuple[Mark, ...] = ()

    class Kept(Message):
        """Enter was pressed on words."""

        def __init__(self, words: str) -> None:
            super().__init__()
            self.words = words

    class Pasted(Message):
        """A paste of several lines came; it is not in the line."""

        def __init__(self, text: str) -> None:
            super().__init__()
            self.text = text

    class Looked(Message):
        """The person wants to see more of the list, without leaving the line."""

        def __init__(self, by: int) -> None:
            super().__init__()
            self.by = by

    class Left(Message):
        """The person wants out of the line."""

    def underline(self, marks: tuple[Mark, ...]) -> None:
        """Underline these stretches of the text: from (inclusive) to (exclusive)."""
        if marks != self.marks:
            self.marks = marks
            self.notify_style_update()
            self.refresh()

    def put(self, text: str) -> None:
        """Put words into the line, with the cursor behind them."""
        self.load_text(literal(text).plain)
        self.move_cursor(self.document.end)

    def action_keep(self) -> None:
        """Hand the words over; several lines go the way of a paste. Nothing happens on an empty line."""
        text = self.text
        if not text.strip():
            return
        self.load_text("")
        self.post_message(self.Pasted(text) if "\n" in text.strip() else self.Kept(text))

    def action_leave(self) -> None:
        self.post_message(self.Left())

    def action_look(self, by: int) -> None:
        self.post_message(self.Looked(by))

    def take_paste(self, text: str) -> None:
        """One line goes into the words; several are handed over whole, together with what stood in the line."""
        text = text.replace("\r\n", "\n").replace("\r", "\n")
        if "\n" in text.strip("\n"):
            self.post_message(self.Pasted(text))
            return
        place = self.selection
        result = self._replace_via_keyboard(literal(text.strip("\n")).plain, *place)
        if result is not None:
            self.move_cursor(result.end_location)

    async def _on_key(self, event: events.Key) -> None:
        """Enter comes in its turn: it must not overtake the letters before it, however fast they come."""
        if event.key == "enter":
            event.stop()
            event.prevent_default()
            self.action_keep()
        elif event.key == "up" and not self.text:
            event.stop()
            event.prevent_default()
            self.action_leave()
        else:
            await super()._on_key(event)

    async def _on_paste(self, event: events.Paste) -> None:
        event.stop()
        event.prevent_default()
        self.take_paste(event.text)

    def get_line(self, line_index: int) -> Text:
        """The line with its understood words underlined."""
        line = super().get_line(line_index)
        if self.marks:
            base = sum(len(self.document.get_line(i)) + 1 for i in range(line_index))
            for start, end in self.marks:
                line.stylize("underline", max(start - base, 0), max(end - base, 0))
        return line
