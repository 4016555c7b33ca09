"""Lines of one machine by their words or by what was read from them, newest first."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from worklog_tui import store
from worklog_tui.bench.search import find_notes

if TYPE_CHECKING:
    from worklog_tui.bench.desk import Desk
    from worklog_tui.model import Fact, Instant, Note

MOST = 500


@dataclass(frozen=True, slots=True)
class FoundLine:
    """A line, and what was read from it."""

    note: Note
    start: Instant | None
    "When its session began; None when that is not known."
    facts: tuple[Fact, ...] = ()


def find_lines(desk: Desk, machine: str, words: str, kind: str, limit: int = MOST) -> list[FoundLine]:
    """Lines that hold all the words, and from which a fact of that kind was read; `asked`: one that is doubtful.

    Without words all lines are meant, without a kind those of every kind.
    """
    if words.strip():
        found = [_line(desk, hit.note, hit.start) for hit in find_notes(desk, words, machine, limit)]
        return [line for line in found if not kind or any(_wanted(desk, fact, kind) for fact in line.facts)]
    from worklog_tui.bench.history import history

    lines: list[FoundLine] = []
    for record in reversed(history(desk, machine).sessions):
        read: dict[str, list[Fact]] = {}
        for fact in (*record.facts, *record.questions):
            read.setdefault(fact.main.note, []).append(fact)
        for note in reversed(record.notes):
            facts = tuple(read.get(note.uid, ()))
            if not kind or any(_wanted(desk, fact, kind) for fact in facts):
                lines.append(FoundLine(note, record.session.start, facts))
                if len(lines) == limit:
                    return lines
    return lines


def _line(desk: Desk, note: Note, start: Instant | None) -> FoundLine:
    with store.reading(desk.logbook) as connection:
        return FoundLine(note, start, tuple(store.derived.facts_of_note(connection, note.uid)))


def _wanted(desk: Desk, fact: Fact, kind: str) -> bool:
    doubtful = fact.confidence < desk.confidence_line()
    return doubtful if kind == "asked" else fact.kind == kind and not doubtful
