"""One note with everything that was read from it, the doubtful too."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from worklog_tui import store
from worklog_tui.bench.note_acts import known_notes, wordings

if TYPE_CHECKING:
    from worklog_tui.bench.desk import Desk
    from worklog_tui.model import Fact, Note


@dataclass(frozen=True, slots=True)
class NoteFacts:
    """A note and its facts."""

    note: Note
    sure: tuple[Fact, ...]
    asked: tuple[Fact, ...]
    "Below the confidence line."
    earlier: tuple[str, ...]
    "Wordings that it had before, the first one first."


def note_facts(desk: Desk, uid: str) -> NoteFacts:
    """The note with that uid; CannotAct when there is none."""
    with store.reading(desk.logbook) as connection:
        (note,) = known_notes(connection, [uid])
        facts = sorted(store.derived.facts_of_note(connection, uid), key=lambda fact: fact.main.start)
    line = desk.confidence_line()
    before = tuple(one.words for one in wordings(desk, uid) if one.words != note.words)
    sure = tuple(fact for fact in facts if fact.confidence >= line)
    return NoteFacts(note, sure, tuple(fact for fact in facts if fact.confidence < line), before)
