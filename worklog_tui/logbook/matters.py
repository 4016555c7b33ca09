"""Matters: what is on the list while the log is read, each with what is needed to close it."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, field, replace

from worklog_tui.logbook.same_thing import FASTENERS, Thing
from worklog_tui.model import Due, FactKey, OpenItem, Place


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

    @property
    def open(self) -> bool:
        """Whether it is still on the list."""
        return self.state != "done"


Index = dict[str, frozenset[int]]


@dataclass(frozen=True, slots=True)
class Matters:
    """All matters in the order in which they were raised; found again by their words."""

    all: tuple[Matter, ...] = ()
    by_head: Index = field(default_factory=dict)
    still: Index = field(default_factory=dict)
    "Of those that are open, by every word."
    gone: tuple[str, tuple[Thing, ...]] = ("", ())
    "The last note in which things were taken off, and those things."

    def near(self, *things: Thing) -> list[int]:
        """Positions of the open matters that may be the same as one of the things, or about what it is on."""
        found: set[int] = set()
        for one in things:
            found |= _found(self.still, _keys(one))
            rest = [self.still.get(word[:3], frozenset()) for word in one.words - FASTENERS]
            found |= frozenset.intersection(*rest) if rest else frozenset()
        return sorted(found)

    def sharing(self, one: Thing) -> list[int]:
        """Positions of the open matters that share the beginning of a word with the thing."""
        return sorted(_found(self.still, (word[:3] for word in one.words)))

    def alike(self, one: Thing) -> list[int]:
        """Positions of all matters that may be the same thing."""
        return sorted(_found(self.by_head, _keys(one)))

    def put(self, position: int, matter: Matter) -> Matters:
        """The same matters with one changed."""
        row = list(self.all)
        before, row[position] = row[position], matter
        if before.open == matter.open and before.thing == matter.thing:
            return replace(self, all=tuple(row))
        still = _without(self.still, before.thing, position)
        still = _with(still, _all_keys(matter.thing), position) if matter.open else still
        head = _with(self.by_head, _keys(matter.thing), position)
        return replace(self, all=tuple(row), by_head=head, still=still)

    def add(self, matter: Matter) -> Matters:
        """The same matters and a new one."""
        position = len(self.all)
        head = _with(self.by_head, _keys(matter.thing), position)
        still = _with(self.still, _all_keys(matter.thing), position) if matter.open else self.still
        return replace(self, all=(*self.all, matter), by_head=head, still=still)

    def holding(self, anchor: str) -> int | None:
        """The matter that holds the anchor, given as text."""
        return next((n for n, m in enumerate(self.all) if anchor in (anchor_text(a) for a in m.anchors)), None)


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
    )


def anchor_text(key: FactKey) -> str:
    """An anchor as an act names it."""
    return f"{key.note}/{key.kind}/{key.start}/{key.end}/{key.nth}"


def _keys(one: Thing) -> list[str]:
    """By what a thing is found that may be the same: its name, and the beginning of its head."""
    return [key for key in (one.name and "=" + one.name, one.head and "^" + one.head[:2]) if key]


def _all_keys(one: Thing) -> list[str]:
    return [*_keys(one), *(word[:3] for word in one.words)]


def _found(index: Index, keys: Iterable[str]) -> set[int]:
    found: set[int] = set()
    for key in keys:
        found |= index.get(key, frozenset())
    return found


def _with(index: Index, keys: Iterable[str], position: int) -> Index:
    fresh = dict(index)
    for key in keys:
        fresh[key] = fresh.get(key, frozenset()) | {position}
    return fresh


def _without(index: Index, one: Thing, position: int) -> Index:
    fresh = dict(index)
    for key in _all_keys(one):
        fresh[key] = fresh.get(key, frozenset()) - {position}
    return fresh
