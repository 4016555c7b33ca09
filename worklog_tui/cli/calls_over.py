"""The commands that look a machine over, read it again and search, with their arguments."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from worklog_tui.cli.calls_acts import Make


def add_over(commands: Any, make: Make, finish: Callable[..., None]) -> None:
    """Add the commands; `make` makes one, `finish` adds the options that all of a logbook have."""
    parts = make(commands, "parts", "over:parts", "print what is to be got, what became of parts, and their sizes")
    parts.add_argument("words", metavar="SIZE", nargs="*", help="only sizes and numbers with these words")
    left = make(commands, "left", "over:left", "print what is off the machine and how it was left")
    before = make(commands, "before-start", "over:before_start", "print what to go through before a start")
    closing = make(commands, "closing-up", "over:closing_up", "print what was begun and not heard finished")
    closing.add_argument("question", metavar="N", nargs="?", type=int, help="the question to answer")
    closing.add_argument("words", metavar="ANSWER", nargs="*", help="one of its answers, or: let go")
    closing.add_argument("--session", metavar="N", type=int, help="of which session; else of the last one")
    odd = make(commands, "odd", "over:odd", "print what does not add up")
    pressure = make(commands, "compression", "over:compression", "print compression tests, and readings after repairs")
    pressure.add_argument("--units", choices=("metric", "inch", "said"), help="show figures in these units")
    show = make(commands, "show", "showing:show", "print a place of the recorder as it is shown there, as plain text")
    show.add_argument("place", metavar="PLACE", help="such as timeline, since-last-time, open-items, readings; or note")
    show.add_argument("line", metavar="LINE", nargs="?", help="for note: the line, such as 2/14:05")
    show.add_argument("--units", choices=("metric", "inch", "said"), help="show figures in these units")
    again = make(commands, "reread", "over:reread", "show what reading the notes with newer grammars would change")
    again.add_argument("--apply", action="store_true", help="do it; what you corrected stays corrected")
    card = make(commands, "card", "over:card", "print what is known of a machine, and what is worth finding out")
    for parser in (card, parts, left, before, closing, odd, pressure, show, again):
        finish(parser, machine=True)
    waits = make(commands, "waits", "over:waits", "print what is waited for, and what is ready")
    waits.add_argument("--machine", metavar="NAME", help="only of this machine")
    waits.add_argument("--all", dest="over", action="store_true", help="also what is over, with the time it took")
    finish(waits, machine=False)
    search = make(commands, "search", "over:search", "find lines and items of all machines, newest first")
    search.add_argument("words", metavar="WORDS", nargs="+", help='words; "in quotes" a phrase, word* a beginning')
    search.add_argument("--machine", metavar="NAME", help="only in this machine's log")
    search.add_argument("--most", metavar="N", type=int, default=20, help="how many at most (20)")
    search.add_argument("--best", action="store_true", help="the best fit first, where there are not too many")
    finish(search, machine=False)
