"""The commands that look after the logbook, with their arguments."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from worklog_tui.cli.calls_acts import Make


def add_storing(commands: Any, make: Make, finish: Callable[..., None]) -> None:
    """Add the commands; `make` makes one, `finish` adds the options that all of a logbook have."""
    check = make(commands, "check", "storing:check", "look the logbook over from end to end")
    backup = make(commands, "backup", "storing:backup", "copy the logbook, also while it is in use")
    backup.add_argument("file", metavar="FILE", nargs="?", help="where to; else beside it, named by the moment")
    restore = make(commands, "restore", "storing:restore", "put a backup in the place of the logbook")
    restore.add_argument("file", metavar="FILE", help="the backup; the logbook as it was is copied beside it first")
    export = make(commands, "export", "storing:export", "write the logbook to a file that another computer can merge")
    export.add_argument("file", metavar="FILE", help="where to; JSON lines with version and checksum")
    merge = make(commands, "merge", "storing:merge", "take an exported file or another logbook into this one")
    merge.add_argument("file", metavar="FILE", help="as often as you like, in any order: nothing is doubled")
    salvage = make(commands, "salvage", "storing:salvage", "take what a damaged logbook still holds into a new file")
    salvage.add_argument("file", metavar="DAMAGED", help="it is left as it is")
    salvage.add_argument("to", metavar="NEW", help="the new logbook; it must not exist yet")
    for parser in (check, backup, restore, export, merge, salvage):
        finish(parser, machine=False)
    same = make(commands, "same-machine", "storing:same_machine", "say that two machines are one")
    same.add_argument("other", metavar="OTHER", help="the machine whose sessions go to this one: its name or uid")
    finish(same, machine=True)
