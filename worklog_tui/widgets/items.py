"""The open items of a machine, with why each is open and where it was said."""

from __future__ import annotations

from collections.abc import Sequence
from typing import ClassVar

from textual.binding import Binding, BindingType

from worklog_tui.model import OpenItem
from worklog_tui.reports.sentence import REASONS
from worklog_tui.widgets.row import Row
from worklog_tui.widgets.rows import Rows

_GROUPS = (
    ("open", "Open"),
    ("awaited", "Awaited"),
    ("left so", "Left so on purpose"),
    ("noticed", "Noticed, nothing planned"),
)
_URGENT = {
    reason: place for place, reason in enumerate(("fault", "temporary", "part needed", "to do", "question", "fallback"))
}


class OpenItems(Rows):
    """The list of open items; done ones are left out."""

    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("enter", "choose", "go", id="items.choose", tooltip="Go to the note that raised it"),
    ]

    def __init__(self) -> None:
        super().__init__("Nothing is open. Say what is still to do, or which part is needed, and it stands here.")

    def show_items(self, items: Sequence[OpenItem], noticed: int = 0) -> None:
        """Show these items in groups, what is open first; so many were only noticed, shown or not."""
        rows: list[Row] = []
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
    why = [REASONS.get(item.reason, "")]
    if item.raised is not None:
        why.append(f"session {item.raised.session}, {item.raised.at}".rstrip(", "))
    if item.comment is not None:
        why.append("asked by a viewer" if item.people < 2 else f"asked by {item.people} viewers")
    key = item.anchors[0].note if item.anchors else ""
    return Row.of(item.about, below=", ".join(filter(None, why)), key=key)
