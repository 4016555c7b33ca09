"""Acts on open items: done, reopened, awaited, left so on purpose, due, two made one, one added by hand."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import asdict
from datetime import date
from typing import TYPE_CHECKING, Any

from worklog_tui import store
from worklog_tui.bench.acting import CannotAct, Done, acting, sign
from worklog_tui.bench.machines import named
from worklog_tui.bench.note_acts import short
from worklog_tui.logbook.decided import anchor_of
from worklog_tui.model import Due, OpenItem
from worklog_tui.reports.plain_items import due as due_words
from worklog_tui.store import pages

if TYPE_CHECKING:
    from worklog_tui.bench.desk import Desk

REASONS = ("temporary", "part needed", "fault", "to do", "fallback", "question")


def mark_done(desk: Desk, machine_name: str, item: OpenItem) -> Done:
    """Close an item: it is done."""
    return _on(desk, machine_name, item, "close item", {"state": "done"}, "done")


def leave_so(desk: Desk, machine_name: str, item: OpenItem) -> Done:
    """Close an item: it is left so on purpose."""
    return _on(desk, machine_name, item, "close item", {"state": "left so"}, "left so on purpose")


def reopen(desk: Desk, machine_name: str, item: OpenItem) -> Done:
    """Open an item again; what is said from now on may close it."""
    return _on(desk, machine_name, item, "reopen item", {}, "open again")


def set_awaited(desk: Desk, machine_name: str, item: OpenItem) -> Done:
    """Say that an item waits for something that is on its way."""
    return _on(desk, machine_name, item, "set item", {"state": "awaited"}, "awaited")


def set_due(desk: Desk, machine_name: str, item: OpenItem, due: Due | None) -> Done:
    """Say when an item is to be done, by a day, at so many hours run or at an event; None: at no set time."""
    if due is not None and due.day:
        try:
            date.fromisoformat(due.day)
        except ValueError as fault:
            raise CannotAct(f"“{due.day}” is no day; write it as 2031-05-01.") from fault
    if due is not None and not (due.day or due.event or due.hours is not None):
        raise CannotAct("Say by when: a day, hours run, or an event.")
    says = f"due {due_words(due)}" if due else "no longer due at a set time"
    return _on(desk, machine_name, item, "set item", {"due": asdict(due) if due else None}, says)


def change_item(desk: Desk, machine_name: str, item: OpenItem, about: str = "", reason: str = "") -> Done:
    """Call an item something else, or give it another reason (one of REASONS)."""
    if reason and reason not in REASONS:
        raise CannotAct(f"“{reason}” is no reason; there are {', '.join(REASONS)}.")
    wanted = {"call": " ".join(about.split())} if about.strip() else {}
    wanted |= {"as": reason} if reason else {}
    if not wanted:
        raise CannotAct("Nothing is to be changed.")
    return _on(desk, machine_name, item, "set item", wanted, "changed")


def merge_items(desk: Desk, machine_name: str, one: OpenItem, other: OpenItem) -> Done:
    """Say that two items are one and the same."""
    with store.reading(desk.logbook) as connection:
        machine = named(connection, machine_name).uid
    if anchor_of(one.anchors, machine, one.comment) == anchor_of(other.anchors, machine, other.comment):
        raise CannotAct("That is one item already.")
    value = {"with": anchor_of(other.anchors, machine, other.comment), "with_about": other.about}
    return _on(desk, machine_name, one, "merge items", value, f"the same as {short(other.about)}")


def add_item(desk: Desk, machine_name: str, about: str, reason: str = "to do", due: Due | None = None) -> Done:
    """Add an item that nobody said, such as something for the workshop."""
    said = " ".join(about.split())
    if not said:
        raise CannotAct("Say what is to be come back to.")
    if reason not in REASONS:
        raise CannotAct(f"“{reason}” is no reason; there are {', '.join(REASONS)}.")
    with acting(desk) as connection:
        machine = named(connection, machine_name)
        value: dict[str, Any] = {"about": said, "reason": reason, "after": _last_note(connection, machine.uid)}
        value |= {"due": asdict(due)} if due else {}
        act = sign(desk, connection, "set item", f"{machine.uid}/{desk.uid()}/act/0/0/0", value)
    return Done(act, f"Added: {said}.")


def _on(
    desk: Desk, machine_name: str, item: OpenItem, verb: str, given: Mapping[str, Any], says: str
) -> Done:  # fmt: skip
    with acting(desk) as connection:
        machine = named(connection, machine_name)
        value: dict[str, Any] = {"about": item.about, "reason": item.reason, "quote": item.quote, **given}
        value["after"] = _last_note(connection, machine.uid)
        act = sign(desk, connection, verb, anchor_of(item.anchors, machine.uid, item.comment), value)
    return Done(act, f"{item.about[:1].upper()}{item.about[1:]}: {says}.")


def _last_note(connection: store.Connection, machine: str) -> str:
    """The last note of a machine's log as it stands: what the person had seen."""
    found = pages.lengths(connection, machine)
    if not found:
        return ""
    session, count = found[-1]
    notes, _ = pages.part(connection, session.uid, count - 1, 1)
    return notes[-1].uid if notes else ""
