"""The things and states that a few words name, looked up in the vocabulary."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from worklog_tui.logbook.one_before import OneBefore

STATES = frozenset({"bad", "good", "noted", "cause"})
_RANK = {
    "part": 0,
    "joint": 0,
    "fastener": 1,
    "quality": 1,
    "control": 1,
    "fluid": 2,
    "machine": 3,
    "material": 4,
    "tool": 5,
}


@dataclass(frozen=True, slots=True)
class Named:
    """Words that name something of the trade."""

    said: str
    name: str
    kind: str
    "part, fluid, joint, …; or bad, good, noted, cause for a state."
    start: int
    "The first of its words, counted from 0."
    end: int

    @property
    def rank(self) -> tuple[int, int]:
        """Smaller is more telling: a part before a tool, many words before one."""
        return _RANK.get(self.kind, 1), -(self.end - self.start)


def named_in(said: list[str], table: Mapping[str, tuple[tuple[Any, ...], ...]], most: int = 5) -> list[Named]:
    """Parts and states in the words, from left to right, the longest term first."""
    found: list[Named] = []
    at = 0
    while at < len(said):
        sizes = range(_longest(said, at, most, table), 0, -1)
        hit = next((n for size in sizes if (n := _look(said, at, size, table))), None)
        if hit is None:
            at += 1
        else:
            found.append(hit)
            at = hit.end
    return found


def _longest(said: list[str], at: int, most: int, table: Mapping[str, tuple[tuple[Any, ...], ...]]) -> int:
    """Words of the longest term that may begin here: one when no term goes on with the next word."""
    left = min(most, len(said) - at)
    if left < 2 or not isinstance(table, OneBefore) or "-" in said[at] or "-" in said[at + 1]:
        return left
    return left if said[at + 1] in table.follows(said[at]) else 1


def _look(said: list[str], at: int, size: int, table: Mapping[str, tuple[tuple[Any, ...], ...]]) -> Named | None:
    words = " ".join(said[at : at + size])
    senses = table.get(words) or ("-" in words and table.get(words.replace("-", " ")))
    if not senses:
        return None
    for sense in senses:
        if sense[0] == "part":
            return Named(words, sense[1], sense[2], at, at + size)
    for sense in senses:
        if sense[0] in STATES:
            return Named(words, sense[1], sense[0], at, at + size)
    return None
