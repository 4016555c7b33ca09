"""What viewers asked and suggested, by what they ask: what the log answers, and a draft reply."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from worklog_tui.widgets.row import Row
from worklog_tui.widgets.rows import Rows
from worklog_tui.widgets.sections import section

if TYPE_CHECKING:
    from worklog_tui.reports.viewers import ViewerGroup, Viewers


class ViewersRows(Rows):
    """The comments that want something, the same one from many once."""

    def __init__(self) -> None:
        super().__init__("No viewers' comments yet. Copy them from the page and paste them here; no names are kept.")

    def show_viewers(self, found: Viewers) -> None:
        """Show what needs an answer; what does not is counted."""
        asked = [group for group in found.groups if group.kind == "question"]
        rows = _part("Questions that are open", [group for group in asked if not group.settled])
        rows += _part("Questions that the log answers", [group for group in asked if group.settled])
        rows += _part("Suggestions", [group for group in found.groups if group.kind == "suggestion"])
        if found.chatter:
            says = "comment says" if found.chatter == 1 else "comments say"
            rows.append(Row.of(f"{found.chatter} {says} nothing that needs an answer."))
        self.show(rows)


def _part(title: str, groups: list[ViewerGroup]) -> list[Row]:
    return section(f"{title} ({len(groups)})", (row for group in groups for row in _group(group)))


def _group(group: ViewerGroup) -> Iterator[Row]:
    key = group.answered.note if group.answered is not None else ""
    people = "one viewer" if group.count == 1 else f"{group.count} viewers"
    says = "perhaps the log says" if group.perhaps else "the log says"
    told = [f"{says}, {group.where}: {group.said}"] if group.answered is not None else []
    told += [f"speaks for: {group.speaks_for}"] if group.speaks_for else []
    told += [f"it is {group.open_item}"] if group.open_item else []
    words = " / ".join(f"“{words}”" for words in group.wordings) or group.about
    yield Row.of(f"{words}, {people}", below="; ".join(told), key=key)
    if group.reply:
        yield Row.of(f"  Draft reply: {group.reply}", key=key)
