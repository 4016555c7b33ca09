"""The places of the recording screen, and how they lie on screens of different sizes."""

from __future__ import annotations

from worklog_tui.widgets.items import OpenItems
from worklog_tui.widgets.last_time import LastTime
from worklog_tui.widgets.next_step import NextStep
from worklog_tui.widgets.rows import Rows
from worklog_tui.widgets.timeline import Timeline

PLACES = {"timeline": "timeline", "last": "since last time", "items": "open items", "step": "next step"}
FULL_NAMES = {
    "go.note": "write a note", "go.last": "since last time", "go.items": "open items", "go.step": "next step",
}  # fmt: skip
"Names of keys whose word in the footer is short."
LISTS: dict[str, type[Rows]] = {"timeline": Timeline, "last": LastTime, "items": OpenItems, "step": NextStep}

WIDTHS = [(0, "-narrow"), (110, "-wide")]
HEIGHTS = [(0, "-flat"), (9, "-low"), (16, "-tall")]
LAYOUT = """
RecordingScreen {
    #log { height: 1fr; }
    #log Rows { height: 1fr; width: 1fr; }
    #side { width: 46; border-left: solid $foreground 20%; padding-left: 1; }
    #side .title { height: 1; text-style: bold; color: $text-muted; }
    #write { height: auto; border-top: solid $foreground 30%; }
    LastTime { display: none; }
    &.at-last LastTime { display: block; }
    &.at-last Timeline { display: none; }
    &.-narrow #side { display: none; width: 1fr; border: none; padding: 0; }
    &.-narrow .title { display: none; }
    &.-narrow.at-items, &.-narrow.at-step {
        Timeline, LastTime { display: none; }
        #side { display: block; }
    }
    &.-narrow.at-items NextStep, &.-narrow.at-step OpenItems { display: none; }
    &.-low Footer, &.-flat Footer, &.-flat HeadLine, &.-flat Places { display: none; }
    &.-flat #write { border: none; }
    &.-flat NoteLine { max-height: 2; }
    &.-flat Understood { max-height: 1; }
}
"""
