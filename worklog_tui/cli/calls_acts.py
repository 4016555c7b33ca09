"""The commands that correct and take back, with their arguments."""

from __future__ import annotations

import argparse
from collections.abc import Callable
from typing import Any

Make = Callable[[Any, str, str, str], argparse.ArgumentParser]

CORRECTIONS = ("edit", "strike", "word", "fact", "drop", "add", "subject", "shift", "machine", "date")
_HOW = """edit LINE WORDS        other words for a note; every wording is kept
strike LINES           strike notes out; they are kept, but neither read nor shown
word LINES HEARD MEANT put a mis-heard word right
fact LINE FIELD=VALUE  correct a fact; --which N or --kind tells which one
drop LINE              strike a fact out
add LINE FIELD=VALUE   add a fact: --kind, and --quote for the words that say it
subject LINES WORDS    what the lines are about
shift LINES SECONDS    move lines in time
machine LINES NAME     give lines to another machine
date LINES DAY         when the lines were said; or: unknown
A line is named by session and time as the timeline prints them: 2/1:23; a run: 2/1:23-2:05; a session: 2."""


def add_acts(commands: Any, make: Make, finish: Callable[..., None]) -> None:
    """Add the commands; `make` makes one, `finish` adds the options that all of a logbook have."""
    correct = make(commands, "correct", "acts:correct", "correct a note, what was read from it, or a run of lines")
    correct.formatter_class = argparse.RawDescriptionHelpFormatter
    correct.epilog = _HOW
    correct.add_argument("what", choices=CORRECTIONS, metavar="WHAT", help="one of the words below")
    correct.add_argument("line", metavar="LINE", help="the line or lines")
    correct.add_argument("words", metavar="WORDS", nargs="*", help="what it should be")
    correct.add_argument("--kind", metavar="KIND", help="reading, finding, work, suspect, follow_up, trait or number")
    correct.add_argument("--which", metavar="N", type=int, help="which fact of the line, from 1")
    correct.add_argument("--quote", metavar="WORDS", help="the words of the line that say it")
    session = make(commands, "session", "acts:session", "split, join, move or date a session, or find it in the film")
    session.add_argument("what", choices=("split", "join", "move", "date", "film"), help="what to do")
    session.add_argument("session", metavar="SESSION", help="its number; for split the line that begins the new one")
    session.add_argument("words", metavar="TO", nargs="*", help="the other session, machine, day, or caption file")
    item = make(commands, "item", "acts:item", "change an open item, or add one")
    item.add_argument(
        "what", choices=("done", "reopen", "awaited", "left-so", "due", "change", "merge", "add"), help="what to do"
    )
    item.add_argument("words", metavar="WORDS", nargs="+", help="what the item is called, or enough of it")
    item.add_argument("--day", metavar="DAY", help="due by that day, such as 2031-05-01")
    item.add_argument("--hours", metavar="H", type=float, help="due at so many hours run")
    item.add_argument("--event", metavar="WHEN", help="due then, such as: before start")
    item.add_argument("--reason", metavar="WHY", help="temporary, part needed, fault, to do, fallback or question")
    item.add_argument("--call", metavar="NAME", help="for change: what to call it")
    item.add_argument("--other", metavar="WORDS", help="for merge: the other item")
    erase = make(commands, "erase", "acts:erase", "erase the words of lines for good, with every correction")
    erase.add_argument("lines", metavar="LINES", help="the line or lines, as correct names them, such as 2/1:23")
    erase.add_argument("--for-good", action="store_true", help="do it; without it you are only shown what would go")
    acts = make(commands, "acts", "acts:acts", "list what was corrected, and what was taken back")
    for parser in (correct, session, item, erase, acts):
        finish(parser, machine=True)
    for name, what in (("undo", "take back the last correction"), ("redo", "do again what was taken back last")):
        finish(make(commands, name, f"acts:{name}", what), machine=False)
