"""The whole of what is known about one machine, as the higher rooms take it."""

from __future__ import annotations

from dataclasses import dataclass, field

from worklog_tui.model.acts import Act
from worklog_tui.model.comments import Comment
from worklog_tui.model.facts import Fact
from worklog_tui.model.items import Place
from worklog_tui.model.machine import Machine
from worklog_tui.model.note import Note, Session


@dataclass(frozen=True, slots=True)
class SessionRecord:
    """One session: its notes in order, and the facts read from them (confident ones and doubtful ones apart)."""

    session: Session
    notes: tuple[Note, ...]
    facts: tuple[Fact, ...]
    questions: tuple[Fact, ...] = ()
    "Facts below the confidence line, to be asked about."


@dataclass(frozen=True, slots=True)
class History:
    """A machine with all its sessions in order."""

    machine: Machine
    sessions: tuple[SessionRecord, ...] = ()
    acts: tuple[Act, ...] = ()
    comments: tuple[Comment, ...] = ()
    _places: dict[str, Place] = field(default_factory=dict, compare=False, repr=False)

    def __post_init__(self) -> None:
        order = 0
        for number, record in enumerate(self.sessions, 1):
            for note in record.notes:
                self._places[note.uid] = Place(number, note.uid, note.said_at, order)
                order += 1

    def place(self, note: str) -> Place:
        """Where a note stands in the history; a KeyError for a note of another machine."""
        return self._places[note]

    def facts(self) -> list[Fact]:
        """All facts, in the order of the notes that hold their main words."""
        return [fact for record in self.sessions for fact in record.facts]
