"""Whatever a person does, taking it back gives what was there, and doing it again gives what had been made of it."""

from __future__ import annotations

import os
import tempfile
from collections.abc import Callable
from dataclasses import replace
from datetime import timedelta
from itertools import count
from pathlib import Path
from typing import Any

from hypothesis import given, settings
from hypothesis import strategies as st

from tests.bench.conftest import Clock
from tests.bench.plain_reader import PlainReader
from worklog_tui.bench.acting import CannotAct
from worklog_tui.bench.desk import Desk
from worklog_tui.bench.fact_acts import add_fact, correct_fact, set_subject, strike_fact
from worklog_tui.bench.filming import places_in_film
from worklog_tui.bench.history import history, reread, would_change
from worklog_tui.bench.item_acts import add_item, leave_so, mark_done, merge_items, reopen, set_awaited, set_due
from worklog_tui.bench.machines import add_machine
from worklog_tui.bench.note_acts import edit_note, mend_word, strike_notes
from worklog_tui.bench.record import keep_note
from worklog_tui.bench.review import open_items
from worklog_tui.bench.session_acts import (
    date_session,
    join_sessions,
    move_lines,
    move_session,
    shift_lines,
    split_session,
)
from worklog_tui.bench.undoing import redo, undo
from worklog_tui.model import Due, FactKey, History, Instant, Machine, Note, OpenItem

EXAMPLES = int(os.environ.get("WORKLOG_EXAMPLES", "20"))
"How many cases each property is tried on; a few hundred find what twenty do not."
SAYINGS = ("the guide is cracked", "cleaned it", "scratch that", "look again", "a cup of tea", "the arm", "cracked too")
MACHINES = ("Band saw", "Lathe")


class Bench:
    """Two machines with some sessions, and a hand that picks by number."""

    def __init__(self, folder: str, name: str = "l.db") -> None:
        numbers = count(1)
        self.clock = Clock()
        self.desk = Desk(
            Path(folder) / name, (), self.clock, "one", lambda: next(numbers), reads_with=PlainReader()
        )  # fmt: skip
        for name in MACHINES:
            add_machine(self.desk, Machine(name))

    def say(self, machine: int, words: str, hours: int) -> None:
        self.clock.moment += timedelta(hours=hours, seconds=7)
        keep_note(self.desk, MACHINES[machine], words)

    def notes(self, machine: str) -> list[Note]:
        return [note for record in history(self.desk, machine).sessions for note in record.notes]

    def state(self) -> Any:
        found = [history(self.desk, name) for name in MACHINES]
        return [[_told(known), open_items(self.desk, known.machine.name)] for known in found]

    def consistent(self) -> None:
        for name in MACHINES:
            changed = would_change(self.desk, name)
            assert (changed.added, changed.gone) == ((), ())


def _told(known: History) -> History:
    """The history without the acts, and without the numbers of wordings, which are this file's own."""
    records = tuple(
        replace(record, notes=tuple(replace(note, revision=0) for note in record.notes)) for record in known.sessions
    )
    return replace(known, acts=(), sessions=records)


Act = Callable[[Bench, str, int, int], object]


def run(bench: Bench, machine: str, one: int, other: int) -> list[Note]:
    """A run of notes of one session."""
    notes = bench.notes(machine)
    first = notes[one % len(notes)]
    row = [note for note in notes if note.session == first.session]
    place = row.index(first)
    return row[place : place + 1 + other % 3]


def uids(bench: Bench, machine: str, one: int, other: int) -> list[str]:
    return [note.uid for note in run(bench, machine, one, other)]


def fact(bench: Bench, machine: str, one: int) -> FactKey:
    facts = history(bench.desk, machine).facts()
    return facts[one % len(facts)].key


def item(bench: Bench, machine: str, one: int) -> OpenItem:
    items = open_items(bench.desk, machine)
    return items[one % len(items)]


def session(bench: Bench, machine: str, one: int) -> str:
    sessions = history(bench.desk, machine).sessions
    return sessions[one % len(sessions)].session.uid


def elsewhere(machine: str) -> str:
    return MACHINES[1 - MACHINES.index(machine)]


