"""Reading a paste to see what is in it, before anything of it is kept."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import TYPE_CHECKING

from worklog_tui.bench.machines import find_machine
from worklog_tui.bench.reading import Fold, Track

if TYPE_CHECKING:
    from worklog_tui.bench.desk import Desk
    from worklog_tui.model import Fact, Machine
    from worklog_tui.notes.lines import ReadSession

EACH = 100
"Lines between two reports."


@dataclass(frozen=True, slots=True)
class TriedOut:
    """How far the reading is, and what it found so far."""

    done: int
    "Lines read."
    facts: dict[int, tuple[Fact, ...]]
    "By the position of the line: what was read with confidence."
    unsure: dict[int, tuple[Fact, ...]]
    "The same for what would be asked about."

    @property
    def count(self) -> int:
        """Facts read with confidence."""
        return sum(map(len, self.facts.values()))

    @property
    def asked(self) -> int:
        """Facts to be asked about."""
        return sum(map(len, self.unsure.values()))


def try_out(desk: Desk, machine_name: str, read: ReadSession) -> Iterator[TriedOut]:
    """Read the lines of a paste by themselves, with a report every EACH lines and at the end; nothing is written."""
    yield from _tried_out(desk, find_machine(desk, machine_name), read)


def tried_out(desk: Desk, machine: Machine, read: ReadSession) -> TriedOut:
    """The same at once."""
    *_, last = _tried_out(desk, machine, read)
    return last


def _tried_out(desk: Desk, machine: Machine, read: ReadSession) -> Iterator[TriedOut]:
    from worklog_tui.notes.keeping import make_notes

    session, notes = make_notes(read, machine.uid)
    place = {note.uid: number for number, note in enumerate(notes)}
    track = Track(desk.reader(), machine, session.uid, "typed", "")
    fold, line, done = Fold(), desk.confidence_line(), 0
    for done, (_, _, changes) in enumerate(track.feed(track.reader.start(), notes), 1):
        fold.take(changes)
        if done % EACH == 0 and done < len(notes):
            yield _so_far(done, fold, place, line)
    yield _so_far(done, fold, place, line)


def _so_far(done: int, fold: Fold, place: dict[str, int], line: float) -> TriedOut:
    facts: dict[int, tuple[Fact, ...]] = {}
    unsure: dict[int, tuple[Fact, ...]] = {}
    for key, fact in fold.added.items():
        where, kept = place[key.note], facts if fact.confidence >= line else unsure
        kept[where] = (*kept.get(where, ()), fact)
    return TriedOut(done, facts, unsure)
