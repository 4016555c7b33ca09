"""Reading on from the last note, or again from a stored context, gives what reading everything at once gives."""

from __future__ import annotations

import random
import tempfile
from datetime import timedelta
from pathlib import Path
from typing import Any

from hypothesis import given, settings
from hypothesis import strategies as st

from tests.bench.conftest import Clock
from tests.bench.plain_reader import Changed, Minded, PlainReader
from worklog_tui import store
from worklog_tui.bench.desk import Desk
from worklog_tui.bench.history import history, reread
from worklog_tui.bench.machines import add_machine
from worklog_tui.bench.reading import REACH, SNAPSHOT_EACH, Track, read_again, read_all, read_on
from worklog_tui.bench.record import keep_note
from worklog_tui.model import FactKey, Machine, Note
from worklog_tui.store.derived import Mark, Readout

SAW = Machine("Band saw", uid="saw")
SAYINGS = ("the guide is cracked", "cleaned it", "scratch that", "look again", "a cup of tea", "the arm", "cracked too")
PLACES = st.builds(lambda times, more: times * SNAPSHOT_EACH + more, st.integers(0, 4), st.integers(0, REACH + 3))
PUT_IN = st.lists(st.tuples(PLACES, st.sampled_from(SAYINGS)), min_size=1, max_size=6)


@st.composite
def talks(draw: st.DrawFn) -> list[str]:
    """A talk of up to 260 notes, in which the sayings are mixed by chance and not by their number."""
    chance, size = random.Random(draw(st.integers(0, 10_000))), draw(st.integers(1, 260))
    return chance.choices(SAYINGS, k=size)


SAID = talks()


def notes(said: list[str]) -> list[Note]:
    return [Note(f"n{number}", "s", words, at=number) for number, words in enumerate(said)]


def track(reader: PlainReader | None = None) -> Track:
    return Track(reader or PlainReader(), SAW, "s", "typed", "plain")


class Log:
    """What a logbook does with readouts."""

    def __init__(self) -> None:
        self.facts: dict[FactKey, Any] = {}
        self.snapshots: dict[str, Mark] = {}
        self.tail: Mark | None = None

    def save(self, readout: Readout) -> None:
        self.facts = {key: fact for key, fact in self.facts.items() if key.note not in readout.cleared}
        for uid in readout.cleared:
            self.snapshots.pop(uid, None)
        for key in readout.withdrawn:
            self.facts.pop(key, None)
        self.facts.update({fact.key: fact for fact in readout.added})
        self.snapshots.update({mark.note: mark for mark in readout.snapshots})
        self.tail = readout.tail


def whole(said: list[Note]) -> Log:
    log = Log()
    log.save(read_all(track(), said))
    return log


@settings(max_examples=60, deadline=None)
@given(said=SAID, pieces=st.lists(st.integers(1, 90), max_size=8))
def test_incremental_is_batch(said: list[str], pieces: list[int]) -> None:
    log, left = Log(), notes(said)
    for size in [*pieces, len(left)]:
        piece, left = left[:size], left[size:]
        log.save(read_on(track(), log.tail, piece)[0])
    at_once = whole(notes(said))
    assert log.facts == at_once.facts
    assert log.tail == at_once.tail
    assert log.snapshots == at_once.snapshots


@settings(max_examples=150, deadline=None)
@given(said=SAID, put_in=PUT_IN)
def test_a_note_put_in_is_as_if_it_had_always_been_there(said: list[str], put_in: list[tuple[int, str]]) -> None:
    now = notes(said)
    log = whole(now)
    for number, (place, words) in enumerate(put_in):
        place = min(place, len(now))
        now.insert(place, Note(f"late{number}", "s", words))
        log.save(read_again(track(), now, log.snapshots, log.tail, place, place))
        at_once = whole(now)
        assert log.facts == at_once.facts
        assert log.tail == at_once.tail


class Counting(PlainReader):
    """Counts how many notes it was given."""

    fed = 0

    def feed(self, machine: Machine, context: Minded, note: Note) -> tuple[Minded, Changed]:
        Counting.fed += 1
        return super().feed(machine, context, note)


def test_a_note_put_in_costs_the_same_in_a_long_session() -> None:
    now = notes(["the guide is cracked"] * 5000)
    log = whole(now)
    now.insert(2500, Note("late", "s", "the arm"))
    Counting.fed = 0
    log.save(read_again(track(Counting()), now, log.snapshots, log.tail, 2500, 2500))
    assert Counting.fed <= 2 * SNAPSHOT_EACH + 2 * REACH + 1
    assert log.facts == whole(now).facts


def test_contexts_are_stored_at_each_fiftieth_note_and_at_the_tail(desk: Desk, saw: Machine, clock: Clock) -> None:
    for number in range(2 * SNAPSHOT_EACH + 3):
        clock.go_on(seconds=1)
        last = keep_note(desk, "Band saw", f"note {number}")
    with store.reading(desk.logbook) as connection:
        marks = store.derived.snapshots(connection, last.session.uid, "typed")
        tail = store.derived.tail(connection, last.session.uid, "typed")
    assert sorted(mark.position for mark in marks.values()) == [50, 100]
    assert tail is not None
    assert (tail.note, tail.position) == (last.note.uid, 103)
    assert reread(desk, saw.name).added == ()


@settings(max_examples=10, deadline=None)
@given(said=st.lists(st.sampled_from(SAYINGS), min_size=1, max_size=70))
def test_the_logbook_holds_what_reading_again_gives(said: list[str]) -> None:
    with tempfile.TemporaryDirectory() as folder:
        clock = Clock()
        desk = Desk(Path(folder) / "l.db", (), clock, "one", _counter(), reads_with=PlainReader())
        add_machine(desk, SAW)
        for words in said:
            clock.moment += timedelta(seconds=7)
            keep_note(desk, "Band saw", words)
        kept = history(desk, "Band saw")
        changed = reread(desk, "Band saw")
        assert (changed.added, changed.gone) == ((), ())
        assert history(desk, "Band saw") == kept


def _counter() -> Any:
    numbers = iter(range(1, 1 << 30))
    return lambda: next(numbers)
