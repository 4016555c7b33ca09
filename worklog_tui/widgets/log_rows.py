"""The rows of a machine's log: its sessions, their notes, and what was understood of each."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Sequence
from typing import TYPE_CHECKING, Protocol

from worklog_tui.widgets.days import day
from worklog_tui.widgets.row import Row

if TYPE_CHECKING:
    from worklog_tui.model import Fact, FactKey, Note, Session


SAID_ONCE = ("to come back to",)


class LogPart(Protocol):
    """Some notes of one session."""

    @property
    def session(self) -> Session:
        """The session."""

    @property
    def number(self) -> int:
        """Which one of the machine's, from 1."""

    @property
    def first(self) -> int:
        """Position of the first of the notes in the session, from 0."""

    @property
    def notes(self) -> Sequence[Note]:
        """The notes, in order."""

    @property
    def facts(self) -> Sequence[Fact]:
        """What was read from them."""


class Log:
    """The rows of the end of a timeline, kept up to date note by note. It knows nothing of the screen."""

    def __init__(self, lengths: Iterable[tuple[str, int]] = ()) -> None:
        self.rows: list[Row] = []
        self.lengths = dict(lengths)
        "For every session of the machine in order, held or not: how many notes it has."
        self.start: tuple[str, int] | None = None
        "The session and the position in it of the first note that is held."
        self._numbers = {uid: number for number, uid in enumerate(self.lengths, 1)}
        self._session = ""
        self._place: dict[str, int] = {}
        self._note: dict[str, Note] = {}
        self._facts: dict[str, list[Fact]] = defaultdict(list)

    @classmethod
    def of(cls, parts: Iterable[LogPart], lengths: Iterable[tuple[str, int]]) -> Log:
        """The rows of these parts of a timeline."""
        log = cls(lengths)
        for part in parts:
            log.start = log.start or (part.session.uid, part.first)
            for fact in part.facts:
                log._facts[fact.main.note].append(fact)
            log._numbers[part.session.uid] = part.number
            log._open(part.session)
            for note in part.notes:
                log._add(note)
        return log

    @property
    def sessions(self) -> int:
        """How many the machine has."""
        return len(self.lengths)

    @property
    def notes(self) -> int:
        """How many the machine has."""
        return sum(self.lengths.values())

    @property
    def earlier(self) -> int:
        """How many notes are not held."""
        return self.notes - len(self._place)

    def number(self, session: str) -> int:
        """Which session of the machine it is, from 1."""
        return self._numbers.get(session, len(self.lengths))

    def before(self, session: str) -> str:
        """The session before one, by its uid; empty for the first."""
        order = list(self.lengths)
        at = order.index(session) if session in order else 0
        return order[at - 1] if at else ""

    def holds(self, note: str) -> bool:
        """Whether a note is held, by its uid."""
        return note in self._place

    def put_before(self, log: Log) -> int:
        """Put the rows of an earlier part before these; gives how many rows come off at the top first."""
        if not log.rows:
            self.start = None
            return 0
        same = bool(self.rows) and self.start is not None and log._session == self.start[0]
        moved = len(log.rows) - same
        self._place = {**log._place, **{uid: place + moved for uid, place in self._place.items()}}
        self._note |= log._note
        for note, facts in log._facts.items():
            self._facts[note] = [*facts, *self._facts.get(note, [])]
        self.rows = [*log.rows, *self.rows[same:]]
        self.start = log.start
        return int(same)

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
            self._count(note)
            if session is not None and session.uid != self._session:
                self._open(session)
            self._add(note)
        return first

    def note(self, uid: str) -> Note | None:
        """A note that is held."""
        return self._note.get(uid)

    def facts_of(self, note: str) -> tuple[Fact, ...]:
        """What was understood of a note, by its uid."""
        return tuple(self._facts.get(note, ()))

    def place(self, note: str) -> int | None:
        """The row of a note; None when it is not held."""
        return self._place.get(note)

    def _count(self, note: Note) -> None:
        self.lengths[note.session] = self.lengths.get(note.session, 0) + 1
        self._numbers.setdefault(note.session, len(self.lengths))
        self.start = self.start or (note.session, 0)

    def _open(self, session: Session) -> None:
        self._session = session.uid
        self.rows.append(Row.of(session_heading(session, self.number(session.uid)), heading=True))

    def _add(self, note: Note) -> None:
        self._place[note.uid] = len(self.rows)
        self._note[note.uid] = note
        self.rows.append(self._row(note))

    def _row(self, note: Note) -> Row:
        from worklog_tui.reports.sentence import sentence

        facts = self._facts.get(note.uid, [])
        said = in_a_row(dict.fromkeys(sentence(fact, brief=True) for fact in facts))
        return Row.of(note.words, margin=time_of(note), marks=marks_in(facts, note.uid), below=said, key=note.uid)


def in_a_row(said: Iterable[str]) -> str:
    """Sentences one after the other; what several in a row begin with, `to come back to:`, is said once."""
    rows: list[str] = []
    before = ""
    for one in said:
        begins, colon, rest = one.partition(": ")
        rows.append(rest if colon and begins == before and begins in SAID_ONCE else one)
        before = begins
    return "; ".join(rows)


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
    if note.at is None:
        return ""
    from worklog_tui.model import clock

    return clock(note.at)


def session_heading(session: Session, number: int) -> str:
    """Such as `Session 2, Tuesday 12 April 2031`."""
    if session.start is None:
        return f"Session {number}, date not known"
    return f"Session {number}, {day(session.start)}" + (" (assumed)" if session.start.known == "assumed" else "")
