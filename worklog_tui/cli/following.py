"""The command that follows another program's lines."""

from __future__ import annotations

import sys
from pathlib import Path
from typing import TYPE_CHECKING

from worklog_tui.cli.calls import Call
from worklog_tui.cli.keeping import machine_of
from worklog_tui.cli.looking import desk_of
from worklog_tui.cli.output import say

if TYPE_CHECKING:
    from worklog_tui.bench.record import Kept


def follow(call: Call) -> None:
    """Keeps lines as notes until the input ends or Ctrl+C is pressed."""
    from worklog_tui.bench.following import follow as keep
    from worklog_tui.bench.following import lines_of_file, lines_of_stream

    desk = desk_of(call)
    machine = machine_of(desk, call.machine).name
    desk.reader()
    source = call.source
    lines = lines_of_stream(sys.stdin.buffer) if source == "-" else lines_of_file(Path(source), call.from_start)
    keep(desk, machine, lines, _told)


def _told(kept: Kept) -> None:
    from worklog_tui.reports.sentence import sentence

    said = "; ".join(sentence(fact, brief=True) for fact in kept.facts)
    say(f"{kept.note.said_at}  {kept.note.words}" + (f"  ({said})" if said else ""))
    sys.stdout.flush()