WORD = ("guide", "arm", "fence")
DAY = Instant("2031-01-02T03:04:05Z")
ACTS: tuple[Act, ...] = (
    lambda b, m, i, j: edit_note(b.desk, run(b, m, i, 0)[0].uid, SAYINGS[j % len(SAYINGS)]),
    lambda b, m, i, j: strike_notes(b.desk, uids(b, m, i, j)),
    lambda b, m, i, j: mend_word(b.desk, uids(b, m, i, j), WORD[j % 3], WORD[(j + 1) % 3]),
    lambda b, m, i, j: correct_fact(b.desk, fact(b, m, i), {"part": WORD[j % 3]}),
    lambda b, m, i, j: strike_fact(b.desk, fact(b, m, i)),
    lambda b, m, i, j: add_fact(b.desk, run(b, m, i, 0)[0].uid, "follow_up", {"topic": WORD[j % 3], "reason": "to do"}),
    lambda b, m, i, j: set_subject(b.desk, uids(b, m, i, j), WORD[j % 3]),
    lambda b, m, i, j: split_session(b.desk, run(b, m, i, j)[0].uid),
    lambda b, m, i, j: join_sessions(b.desk, session(b, m, i), session(b, m, j)),
    lambda b, m, i, j: move_session(b.desk, session(b, m, i), elsewhere(m)),
    lambda b, m, i, j: move_lines(b.desk, uids(b, m, i, j), elsewhere(m)),
    lambda b, m, i, j: date_session(b.desk, session(b, m, i), DAY if j % 2 else None),
    lambda b, m, i, j: shift_lines(b.desk, uids(b, m, i, j), 60 * (j % 9 - 4)),
    lambda b, m, i, j: places_in_film(b.desk, session(b, m, i), f"[0:{10 + j}] {SAYINGS[0]}\n[1:30] {SAYINGS[3]}"),
    lambda b, m, i, j: mark_done(b.desk, m, item(b, m, i)),
    lambda b, m, i, j: leave_so(b.desk, m, item(b, m, i)),
    lambda b, m, i, j: reopen(b.desk, m, item(b, m, i)),
    lambda b, m, i, j: set_awaited(b.desk, m, item(b, m, i)),
    lambda b, m, i, j: set_due(b.desk, m, item(b, m, i), Due(day="2031-06-01") if j % 2 else Due(hours=float(j))),
    lambda b, m, i, j: merge_items(b.desk, m, item(b, m, i), item(b, m, j)),
    lambda b, m, i, j: add_item(b.desk, m, f"oil the {WORD[j % 3]}"),
)
SMALL = st.integers(0, 20)
TOLD = st.lists(
    st.tuples(st.integers(0, 1), st.sampled_from(SAYINGS), st.sampled_from((0, 0, 0, 5))), min_size=2, max_size=14
)
DEEDS = st.lists(
    st.tuples(st.integers(0, len(ACTS) - 1), st.sampled_from(MACHINES), SMALL, SMALL), min_size=1, max_size=6
)


def do(bench: Bench, deed: tuple[int, str, int, int]) -> bool:
    """Whether the act could be done."""
    number, machine, one, other = deed
    bench.clock.moment += timedelta(seconds=11)
    try:
        ACTS[number](bench, machine, one, other)
    except (CannotAct, ZeroDivisionError):
        return False
    return True


@settings(max_examples=EXAMPLES, deadline=None)
@given(told=TOLD, deeds=DEEDS)
def test_undo_gives_what_was_and_redo_what_had_been_made_of_it(
    told: list[tuple[int, str, int]], deeds: list[tuple[int, str, int, int]]
) -> None:
    with tempfile.TemporaryDirectory() as folder:
        bench = Bench(folder)
        for machine, words, hours in told:
            bench.say(machine, words, hours)
        states = [bench.state()]
        for deed in deeds:
            if do(bench, deed):
                states.append(bench.state())
                bench.consistent()
        for state in reversed(states[:-1]):
            undo(bench.desk)
            assert bench.state() == state
        bench.consistent()
        for state in states[1:]:
            redo(replace(bench.desk, _kept={}))
            assert bench.state() == state
        bench.consistent()


@settings(max_examples=EXAMPLES // 2, deadline=None)
@given(told=TOLD, deeds=DEEDS, more=TOLD)
def test_corrections_stand_after_reading_again_and_while_more_is_said(
    told: list[tuple[int, str, int]], deeds: list[tuple[int, str, int, int]], more: list[tuple[int, str, int]]
) -> None:
    with tempfile.TemporaryDirectory() as folder:
        bench = Bench(folder)
        for machine, words, hours in told:
            bench.say(machine, words, hours)
        for deed in deeds:
            do(bench, deed)
        for machine, words, hours in more:
            bench.say(machine, words, hours)
        bench.consistent()
        before = bench.state()
        newer = replace(bench.desk, reads_with=PlainReader(stamp="newer"))
        for name in MACHINES:
            reread(newer, name)
        assert bench.state() == before
