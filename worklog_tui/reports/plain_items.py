"""Open items as plain text: what is open, awaited, left so on purpose, only noticed, and what was dealt with."""

from __future__ import annotations

from collections.abc import Sequence

from worklog_tui.model import Due, Fact, History, OpenItem
from worklog_tui.reports.again import open_again
from worklog_tui.reports.lines import heading, wrapped
from worklog_tui.reports.sentence import REASONS, briefly
from worklog_tui.reports.when import where

_GROUPS = (
    ("open", "Open items"),
    ("awaited", "Awaited"),
    ("left so", "Left so on purpose"),
    ("noticed", "Noticed, nothing planned"),
    ("done", "Dealt with"),
)


def items_text(items: Sequence[OpenItem], width: int, history: History | None = None) -> str:
    """The items in groups. With the history it is told what dealt with them."""
    known = {f.key: f for f in history.facts()} if history is not None else {}
    rows: list[str] = []
    for state, title in _GROUPS:
        group = [i for i in items if i.state == state]
        if group:
            rows += ["", *heading(f"{title} ({len(group)})")]
            for item in group:
                rows += item_lines(item, width, known.get(item.closed_by) if item.closed_by else None)
    return "\n".join(rows[1:]) or "Nothing is open."


def due(when: Due) -> str:
    """By when, in words."""
    said = [f"by {when.day}"] if when.day else []
    said += [f"at {when.hours:g} hours run"] if when.hours is not None else []
    return " or ".join([*said, *([when.event] if when.event else [])])


def item_lines(item: OpenItem, width: int, closer: Fact | None = None) -> list[str]:
    """One item with its reason and where it was said."""
    notes = [REASONS.get(item.reason, item.reason) if item.state not in ("noticed", "done") else ""]
    if item.due is not None:
        notes.append(due(item.due))
    if item.comment is not None:
        notes.append("asked by a viewer" if item.people < 2 else f"asked by {item.people} viewers")
    notes.append(where(item.raised))
    notes.append(open_again(item))
    if item.closed is not None:
        what = f"by “{briefly(closer)}” " if closer is not None else ""
        notes.append(f"dealt with {what}in {where(item.closed)}")
    said = "; ".join(n for n in notes if n)
    return wrapped(f"{item.about}" + (f" ({said})" if said else ""), width, "  - ", "    ")
