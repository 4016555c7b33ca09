"""The places of the recording screen, and how they lie on screens of different sizes."""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

if TYPE_CHECKING:
    from textual.widget import Widget

    from worklog_tui.widgets.rows import Rows


class Place(NamedTuple):
    """A place: its name in full, in short and in a word that begins with its key, that key, and what stands there."""

    name: str
    short: str
    brief: str
    key: str
    tells: str


PLACES = {
    "timeline": Place("timeline", "timeline", "time", "t", "What was said, session by session"),
    "last": Place("since last time", "last time", "last", "l", "How it was left, and what was to come next"),
    "items": Place("open items", "open", "open", "o", "What must be come back to, and why"),
    "step": Place("next step", "step", "step", "s", "What to do next, and why"),
    "readings": Place("readings", "readings", "read", "r", "What was measured, and what it should be"),
    "faults": Place("fault finding", "faults", "fault", "f", "Causes and systems, with their evidence"),
    "viewers": Place("viewers' questions", "viewers", "view", "v", "What viewers asked, and what answers it"),
    "card": Place("machine card", "card", "card", "c", "What the machine is, and what its figures should be"),
}
FULL_NAMES = {
    "go.note": "write a note", "acts.undo": "take back", "acts.redo": "do again", "go.far": "far view",
    "go.lock": "wipe the keys", "film.clip": "camera on or off", "film.keep": "film: keep",
    "film.again": "film: shoot again", "film.cut": "film: cut", "film.still": "film: still picture",
    "film.counter": "the camera's counter",
    "timeline.lines": "several lines", "timeline.strike": "strike out", "timeline.add": "add what was not read",
    "timeline.divide": "divide the session here", "timeline.join": "join with the session before",
    "timeline.hear": "always hear the word so", "readings.units": "metric or inch", "items.same": "two are the same",
    **{f"go.{place}": one.name for place, one in PLACES.items()},
}  # fmt: skip
"Names of keys whose word in the footer is short."
STANDING = ("timeline", "items", "step")
"What is always there; the others come when they are first asked for."


def beside() -> Widget:
    """What stands beside the other places on a wide screen; it comes after the first paint."""
    from textual.containers import Vertical
    from textual.widgets import Static

    from worklog_tui.widgets.items import OpenItems
    from worklog_tui.widgets.next_step import NextStep

    items, step = OpenItems(), NextStep()
    items.id, step.id = "items-list", "step-list"
    return Vertical(
        Static("Open items", classes="title", markup=False), items,
        Static("Next step", classes="title", markup=False), step, id="side",
    )  # fmt: skip


def made_later(place: str) -> Rows:
    """The list of a place that is not there from the start; only what draws that one is loaded."""
    found = _LATER[place]()
    found.id = f"{place}-list"
    found.add_class("later")
    return found


def _last() -> Rows:
    from worklog_tui.widgets.last_time import LastTime

    return LastTime()


def _readings() -> Rows:
    from worklog_tui.widgets.readings import Readings

    return Readings()


def _faults() -> Rows:
    from worklog_tui.widgets.fault_finding import FaultFinding

    return FaultFinding()


def _viewers() -> Rows:
    from worklog_tui.widgets.viewers import ViewersRows

    return ViewersRows()


def _card() -> Rows:
    from worklog_tui.widgets.machine_card import MachineCard

    return MachineCard()


_LATER = {"last": _last, "readings": _readings, "faults": _faults, "viewers": _viewers, "card": _card}


WIDTHS = [(0, "-narrow"), (110, "-wide")]
HEIGHTS = [(0, "-flat"), (9, "-low"), (16, "-tall")]
LAYOUT = """
RecordingScreen {
    #log { height: 1fr; }
    #log Rows { height: 1fr; width: 1fr; }
    #side { width: 32%; min-width: 46; max-width: 64; border-left: solid $foreground 20%; padding-left: 1; }
    #side .title { height: 1; text-style: bold; color: $text-muted; }
    #write { height: auto; border-top: solid $foreground 30%; border-title-color: $text-muted; }
    .later { display: none; }
    .later.here { display: block; }
    &.at-later Timeline { display: none; }
    &.-narrow #side { display: none; width: 1fr; min-width: 0; max-width: 100%; border: none; padding: 0; }
    &.-narrow .title { display: none; }
    &.-narrow.at-items, &.-narrow.at-step {
        Timeline { display: none; }
        #side { display: block; }
    }
    &.-narrow.at-items NextStep, &.-narrow.at-step OpenItems { display: none; }
    &.-low KeyLine, &.-flat KeyLine, &.-flat HeadLine, &.-flat Places { display: none; }
    &.-flat #write { border: none; }
    &.-flat NoteLine { max-height: 2; }
    &.-flat Understood { max-height: 1; }
    &.-far #log, &.-far Places, &.-far KeyLine { display: none; }
    &.-far #write { height: auto; }
    &.-low FarView { padding: 0 2; }
    &.-low FarView Static { margin-bottom: 0; }
}
"""
