"""What a screen shows beside the timeline: open items, since last time, and the next step, worked out in one go.

Working it out takes the whole log of a machine. `worked_out_apart` has a process of its own do it, which gives its
memory back and takes no time from the keys.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from worklog_tui.model import Advice, Machine, Number, OpenItem, Trait

if TYPE_CHECKING:
    from datetime import datetime

    from worklog_tui.bench.desk import Desk
    from worklog_tui.bench.review import Review
    from worklog_tui.logbook.before_start import BeforeStart
    from worklog_tui.logbook.closing_up import ClosingUp
    from worklog_tui.logbook.odd import Odd
    from worklog_tui.logbook.readings import Series
    from worklog_tui.logbook.recap import Recap
    from worklog_tui.logbook.waits import Wait
    from worklog_tui.reports.viewers import Viewers

NOTICED = 50
"So many of the things that were only noticed are told, the latest."

DONE = 20
"So many of the things that are done are told, the latest: they can be opened again."


@dataclass(frozen=True, slots=True)
class Outlook:
    """Where a machine stands."""

    items: tuple[OpenItem, ...]
    "All that is not done; of what was only noticed, and of what is done, the last ones."
    noticed: int
    "How many were only noticed, in all."
    recap: Recap
    "Of the session before the present one."
    last_words: str
    "What was said last in the session of the recap that told something."
    advice: Advice
    series: tuple[Series, ...]
    "Every quantity that was measured or set, over time."
    machine: Machine
    "The card."
    told: tuple[Trait | Number, ...]
    "What the machine is, from the talk."
    asked: ClosingUp
    "What is asked when closing up."
    before: BeforeStart
    odd: tuple[Odd, ...] = ()
    cautions: tuple[str, ...] = ()
    "The usual ones before a start."
    waits: tuple[Wait, ...] = ()
    "What is in the cleaner, on charge, under oil or drying, the one that is ready first before the others."
    viewers: Viewers | None = None
    "What viewers wrote, by what they ask."


def outlook(desk: Desk, machine: str) -> Outlook:
    """Where a machine stands now; the number of its open items is kept for the list of machines."""
    from contextlib import suppress

    from worklog_tui.bench.history import basis, remember_items
    from worklog_tui.bench.review import advice_for, review
    from worklog_tui.store import LockedOut, Refused

    before = basis(desk, machine)
    seen = review(desk, machine)
    with suppress(LockedOut, Refused):  # the list of machines does without the number
        remember_items(desk, machine, seen.items, before)
    from worklog_tui.bench.looking_over import cautions_before_start, odd_in

    found = outlook_of(seen, advice_for(desk, seen), desk.now(), desk.quiet_hours)
    found = replace(found, odd=odd_in(desk, seen.history), cautions=cautions_before_start(desk, seen))
    if not seen.comments:
        return found
    from worklog_tui.bench.viewers import take_comments

    return replace(found, viewers=take_comments(desk, machine, None).viewers)


def outlook_of(seen: Review, advice: Advice, now: datetime, quiet_hours: float) -> Outlook:
    """The same for what was worked out already."""
    from worklog_tui.bench.looking_over import cleared_of
    from worklog_tui.logbook.before_start import before_start
    from worklog_tui.logbook.closing_up import closing_up
    from worklog_tui.logbook.readings import readings
    from worklog_tui.logbook.recap import recap

    number = _session_before(seen, now, quiet_hours)
    told = recap(seen.history, seen.items, number)
    noticed = [item for item in seen.items if item.state == "noticed"]
    live = [item for item in seen.items if item.state not in ("noticed", "done")]
    done = [item for item in seen.items if item.state == "done"]
    return Outlook(
        (*live, *noticed[-NOTICED:], *reversed(done[-DONE:])), len(noticed), told, _last_words(seen, number), advice,
        readings(seen.history), seen.history.machine,
        tuple(fact for fact in seen.history.facts() if isinstance(fact, Trait | Number)),
        closing_up(seen.history, seen.items, cleared_of(seen)),
        before_start(seen.history, seen.items, cleared_of(seen)), waits=_waits(seen),
    )  # fmt: skip


def _waits(seen: Review) -> tuple[Wait, ...]:
    from worklog_tui.bench.looking_over import cleared_of
    from worklog_tui.bench.waiting_for import wait_key
    from worklog_tui.logbook.waits import waits

    gone = cleared_of(seen)
    still = [wait for wait in waits(seen.history) if wait.ended is None and wait_key(wait) not in gone]
    return tuple(sorted(still, key=lambda one: one.ready.timestamp() if one.ready else float("inf")))


def _session_before(seen: Review, now: datetime, quiet_hours: float) -> int:
    """The number of the last session, or of the one before it while that goes on; 0 when there is none."""
    records = [(number, one) for number, one in enumerate(seen.history.sessions, 1) if one.notes]
    if len(records) > 1:
        last = records[-1][1].notes[-1].instant
        if last is not None and 0 <= (now - last.moment()).total_seconds() < quiet_hours * 3600:
            return records[-2][0]
    return records[-1][0] if records else 0


def _last_words(seen: Review, number: int) -> str:
    """The last note of a session that something was read from; the last of all when nothing was."""
    if not number:
        return ""
    record = seen.history.sessions[number - 1]
    told = {fact.main.note for fact in record.facts}
    return next((note.words for note in reversed(record.notes) if note.uid in told), record.notes[-1].words)


def worked_out_apart(desk: Desk, machine: str) -> Outlook:
    """As `outlook`, in a process of its own; in this one when there can be no other."""
    import os
    import pickle
    import subprocess
    import sys
    from pathlib import Path

    order = pickle.dumps((replace(desk, _kept={}), machine))
    root = str(Path(__file__).resolve().parents[2])
    path = os.pathsep.join(filter(None, (root, os.environ.get("PYTHONPATH", ""))))
    try:
        done = subprocess.run(
            [sys.executable, "-P", "-m", "worklog_tui.bench.outlook"],
            input=order, stdout=subprocess.PIPE, stderr=subprocess.DEVNULL, check=True,
            env={**os.environ, "PYTHONPATH": path},
        )  # fmt: skip
        found = pickle.loads(done.stdout)  # what our own process wrote
    except (OSError, subprocess.SubprocessError, pickle.UnpicklingError, EOFError):
        return outlook(desk, machine)
    assert isinstance(found, Outlook)
    return found


def _answer() -> None:
    """In that process: the order comes by the standard input, the answer goes by the standard output."""
    import os
    import pickle
    import sys

    if hasattr(os, "nice"):
        os.nice(5)
    from worklog_tui.bench import outlook as here

    desk, machine = pickle.load(sys.stdin.buffer)
    pickle.dump(here.outlook(desk, machine), sys.stdout.buffer)


if __name__ == "__main__":
    _answer()
