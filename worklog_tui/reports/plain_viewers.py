"""What viewers wrote, as plain text: what the log answers, what is open now, what they suggest, and draft replies."""

from __future__ import annotations

from collections.abc import Sequence

from worklog_tui.reports.counted import begun
from worklog_tui.reports.lines import heading, wrapped
from worklog_tui.reports.viewers import ViewerGroup, Viewers


def viewers_text(found: Viewers, width: int) -> str:
    """All groups, in three parts."""
    if not found.comments:
        return "There are no comments yet."
    rows: list[str] = []
    parts = (
        ("Questions that the log answers", [g for g in found.groups if g.kind == "question" and g.settled]),
        ("Questions that are open", [g for g in found.groups if g.kind == "question" and not g.settled]),
        ("Suggestions", [g for g in found.groups if g.kind == "suggestion"]),
    )
    for title, groups in parts:
        rows += _part(title, groups, width)
    rows += ["", *wrapped(_rest(found), width)]
    return "\n".join(rows).strip("\n")


def _part(title: str, groups: Sequence[ViewerGroup], width: int) -> list[str]:
    if not groups:
        return []
    rows = ["", *heading(f"{title} ({len(groups)})")]
    for group in groups:
        rows += ["", *_group(group, width)]
    return rows


def _group(group: ViewerGroup, width: int) -> list[str]:
    people = "one viewer" if group.count == 1 else f"{group.count} viewers"
    rows = wrapped(f"{begun(group.about)} ({people})", width, "- ", "  ")
    for wording in group.wordings:
        rows += wrapped(f"“{wording}”", width, "    ", "     ")
    if group.answered:
        says = "Perhaps this: the log says" if group.perhaps else "The log says"
        rows += wrapped(f"{says}, {group.where}: {group.said}", width, "  ", "    ")
    if group.speaks_for:
        rows += wrapped(f"Speaks for: {group.speaks_for}", width, "  ", "    ")
    if group.open_item:
        rows += wrapped(f"It is {group.open_item}.", width, "  ", "    ")
    return rows + (wrapped(f"Draft reply: {group.reply}", width, "  ", "    ") if group.reply else [])


def _rest(found: Viewers) -> str:
    if not found.chatter:
        return "Every comment is in one of these groups."
    says = "comment says" if found.chatter == 1 else "comments say"
    return f"{found.chatter} {says} nothing that needs an answer."
