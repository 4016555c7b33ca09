"""Matters: what is on the list while the log is read, each with what is needed to close it."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, field, replace

from worklog_tui.logbook.same_thing import Thing
from worklog_tui.model import FactKey, OpenItem, Place


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

    @property
    def open(self) -> bool:
        return self.state != "done"


@dataclass(frozen=True, slots=True)
class Matters:
    """All matters in the order in which they were raised; found again by their words."""

    all: tuple[Matter, ...] = ()
    by_word: dict[str, frozenset[int]] = field(default_factory=dict)

    def near(self, *things: Thing) -> list[int]:
        """Positions of the matters that share the beginning of a word, or the name, with one of the things."""
        found: set[int] = set()
        for one in things:
            for key in _keys(one):
                found |= self.by_word.get(key, frozenset())
        return sorted(found)

    def put(self, position: int, matter: Matter) -> Matters:
        """The same matters with one changed."""
        row = list(self.all)
        row[position] = matter
        return replace(self, all=tuple(row))

    def add(self, matter: Matter) -> Matters:
        """The same matters and a new one."""
        index = dict(self.by_word)
        for key in _keys(matter.thing):
            index[key] = index.get(key, frozenset()) | {len(self.all)}
        return Matters((*self.all, matter), index)

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
    )


def anchor_text(key: FactKey) -> str:
    """An anchor as an act names it."""
    return f"{key.note}/{key.kind}/{key.start}/{key.end}/{key.nth}"


def _keys(one: Thing) -> Iterable[str]:
    if one.name:
        yield "=" + one.name
    for word in one.words:
        yield word[:3]
