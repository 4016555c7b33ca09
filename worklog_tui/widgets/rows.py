"""A list of rows of any length, drawn line by line: only what is seen is made."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import ClassVar

from rich.segment import Segment
from rich.style import Style
from textual import events
from textual.binding import Binding, BindingType
from textual.cache import LRUCache
from textual.geometry import Size
from textual.message import Message
from textual.scroll_view import ScrollView
from textual.strip import Strip

from worklog_tui.widgets.line_index import LineIndex
from worklog_tui.widgets.row import NARROW, Piece, Row, plain
from worklog_tui.widgets.row_drawing import Pen, blank
from worklog_tui.widgets.wrapping import breaks


class Rows(ScrollView, can_focus=True):
    """Wrapped rows with one of them pointed at; Enter or a second click chooses it."""

    COMPONENT_CLASSES: ClassVar[set[str]] = {
        "rows--margin", "rows--below", "rows--heading", "rows--empty", "rows--here",
    }  # fmt: skip
    DEFAULT_CSS = """
    Rows {
        background: $background;
        overflow-x: hidden;
        scrollbar-gutter: stable;
        scrollbar-size-vertical: 1;
        & .rows--margin { color: $text-muted; }
        & .rows--below { color: $text-muted; }
        & .rows--heading { text-style: bold; }
        & .rows--empty { color: $text-muted; }
        & .rows--here { text-style: bold; }
    }
    """
    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("up", "step(-1)", "up", show=False, id="rows.up", tooltip="The row above"),
        Binding("down", "step(1)", "down", show=False, id="rows.down", tooltip="The row below"),
        Binding("pageup", "page(-1)", "page up", show=False, id="rows.page-up", tooltip="A screenful up"),
        Binding("pagedown", "page(1)", "page down", show=False, id="rows.page-down", tooltip="A screenful down"),
        Binding("home", "edge(0)", "first", show=False, id="rows.first", tooltip="The first row"),
        Binding("end", "edge(-1)", "last", show=False, id="rows.last", tooltip="The last row"),
        Binding("enter", "choose", "choose", show=False, id="rows.choose", tooltip="Choose the row pointed at"),
    ]

    margin = 2
    "Cells left of the words."
    keeps_end = False
    "Whether the end stays in sight once it was reached; other lists stay where the person is in them."

    def __init__(self, empty: str = "") -> None:
        """A list that says `empty` while it has no rows."""
        super().__init__()
        self.empty = empty
        self.here = 0
        "The row pointed at, from 0."
        self._rows: list[Row] = []
        self._index = LineIndex()
        self._laid: int | None = None
        self.follows = False
        "Whether the end stays in sight when rows come or the size changes."
        self._pieces: LRUCache[int, list[Piece]] = LRUCache(256)

    class Chosen(Message):
        """A row was chosen."""

        def __init__(self, rows: Rows, row: Row) -> None:
            super().__init__()
            self.rows = rows
            self.row = row

        @property
        def control(self) -> Rows:
            """The list."""
            return self.rows

    @property
    def rows(self) -> Sequence[Row]:
        """All rows."""
        return self._rows

    @property
    def row(self) -> Row | None:
        """The row pointed at; None in an empty list."""
        return self._rows[self.here] if self._rows else None

    def show(self, rows: Iterable[Row], at_end: bool = False) -> None:
        """Show these rows in place of all; `at_end`: with the last one in sight."""
        self._rows = list(rows)
        self.here = max(len(self._rows) - 1, 0) if at_end else min(self.here, max(len(self._rows) - 1, 0))
        self.here = self.here or next((n for n, row in enumerate(self._rows) if not row.heading), 0)
        self.follows = at_end
        self._lay_from(0)
        self._follow()

    def add(self, row: Row) -> None:
        """Add one row at the end; the list follows when its end was in sight."""
        self.change(len(self._rows), [row])

    def change(self, start: int, rows: Iterable[Row]) -> None:
        """Put other rows in place of those from `start` on."""
        at_last = self.here >= len(self._rows) - 1
        self._rows[start:] = rows
        if at_last or self.follows:
            self.here = max(len(self._rows) - 1, 0)
        self._lay_from(start)
        self._follow()

    def put_above(self, rows: Sequence[Row], off: int) -> None:
        """Show these rows, which are those of now with others above them; `off` of the present ones are gone."""
        self._rows, moved = list(rows), len(rows) - len(self._rows)
        above = self.scroll_offset.y - (self._index.top(self.here) if self._index else 0)
        self.here = max(self.here + moved, off)
        self._lay_from(0)
        if self._index:
            line = max(self._index.top(self.here) + above, 0)
            self.scroll_to(y=line, animate=False, immediate=True, force=True)

    def _follow(self) -> None:
        """The end comes in sight again when it was to be in sight."""
        if self.follows:
            self.scroll_end(animate=False, immediate=True, force=True)
            self.follows = True

    def watch_scroll_y(self, old_value: float, new_value: float) -> None:
        super().watch_scroll_y(old_value, new_value)
        if old_value != new_value:
            self.follows = self.keeps_end and self.is_vertical_scroll_end

    def _lay_from(self, start: int) -> None:
        """Bring the line index up to date from a row on."""
        self._pieces.clear()
        width = self.scrollable_content_region.width
        if width <= 0:
            self._laid = None
            return
        if width != self._laid:
            start, self._laid = 0, width
        self._index.lay(start, (row.height(width, self.margin) for row in self._rows[start:]))
        self.virtual_size = Size(width, self._index.lines)
        self.refresh()

    def on_show(self) -> None:
        """Rows may have come while the list was out of sight."""
        self.call_after_refresh(self.on_resize)

    def on_resize(self) -> None:
        """Wrap anew when the width changed, with the same row in sight."""
        follows = self.follows
        if self.scrollable_content_region.width != self._laid:
            self._lay_from(0)
            if not follows:
                self._show_here()
        if follows:
            self.follows = True
            self._follow()

    def _show_here(self) -> None:
        if not self._index or not self.size.height:  # nothing is in sight of a list that is not shown
            return
        top, end, seen = self._index.top(self.here), self._index.end(self.here), self.size.height
        if top < self.scroll_offset.y or end - top > seen:
            self.scroll_to(y=top, animate=False, immediate=True, force=True)
        elif end > self.scroll_offset.y + seen:
            self.scroll_to(y=end - seen, animate=False, immediate=True, force=True)

    def point(self, index: int) -> None:
        """Point at a row and bring it in sight."""
        if self._rows:
            self.here = min(max(index, 0), len(self._rows) - 1)
            self._show_here()
            self.refresh()

    def action_step(self, by: int) -> None:
        """To the next row that is no heading; within one that is taller than the screen, line by line."""
        if not self._index:
            return
        seen_from, seen_to = self.scroll_offset.y, self.scroll_offset.y + self.size.height
        if (by > 0 and self._index.end(self.here) > seen_to) or (by < 0 and self._index.top(self.here) < seen_from):
            self.scroll_to(y=seen_from + by, animate=False, immediate=True, force=True)
        else:
            ahead = range(self.here + by, len(self._rows) if by > 0 else -1, by)
            self.point(next((at for at in ahead if not self._rows[at].heading), self.here + by))

    def action_page(self, by: int) -> None:
        if self._index:
            line = self._index.top(self.here) + by * max(self.size.height - 1, 1)
            self.point(self._index.row_at(max(line, 0)))

    def action_edge(self, index: int) -> None:
        self.point(len(self._rows) - 1 if index else 0)
        if index:
            self.scroll_end(animate=False, immediate=True, force=True)

    def action_choose(self) -> None:
        if self.row is not None:
            self.post_message(self.Chosen(self, self.row))

    def on_click(self, event: events.Click) -> None:
        """The first click points, the second chooses."""
        index = self._index.row_at(self.scroll_offset.y + event.y)
        if index >= len(self._rows):
            return
        if index == self.here and event.chain > 1:
            self.action_choose()
        self.here = index
        self.refresh()

    def on_focus(self) -> None:
        self.refresh()

    on_blur = on_focus

    def render_line(self, y: int) -> Strip:
        """One screen line."""
        width = self.scrollable_content_region.width
        line = self.scroll_offset.y + y
        if not self._rows:
            return self._render_empty(line, width)
        index = self._index.row_at(line)
        if index >= len(self._index) or self._laid is None:
            return blank(width, self.rich_style)
        pieces = self._pieces.get(index)
        if pieces is None:  # by the width that the line index was made for: a resize is drawn once before it is told
            pieces = self._pieces[index] = self._rows[index].pieces(self._laid, self.margin)
        pen = Pen(self.margin if self._laid >= NARROW else 2, self._styles(), self.has_focus and index == self.here)
        return pen.draw(self._rows[index], line - self._index.top(index), pieces).adjust_cell_length(
            width, self.rich_style
        )

    def _styles(self) -> dict[str, Style]:
        parts = ("margin", "below", "heading", "here")
        return {"plain": self.rich_style, **{part: self.get_component_rich_style(f"rows--{part}") for part in parts}}

    def _render_empty(self, line: int, width: int) -> Strip:
        text = plain(self.empty)
        pieces = breaks(text, max(width - 2, 1)) if line < len(text) else []
        if line >= len(pieces):
            return blank(width, self.rich_style)
        start, end = pieces[line]
        style = self.get_component_rich_style("rows--empty")
        return Strip([Segment(f"  {text[start:end]}", style)]).adjust_cell_length(width, self.rich_style)
