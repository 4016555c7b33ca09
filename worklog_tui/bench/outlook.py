"""What a screen shows beside the timeline: open items, since last time, and the next step, worked out in one go.

Working it out takes the whole log of a machine. `worked_out_apart` has a process of its own do it, which gives its
memory back and takes no time from the keys; what stands in the log comes first, the advice when it is worked out.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from worklog_tui.model import Advice, Machine, Number, OpenItem, Trait

if TYPE_CHECKING:
    import subprocess
    from collections.abc import Iterator
    from datetime import datetime

    from worklog_tui.bench.desk import Desk
    from worklog_tui.bench.review import Review
    from worklog_tui.logbook.outcomes import BeforeStart, ClosingUp, Odd, Recap, Series
    from worklog_tui.logbook.wait import Wait
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
    whole: bool = True
    "False while the advice, what does not add up and the viewers' questions are still being worked out."


def outlook(desk: Desk, machine: str) -> Outlook:
    """Where a machine stands now."""
    *_, last = outlooks(desk, machine)
    return last


def outlooks(desk: Desk, machine: str) -> Iterator[Outlook]:
    """First what stands in the log, then all of it; the number of open items is kept for the list of machines."""
    from contextlib import suppress

    from worklog_tui.bench.history import basis, remember_items
    from worklog_tui.bench.review import advice_for, review
    from worklog_tui.store import LockedOut, Refused

    before = basis(desk, machine)
    seen = review(desk, machine)
    with suppress(LockedOut, Refused):  # the list of machines does without the number
        remember_items(desk, machine, seen.items, before)
    from worklog_tui.bench.looking_over import cautions_before_start

    now = desk.now()
    known = replace(outlook_of(seen, Advice(""), now, desk.quiet_hours), whole=False)
    yield known
    advice, cautions = advice_for(desk, seen), cautions_before_start(desk, seen)
    known = replace(known, advice=advice, cautions=cautions, odd=_odd(desk, seen), whole=True)
    if seen.comments:
        from worklog_tui.bench.viewers import take_comments

        known = replace(known, viewers=take_comments(desk, machine, None).viewers)
    yield known


def _odd(desk: Desk, seen: Review) -> tuple[Odd, ...]:
    """What does not add up; of a machine without notes nothing is loaded to say so."""
    from worklog_tui.bench.looking_over import odd_in

    return odd_in(desk, seen.history) if seen.history.sessions else ()


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
        before_start(seen.history, seen.items, cleared_of(seen)), waits=_waits(seen, now),
    )  # fmt: skip


def _waits(seen: Review, now: datetime) -> tuple[Wait, ...]:
    from worklog_tui.bench.looking_over import cleared_of
    from worklog_tui.bench.waiting_for import wait_key
    from worklog_tui.logbook.waits import waits

    gone = cleared_of(seen)
    still = [wait for wait in waits(seen.history) if wait.is_on(now) and wait_key(wait) not in gone]
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


def worked_out_apart(desk: Desk, machine: str) -> Iterator[Outlook]:
    """As `outlooks`, in a process of its own; in this one when there can be no other."""
    import pickle
    import subprocess

    whole = False
    try:
        with _another_process(pickle.dumps((replace(desk, _kept={}), machine))) as process:
            assert process.stdout is not None
            while not whole:
                found = pickle.load(process.stdout)  # what our own process wrote
                assert isinstance(found, Outlook)
                whole = found.whole
                yield found
    except (OSError, subprocess.SubprocessError, pickle.UnpicklingError, EOFError):
        if not whole:
            yield outlook(desk, machine)


def _another_process(order: bytes) -> subprocess.Popen[bytes]:
    import subprocess
    import sys

    from worklog_tui.bench.apart import environment

    process = subprocess.Popen(
        [sys.executable, "-P", "-m", "worklog_tui.bench.outlook"],
        stdin=subprocess.PIPE, stdout=subprocess.PIPE, stderr=subprocess.DEVNULL,
        env=environment(),
    )  # fmt: skip
    assert process.stdin is not None
    process.stdin.write(order)
    process.stdin.close()
    return process


def _answer() -> None:
    """In that process: the order comes by the standard input, the answers go by the standard output."""
    import os
    import pickle
    import sys

    if hasattr(os, "nice"):
        os.nice(5)
    from worklog_tui.bench import outlook as here
    from worklog_tui.bench.shown_of import shown_of

    desk, machine = pickle.load(sys.stdin.buffer)
    for found in here.outlooks(desk, machine):
        pickle.dump(shown_of(found), sys.stdout.buffer)
        sys.stdout.buffer.flush()


if __name__ == "__main__":
    _answer()
