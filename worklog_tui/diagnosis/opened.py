"""What is off or open already, so that the way to what lies behind it costs nothing."""

from __future__ import annotations

from worklog_tui.diagnosis.log import Log
from worklog_tui.model import Work
from worklog_tui.rulebook.faults import FaultBook

OFF = ("remove", "strip", "disconnect")
ON = ("fit", "replace", "connect", "start", "tighten")


def opened(log: Log, book: FaultBook) -> frozenset[str]:
    """The accesses whose part was heard taken off in the log and not refitted since."""
    off: dict[str, bool] = {}
    for event in log.works:
        work = event.fact
        if isinstance(work, Work) and work.name and work.action in (*OFF, *ON):
            if work.action == "start":
                off.clear()  # it was tried: what has to be on was on
            else:
                off[work.name] = work.action in OFF
    return frozenset(a.id for a in book.access.values() if any(off.get(part) for part in a.parts))
