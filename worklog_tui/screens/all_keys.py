"""Every key of the recorder, place by place, with the name by which a person gives it another key."""

from __future__ import annotations

from collections.abc import Mapping
from importlib import import_module
from typing import NamedTuple

from textual.binding import Binding

from worklog_tui.widgets.key_line import named_key

HOMES = (
    ("A machine on the bench", "screens.recording", "RecordingScreen"),
    ("The note line", "widgets.note_line", "NoteLine"),
    ("The timeline", "widgets.timeline", "Timeline"), ("Open items", "widgets.items", "OpenItems"),
    ("Readings", "widgets.readings", "Readings"), ("The machine card", "widgets.machine_card", "MachineCard"),
    ("What was read from a note", "screens.note_page", "NotePage"), ("Adding to a note", "screens.adding", "Adding"),
    ("What words are that were not understood", "screens.adding", "WhatItIs"),
    ("Several lines", "screens.over_lines", "OverLines"), ("A question in words", "screens.asking", "Asking"),
    ("Finding", "screens.finding", "Finding"), ("A paste", "screens.paste", "PasteQuestion"),
    ("Long work", "screens.long_work", "LongWork"), ("Closing up", "screens.closing_up", "ClosingUpScreen"),
    ("Before a start", "screens.before_start", "BeforeStartScreen"),
    ("The list of machines", "screens.start", "StartScreen"), ("Its rows", "widgets.machines", "Machines"),
    ("A new card", "screens.card", "CardScreen"), ("The keys of a place", "screens.keys", "KeysScreen"),
    ("Every list", "widgets.rows", "Rows"), ("Everywhere", "app", "Recorder"),
)  # fmt: skip
"Where keys work, in words, and the class that has them."


class KeyTold(NamedTuple):
    """One thing that keys do."""

    keys: str
    "As they are printed on the keyboard, such as `g F5`."
    name: str
    tells: str


def every_key(own: Mapping[str, str]) -> list[tuple[str, list[KeyTold]]]:
    """Each place with its keys; `own` are other keys by the names of what they do."""
    found = []
    for title, module, name in HOMES:
        home = getattr(import_module(f"worklog_tui.{module}"), name)
        told = [_told(one, own) for one in vars(home)["BINDINGS"] if isinstance(one, Binding)]
        found.append((title, told))
    return found


def _told(one: Binding, own: Mapping[str, str]) -> KeyTold:
    keys = own.get(one.id or "", "") or (one.key_display or one.key)
    return KeyTold(" ".join(map(named_key, keys.split(","))), one.id or "", one.tooltip)
