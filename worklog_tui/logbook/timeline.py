"""The timeline of a machine: every line of every session, with what was understood of it."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Callable
from dataclasses import dataclass

from worklog_tui.model import Fact, History, Note, Place, Session, SessionRecord


@dataclass(frozen=True, slots=True)
class TimelineLine:
    """One note with its facts."""

    place: Place
    note: Note
    facts: tuple[Fact, ...] = ()
    questions: tuple[Fact, ...] = ()
    "What was not understood for sure."


@dataclass(frozen=True, slots=True)
class TimelineSession:
    """One session with its lines."""

    number: int
    session: Session
    lines: tuple[TimelineLine, ...]


def timeline(history: History) -> tuple[TimelineSession, ...]:
    """All sessions in order."""
    return tuple(_session(history, number, record) for number, record in enumerate(history.sessions, 1))


def only(sessions: tuple[TimelineSession, ...], wanted: Callable[[Fact], bool]) -> tuple[TimelineSession, ...]:
    """The lines that hold a wanted fact, with those facts alone; sessions without any are left out."""
    kept = []
    for one in sessions:
        lines = tuple(
            TimelineLine(line.place, line.note, facts)
            for line in one.lines
            if (facts := tuple(f for f in line.facts if wanted(f)))
        )
        if lines:
            kept.append(TimelineSession(one.number, one.session, lines))
    return tuple(kept)


def _session(history: History, number: int, record: SessionRecord) -> TimelineSession:
    facts, questions = _by_note(record.facts), _by_note(record.questions)
    lines = (
        TimelineLine(history.place(n.uid), n, tuple(facts.get(n.uid, ())), tuple(questions.get(n.uid, ())))
        for n in record.notes
    )
    return TimelineSession(number, record.session, tuple(lines))


def _by_note(facts: tuple[Fact, ...]) -> dict[str, list[Fact]]:
    row: dict[str, list[Fact]] = defaultdict(list)
    for fact in sorted(facts, key=lambda f: f.main.start):
        row[fact.main.note].append(fact)
    return row
