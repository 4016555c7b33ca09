"""The timeline of a machine: its sessions, their notes, and what was understood of each."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable
from typing import ClassVar

from textual.binding import Binding, BindingType

from worklog_tui.model import Fact, FactKey, History, Note, Session, clock
from worklog_tui.reports.sentence import sentence
from worklog_tui.widgets.days import day
from worklog_tui.widgets.row import Row
from worklog_tui.widgets.rows import Rows


class Log:
    """The rows of a timeline, kept up to date note by note. It knows nothing of the screen."""

    def __init__(self) -> None:
        self.rows: list[Row] = []
        self.sessions = 0
        self.notes = 0
        self._session = ""
        self._place: dict[str, int] = {}
        self._note: dict[str, Note] = {}
        self._facts: dict[str, list[Fact]] = defaultdict(list)

    @classmethod
    def of(cls, history: History) -> Log:
        """The rows of a whole history."""
        log = cls()
        for record in history.sessions:
            for fact in record.facts:
                log._facts[fact.main.note].append(fact)
            log._open(record.session)
            for note in record.notes:
                log._add(note)
        return log

    def take(
        self, note: Note, session: Session | None, facts: Iterable[Fact], withdrawn: Iterable[FactKey] = ()
    ) -> int:
        """Add a note with its facts; gives the first row that is new or other than before."""
        first = len(self.rows)
        touched = set()
        for key in withdrawn:
            self._facts[key.note] = [f for f in self._facts[key.note] if f.key != key]
            touched.add(key.note)
        for fact in facts:
            kept = [f for f in self._facts[fact.main.note] if f.key != fact.key]
            self._facts[fact.main.note] = [*kept, fact]
            touched.add(fact.main.note)
        for uid in touched & self._place.keys():
            place = self._place[uid]
            self.rows[place] = self._row(self._note[uid])
            first = min(first, place)
        if note.uid not in self._place:
            if session is not None and session.uid != self._session:
                self._open(session)
            self._add(note)
        return first

    def facts_of(self, note: str) -> tuple[Fact, ...]:
        """What was understood of a note, by its uid."""
        return tuple(self._facts.get(note, ()))

    def place(self, note: str) -> int | None:
        """The row of a note; None when it is not there."""
        return self._place.get(note)

    def _open(self, session: Session) -> None:
        self._session = session.uid
        self.sessions += 1
        self.rows.append(Row.of(session_heading(session, self.sessions), heading=True))

    def _add(self, note: Note) -> None:
        self._place[note.uid] = len(self.rows)
        self._note[note.uid] = note
        self.notes += 1
        self.rows.append(self._row(note))

    def _row(self, note: Note) -> Row:
        facts = self._facts.get(note.uid, [])
        said = "; ".join(dict.fromkeys(sentence(fact, brief=True) for fact in facts))
        return Row.of(note.words, margin=time_of(note), marks=marks_in(facts, note.uid), below=said, key=note.uid)


class Timeline(Rows):
    """The list of the log."""

    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("enter", "choose", "why", id="timeline.choose", tooltip="Which words of this note were read as what"),
    ]

    margin = 11

    def __init__(self) -> None:
        super().__init__("No notes yet. The first one begins the first session.")
        self.log_rows = Log()

    def show_log(self, log: Log) -> None:
        """Show a log, with its last note in sight."""
        self.log_rows = log
        self.show(log.rows, at_end=True)

    def take(
        self, note: Note, session: Session | None, facts: Iterable[Fact], withdrawn: Iterable[FactKey] = ()
    ) -> None:
        """Show a note that was just kept."""
        first = self.log_rows.take(note, session, facts, withdrawn)
        self.change(first, self.log_rows.rows[first:])


def marks_in(facts: Iterable[Fact], note: str) -> tuple[tuple[int, int], ...]:
    """The words of one note that facts were read from, as stretches in order that do not overlap."""
    spans = sorted((s.start, s.end) for f in facts for s in (f.main, *f.evidence) if s.note == note and s.end > s.start)
    merged: list[tuple[int, int]] = []
    for start, end in spans:
        if merged and start <= merged[-1][1]:
            merged[-1] = (merged[-1][0], max(end, merged[-1][1]))
        else:
            merged.append((start, end))
    return tuple(merged)


def time_of(note: Note) -> str:
    """The time beside a note: as written, else by the wall clock, else within the session."""
    if note.said_at:
        return note.said_at
    if note.instant is not None:
        return f"{note.instant.moment():%H:%M}"
    return clock(note.at) if note.at is not None else ""


def session_heading(session: Session, number: int) -> str:
    """Such as `Session 2, Tuesday 12 April 2031`."""
    if session.start is None:
        return f"Session {number}, date not known"
    return f"Session {number}, {day(session.start)}" + (" (assumed)" if session.start.known == "assumed" else "")
