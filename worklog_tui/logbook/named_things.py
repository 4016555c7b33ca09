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
    known = table.named if isinstance(table, OneBefore) else {}
    at = 0
    while at < len(said):
        longest = _longest(said, at, most, table)
        hit = _look(said, at, longest, table, known)
        while hit is None and longest > 1:
            longest -= 1
            hit = _look(said, at, longest, table, known)
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


def _look(
    said: list[str], at: int, size: int, table: Mapping[str, tuple[tuple[Any, ...], ...]],
    known: dict[str, tuple[str, str] | None],
) -> Named | None:  # fmt: skip
    words = said[at] if size == 1 else " ".join(said[at : at + size])
    if words not in known:
        if len(known) >= _LATELY:
            known.clear()
        known[words] = _meant(words, table)
    found = known[words]
    return Named(words, *found, at, at + size) if found is not None else None


_LATELY = 20_000
"Terms of which is kept what they name."


def _meant(words: str, table: Mapping[str, tuple[tuple[Any, ...], ...]]) -> tuple[str, str] | None:
    """Name and kind of the part that a term names, else of the state."""
    senses = table.get(words) or ("-" in words and table.get(words.replace("-", " "))) or ()
    part = next(((str(s[1]), str(s[2])) for s in senses if s[0] == "part"), None)
    return part or next(((str(s[1]), str(s[0])) for s in senses if s[0] in STATES), None)
