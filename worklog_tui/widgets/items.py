"""The open items of a machine, with why each is open and where it was said."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING, ClassVar

from textual.binding import Binding, BindingType

from worklog_tui.reports.again import open_again
from worklog_tui.reports.sentence import REASONS
from worklog_tui.widgets.row import Row
from worklog_tui.widgets.rows import Rows

if TYPE_CHECKING:
    from worklog_tui.model import OpenItem

_GROUPS = (
    ("open", "Open"),
    ("awaited", "Awaited"),
    ("left so", "Left so on purpose"),
    ("noticed", "Noticed, nothing planned"),
    ("done", "Dealt with last"),
)
_URGENT = {
    reason: place for place, reason in enumerate(("fault", "temporary", "part needed", "to do", "question", "fallback"))
}


class OpenItems(Rows):
    """The list of open items; done ones are left out."""

    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("enter", "choose", "go", id="items.choose", tooltip="Go to the note that raised it"),
        Binding("d", "screen.item('mark_done')", "done", id="items.done", tooltip="It is done"),
        Binding("w", "screen.item('set_awaited')", "awaited", id="items.awaited", tooltip="It is on its way"),
        Binding("p", "screen.item('leave_so')", "leave so", id="items.leave", tooltip="It is left so on purpose"),
        Binding("i", "screen.item('reopen')", "open again", id="items.reopen", tooltip="It is open again"),
        Binding("j", "screen.same_item", "the same", id="items.same", tooltip="Two are one: j on each", show=False),
        Binding("a", "screen.new_item", "add", id="items.add", tooltip="Add something to come back to"),
    ]

    def __init__(self) -> None:
        super().__init__("Nothing is open. Say what is still to do, or which part is needed, and it stands here.")
        self._items: dict[str, OpenItem] = {}

    @property
    def item(self) -> OpenItem | None:
        """The item pointed at."""
        return self._items.get(self.row.key) if self.row is not None else None

    def note_of(self, key: str) -> str:
        """The note that raised the item of a row; empty when none did."""
        one = self._items.get(key)
        return one.anchors[0].note if one is not None and one.anchors else ""

    def show_items(self, items: Sequence[OpenItem], noticed: int = 0) -> None:
        """Show these items in groups, what is open first; so many were only noticed, shown or not."""
        rows: list[Row] = []
        self._items = {_key(item): item for item in items}
        for state, title in _GROUPS:
            group = [item for item in items if item.state == state]
            rows += _group(title, group, max(noticed, len(group)) if state == "noticed" else len(group))
        self.show(rows)


def still_open(items: Sequence[OpenItem]) -> int:
    """How many need something done."""
    return sum(item.state == "open" for item in items)


def _group(title: str, items: list[OpenItem], count: int) -> list[Row]:
    if not items:
        return []
    first = sorted(items, key=lambda item: _URGENT.get(item.reason, len(_URGENT)))
    said = f"{title} ({count})" if count == len(items) else f"{title} (the last {len(items)} of {count})"
    return [Row.of(said, heading=True), *map(_row, first)]


def _row(item: OpenItem) -> Row:
    why = [] if item.state == "done" else [REASONS.get(item.reason, "")]
    if item.raised is not None:
        why.append(f"session {item.raised.session}, {item.raised.at}".rstrip(", "))
    if item.comment is not None:
        why.append("asked by a viewer" if item.people < 2 else f"asked by {item.people} viewers")
    why.append(open_again(item))
    return Row.of(item.about, below=", ".join(filter(None, why)), key=_key(item))


def _key(item: OpenItem) -> str:
    first = item.anchors[0] if item.anchors else None
    return f"{first.note}/{first.kind}/{first.start}/{first.nth}" if first else f"viewers/{item.comment}/{item.about}"
