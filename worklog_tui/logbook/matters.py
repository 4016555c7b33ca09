"""Matters: what is on the list while the log is read, each with what is needed to close it."""

from __future__ import annotations

from dataclasses import dataclass

from worklog_tui.logbook.outcomes import Limits
from worklog_tui.logbook.proved import PutRight
from worklog_tui.logbook.same_thing import FASTENERS, Thing
from worklog_tui.logbook.word_index import WordIndex
from worklog_tui.model import Again, Due, FactKey, OpenItem, Place


@dataclass(frozen=True, slots=True)
class Matter:
    """One thing raised."""

    thing: Thing
    about: str
    reason: str
    anchors: tuple[FactKey, ...]
    raised: Place | None
    line: int = 0
    "The line of its session where it was last told, from 0."
    told: int = 0
    "The session of the last telling."
    firm: bool = True
    "Whether somebody said to come back to it; else it is only noticed."
    bad: str = ""
    "What was bad about it, of a bad finding."
    quantity: str = ""
    "Of a reading that is not as it should be: what was measured."
    limits: Limits | None = None
    "Of such a reading: what it should be."
    suspected: bool = False
    "Whether it is a cause that was suspected."
    quote: str = ""
    comment: int | None = None
    people: int = 0
    state: str = "open"
    closed: Place | None = None
    closed_by: FactKey | None = None
    by_hand: bool = False
    into: int | None = None
    "The position of the matter that a person merged it into."
    due: Due | None = None
    again: Again | None = None
    "Why it is open again, of one that had been dealt with."

    @property
    def open(self) -> bool:
        """Whether it is still on the list."""
        return self.state != "done"


class Matters:
    """All matters in the order in which they were raised; found again by their words.

    The fold works on one of its own: `put` and `add` change it in place, so that a fold costs no more than its changes.
    """

    def __init__(self) -> None:
        self.all: list[Matter] = []
        self.gone: tuple[str, tuple[Thing, ...]] = ("", ())
        "The last note in which things were taken off, and those things."
        self.put_right = PutRight()
        "What was put right so far."
        self._findable = WordIndex()
        "Those that another telling can be of."
        self._still = WordIndex()
        "Those that are open."
        self._ever = WordIndex()
        "All of them."
        self.put_right_by: set[FactKey] = set()
        "The facts that dealt with a matter."
        self._anchors: dict[str, int] = {}
        self._stop_gaps: set[int] = set()
        "Positions of open ones that hold for now only."
        self._told: dict[tuple[int, int], set[int]] = {}
        "By session and line of the last telling."

    def copy(self) -> Matters:
        """The same matters, to be changed without changing these."""
        fresh = Matters()
        fresh.all, fresh.gone, fresh._anchors = list(self.all), self.gone, dict(self._anchors)
        fresh.put_right = self.put_right.copy()
        fresh._findable, fresh._still, fresh._ever = self._findable.copy(), self._still.copy(), self._ever.copy()
        fresh.put_right_by = set(self.put_right_by)
        fresh._stop_gaps = set(self._stop_gaps)
        fresh._told = {line: set(found) for line, found in self._told.items()}
        return fresh

    def near(self, *things: Thing) -> list[int]:
        """Positions of the open matters that may be the same as one of the things, or about what it is on."""
        found: set[int] = set()
        for one in things:
            found |= self._still.may_be(one) | self._still.with_all(one.words)
            found |= self._still.with_all(one.words - FASTENERS)
        return sorted(found)

    def called(self, head: str) -> set[int]:
        """Positions of the open matters in whose name the word stands."""
        return self._still.with_all((head,)) if head else set()

    def stop_gaps(self) -> set[int]:
        """Positions of the open matters that hold for now only."""
        return self._stop_gaps

    def just_told(self, session: int, line: int, back: int) -> set[int]:
        """Positions of what was last told in the lines up to this one, at most some lines back."""
        return set().union(*(self._told.get((session, line - n), ()) for n in range(back + 1)))

    def alike(self, one: Thing) -> set[int]:
        """Positions of all matters that may be the same thing and can still be told again."""
        return self._findable.may_be(one)

    def ever(self, one: Thing) -> set[int]:
        """Positions of all matters, open or done, that may be the thing, on it, or called as it is."""
        return self._ever.may_be(one) | (self._ever.with_all((one.head,)) if one.head else set())

    def put(self, position: int, matter: Matter) -> Matters:
        """These matters, with one changed."""
        before, self.all[position] = self.all[position], matter
        self.put_right_by |= {matter.closed_by} if matter.closed_by is not None else set()
        self._anchors.update((anchor_text(one), position) for one in matter.anchors[len(before.anchors) :])
        self._still.drop(before.thing, position)
        self._findable.drop(before.thing, position)
        self._stop_gaps.discard(position)
        self._told.get((before.told, before.line), set()).discard(position)
        self._enter(matter, position)
        return self

    def add(self, matter: Matter) -> Matters:
        """These matters, and a new one."""
        position = len(self.all)
        self.all.append(matter)
        self._anchors.update((anchor_text(one), position) for one in matter.anchors)
        self._ever.add(matter.thing, position)
        self._enter(matter, position)
        return self

    def _enter(self, matter: Matter, position: int) -> None:
        if matter.open:
            self._still.add(matter.thing, position)
            if matter.reason == "temporary":
                self._stop_gaps.add(position)
        if matter.open or matter.firm or matter.into is not None:
            self._findable.add(matter.thing, position)
        self._told.setdefault((matter.told, matter.line), set()).add(position)

    def holding(self, anchor: str) -> int | None:
        """The matter that holds the anchor, given as text."""
        return self._anchors.get(anchor)


def as_item(m: Matter) -> OpenItem:
    """The matter as the other rooms take it."""
    state = m.state if m.firm or m.state == "done" else "noticed"
    return OpenItem(
        m.anchors,
        m.about,
        m.thing.name,
        m.reason,
        state,
        m.raised,
        m.closed,
        m.closed_by,
        m.quote,
        m.comment,
        m.people,
        m.due,
        m.again if m.open else None,
    )


def anchor_text(key: FactKey) -> str:
    """An anchor as an act names it."""
    return f"{key.note}/{key.kind}/{key.start}/{key.end}/{key.nth}"
