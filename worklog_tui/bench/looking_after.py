"""Looking after the logbook: is it whole, and what can be had from one that is not."""

from __future__ import annotations

from dataclasses import dataclass, replace
from pathlib import Path
from typing import TYPE_CHECKING

from worklog_tui import store
from worklog_tui.bench.exchange import Merged, take_in
from worklog_tui.bench.history import is_stale
from worklog_tui.bench.machines import machines
from worklog_tui.store import checking

if TYPE_CHECKING:
    from worklog_tui.bench.desk import Desk


class Unsalvageable(ValueError):
    """Nothing could be had from the file, or there is no room for it; the message is a plain sentence."""


@dataclass(frozen=True, slots=True)
class Checked:
    """The state of a logbook."""

    problems: tuple[str, ...]
    "Plain sentences; none when it is whole."
    machines: int
    notes: int
    waiting: int
    "Notes that wait beside the logbook for the next writer; they are as safe there."
    stale: tuple[str, ...]
    "Machines whose log newer grammars may read differently."
    size: int
    "Bytes of the file."


def check(desk: Desk) -> Checked:
    """Look the logbook over from end to end; nothing is changed."""
    problems = checking.problems(desk.logbook)
    known = machines(desk)
    stale = tuple(one.name for one in known if is_stale(desk, one.name))
    size = desk.logbook.stat().st_size if desk.logbook.exists() else 0
    notes = sum(one.notes for one in known)
    return Checked(tuple(problems), len(known), notes, checking.waiting(desk.logbook), stale, size)


def salvage(desk: Desk, damaged: Path, to: Path) -> Merged:
    """Take what a damaged logbook still holds into a new file, which must not exist yet; the damaged one is left alone.

    Notes that waited beside it come along.
    """
    if to.exists():
        raise Unsalvageable(f"{to} exists already; name a file that does not.")
    fresh = replace(desk, logbook=to, device=store.device_of(to, desk.device), _kept={})
    found = [one for one in checking.salvaged(damaged) if one.get("uid")]
    if not any(one["kind"] == "machine" for one in found):
        raise Unsalvageable(f"Nothing could be read from {damaged}; put a backup in its place.")
    return take_in(fresh, found)
