"""Undo and redo of every act of this device, also after a restart."""

from __future__ import annotations

from typing import TYPE_CHECKING

from worklog_tui import store
from worklog_tui.bench.acting import CannotAct, Done, acting, root_of, sign
from worklog_tui.logbook.standing import undone_and_done
from worklog_tui.model import Act

if TYPE_CHECKING:
    from worklog_tui.bench.desk import Desk

SAID = {
    "edit note": "editing a note", "strike note": "striking a note out", "strike lines": "striking notes out",
    "mend word": "putting a word right", "correct fact": "correcting a fact", "strike fact": "striking a fact out",
    "add fact": "adding a fact", "set subject": "saying what lines are about", "move session":
    "moving a session to another machine", "date session": "dating a session", "join sessions":
    "joining two sessions", "split session": "taking lines out of a session", "shift lines": "moving lines in time",
    "close item": "closing an item", "reopen item": "reopening an item", "merge items": "making two items one",
    "set item": "changing an item", "let go": "not asking again", "place in film":
    "giving notes their place in the film",
    "keep private": "keeping notes private", "same machine": "making two machines one",
    "set card": "changing a machine card",
    "mark film": "marking the film", "undo": "taking something back", "erase": "erasing words",
}  # fmt: skip
"What an act is called for people."


def undo(desk: Desk) -> Done:
    """Take back the last act of this device that stands; later acts of others stay. CannotAct when there is none."""
    with acting(desk) as connection:
        done, _ = undone_and_done(store.acts.of_device(connection, desk.device), desk.device)
        if not done:
            raise CannotAct("There is nothing to take back.")
        act = sign(desk, connection, "undo", done[-1].uid, None)
        return Done(act, f"Taken back: {_called(connection, done[-1])}.")


def redo(desk: Desk) -> Done:
    """Do again what was taken back last. CannotAct when there is nothing."""
    with acting(desk) as connection:
        _, undone = undone_and_done(store.acts.of_device(connection, desk.device), desk.device)
        if not undone:
            raise CannotAct("There is nothing to do again.")
        act = sign(desk, connection, "undo", undone[-1].uid, None)
        return Done(act, f"Done again: {_called(connection, undone[-1])}.")


def take_back(desk: Desk, act_uid: str) -> Done:
    """Take back one act of this device, whatever came after it."""
    with acting(desk) as connection:
        done, _ = undone_and_done(store.acts.of_device(connection, desk.device), desk.device)
        found = next((act for act in done if act.uid == act_uid), None)
        if found is None:
            raise CannotAct("That is no act of this device that stands.")
        act = sign(desk, connection, "undo", found.uid, None)
        return Done(act, f"Taken back: {_called(connection, found)}.")


def can_undo(desk: Desk) -> Act | None:
    """The act that `undo` would take back; None when there is none."""
    with store.reading(desk.logbook) as connection:
        done, _ = undone_and_done(store.acts.of_device(connection, desk.device), desk.device)
    return done[-1] if done else None


def can_redo(desk: Desk) -> Act | None:
    """The undo that `redo` would take back; None when there is none."""
    with store.reading(desk.logbook) as connection:
        _, undone = undone_and_done(store.acts.of_device(connection, desk.device), desk.device)
    return undone[-1] if undone else None


def _called(connection: store.Connection, act: Act) -> str:
    root = root_of(connection, act)
    return SAID.get(root.verb if root else "", "an act")
