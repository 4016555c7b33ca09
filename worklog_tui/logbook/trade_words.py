"""Words for how a machine is left, what is looked at before a start, and where parts come from (left.toml)."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache
from typing import Any

from worklog_tui.logbook.trade_files import trade_file

Words = re.Pattern[str]
_WORD = re.compile(r"\w+")


@dataclass(frozen=True, slots=True)
class LeftState:
    """A state that outlives a session."""

    name: str
    says: Words
    never: Words | None
    ends: frozenset[str]
    "Actions on the same thing that end it."
    ends_with: Words | None
    asks: str
    stops: bool
    names_its_thing: bool
    "Its name tells what it is of, whatever else the note speaks of."


@dataclass(frozen=True, slots=True)
class Fluid:
    """A fluid that is looked at before a start."""

    name: str
    things: frozenset[str]
    when: str


@dataclass(frozen=True, slots=True)
class TradeWords:
    """All that the file says."""

    states: tuple[LeftState, ...]
    fluids: tuple[Fluid, ...]
    do_not_start: Words
    has: dict[str, Words]
    stops: Words
    parts: dict[str, Words]
    left_to_work: frozenset[str]
    "Actions after which a thing is left to itself for a while."
    overnight: Words
    needed: frozenset[str]
    "Names of the parts without which no engine runs."
    hints: frozenset[str]
    "One word of each phrase of the states: a line without any of them tells of none."

    def hinted(self, words: str) -> bool:
        """Whether a line may tell of a state, or of the end of one."""
        return not self.hints.isdisjoint(_WORD.findall(words.casefold()))


@lru_cache(maxsize=1)
def trade_words() -> TradeWords:
    """The words, read once."""
    data = trade_file("left")
    return TradeWords(
        tuple(_state(one) for one in data["state"]),
        tuple(Fluid(one["name"], frozenset(one["things"]), one["when"]) for one in data["fluid"]),
        _any(data["do_not_start"]["says"]),
        {name: _any(words) for name, words in data["has"].items()},
        _any(data["stops"]["things"]),
        {name: _any(words) for name, words in data["parts"].items()},
        frozenset(data["waits"]["actions"]),
        _any(data["waits"]["overnight"]),
        frozenset(data["running"]["needs"]),
        frozenset(_hint(p) for one in data["state"] for p in (*one["says"], *one.get("ends_with", ()))),
    )


def _hint(phrase: str) -> str:
    """The longest word of a phrase."""
    return str(max(_WORD.findall(phrase.casefold()), key=len))


def _state(data: dict[str, Any]) -> LeftState:
    never, ends = data.get("not"), data.get("ends_with")
    return LeftState(
        data["name"], _any(data["says"]), _any(never) if never else None, frozenset(data["ends"]),
        _any(ends) if ends else None, data["asks"], bool(data.get("stops", False)),
        bool(data.get("names_its_thing", False)),
    )  # fmt: skip


def _any(phrases: Sequence[str]) -> Words:
    """A pattern for any of the phrases as whole words; a hyphen may be a space."""
    each = (r"[\s-]+".join(map(re.escape, re.split(r"[\s-]+", one))) for one in sorted(phrases, key=len, reverse=True))
    return re.compile(rf"(?<!\w)(?:{'|'.join(each)})(?!\w)", re.IGNORECASE)
