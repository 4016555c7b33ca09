"""What a published log is made of: the history that came through the gate, and what was worked out from it."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field

from worklog_tui.model import Advice, CommentReading, Fact, History, OpenItem, Place
from worklog_tui.reports.repair_log import Spot
from worklog_tui.reports.when import where
from worklog_tui.rulebook.faults import FaultBook

LONGEST = 200
"Characters of a note that are quoted beside what was read from it."


@dataclass(frozen=True, slots=True)
class Material:
    """A history with its items and advice as they stood at the end of the span that is told."""

    history: History
    "Up to the end of the span."
    items: tuple[OpenItem, ...]
    advice: Advice
    faults: FaultBook
    first: int = 1
    "The first session that is told, counted from 1; what came before it only explains."
    comments: tuple[CommentReading, ...] = ()
    whole: bool = True
    "Whether nothing came after the span."
    made: str = ""
    "The day on which it is made, in words."
    _words: dict[str, str] = field(default_factory=dict, repr=False, compare=False)
    _facts: list[tuple[Place, Fact]] = field(default_factory=list, repr=False, compare=False)

    def __post_init__(self) -> None:
        self._words.update((n.uid, n.words) for record in self.history.sessions for n in record.notes)
        self._facts.extend((self.history.place(f.main.note), f) for f in self.history.facts())

    def everything(self) -> list[tuple[Place, Fact]]:
        """All facts with their places, from the first session on."""
        return self._facts

    def told(self) -> Iterator[tuple[Place, Fact]]:
        """The facts of the sessions that are told."""
        return (row for row in self._facts if row[0].session >= self.first)

    def words(self, note: str, otherwise: str = "") -> str:
        """What was said in a note, shortened where it is long."""
        said = self._words.get(note, otherwise)
        return said if len(said) <= LONGEST else said[:LONGEST].rsplit(" ", 1)[0] + " …"

    def suggested(self, item: OpenItem) -> bool:
        """Whether an item is there because viewers suggested it, and for nothing else."""
        hints = (r.comment.number for r in self.comments if r.kind == "suggestion")
        return item.raised is None and item.comment is not None and item.comment in hints

    def day(self, session: int) -> str:
        """The day of a session as an ISO date; empty when it is not known."""
        start = self.history.sessions[session - 1].session.start
        return f"{start.moment():%Y-%m-%d}" if start else ""


def spot(place: Place) -> Spot:
    """The place as one can go to it."""
    return Spot(where(place), anchor(place.note))


def maybe_spot(place: Place | None) -> Spot | None:
    """The same for a place that may be missing."""
    return None if place is None else spot(place)


def anchor(note: str) -> str:
    """The anchor of a note."""
    return f"note-{note}"
