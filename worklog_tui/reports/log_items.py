"""Open items of a published log: in groups by why they are open, what is for now only, what was dealt with."""

from __future__ import annotations

from contextlib import suppress
from datetime import date

from worklog_tui.model import Due, OpenItem
from worklog_tui.reports.again import open_again
from worklog_tui.reports.log_noticed import noticed
from worklog_tui.reports.material import Material, maybe_spot
from worklog_tui.reports.repair_log import Group, Told
from worklog_tui.reports.sentence import amount, briefly
from worklog_tui.reports.when import date_in_words, where

PARTS, NOTICED, HINTS = "Parts still needed", "Noticed, and nothing planned", "What viewers suggest"
GROUPS = {
    "fault": "Not put right yet",
    "part needed": PARTS,
    "to do": "Still to do",
    "fallback": "To try if the rest does not help",
    "question": "Open questions",
}
"Why an item is open, as a heading; what is for now only has a place of its own."
LIVE = ("open", "awaited")


def open_groups(of: Material) -> tuple[Group, ...]:
    """What is open at the end of the span, by why."""
    live = [i for i in of.items if i.state in LIVE]
    hints = [i for i in live if of.suggested(i)]
    groups = [
        Group(title, tuple(_told(of, i) for i in live if i.reason == reason and i not in hints))
        for reason, title in GROUPS.items()
    ]
    groups.append(Group(HINTS, tuple(_told(of, i) for i in hints)))
    return tuple(g for g in (*groups, Group(NOTICED, noticed(of))) if g.rows)


def for_now(of: Material) -> tuple[Told, ...]:
    """Temporary repairs that are still in place."""
    return tuple(_told(of, i) for i in of.items if i.state in LIVE and i.reason == "temporary")


def left_so(of: Material) -> tuple[Told, ...]:
    """What was left as it is on purpose."""
    return tuple(_told(of, i) for i in of.items if i.state == "left so")


def dealt_with(of: Material) -> tuple[Told, ...]:
    """What was put right within the span, and by what."""
    known = {fact.key: fact for _, fact in of.everything()}
    rows = []
    for item in of.items:
        if item.state == "done" and (item.closed is None or item.closed.session >= of.first):
            by = known.get(item.closed_by) if item.closed_by else None
            how = briefly(by) if by else ("by hand" if item.closed is None else "")
            rows.append(Told(item.about, " · ".join(filter(None, (how, where(item.closed)))), maybe_spot(item.raised)))
    return tuple(rows)


def _told(of: Material, item: OpenItem) -> Told:
    how = "suggested" if of.suggested(item) else "asked"
    asked = f"{how} by one viewer" if item.people == 1 else f"{how} by {item.people} viewers"
    rows = (
        "ordered, not here yet" if item.state == "awaited" else "",
        due_in_words(item.due) if item.due else "",
        asked if item.comment is not None and item.people else "",
        open_again(item),
    )
    detail = "; ".join(filter(None, rows))
    return Told(item.about, detail, maybe_spot(item.raised), of.words(item.raised.note) if item.raised else item.quote)


def due_in_words(due: Due) -> str:
    """When something is to be done, such as: due before start, by 1 May 2031."""
    by = due.day
    with suppress(ValueError):
        by = date_in_words(date.fromisoformat(due.day)) if due.day else ""
    rows = (due.event, f"by {by}" if by else "", f"at {amount(due.hours, 'h')} run" if due.hours is not None else "")
    return "due " + ", ".join(filter(None, rows))
