"""Finds what speaks of a part in one look-up, however many faults, checks and complaints there are."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable
from typing import Generic, TypeVar

from worklog_tui.diagnosis.words import SIDES, tokens
from worklog_tui.rulebook.faults import FaultBook

T = TypeVar("T")


class PartIndex(Generic[T]):
    """Entries by the names of parts, and by the words that a part's name ends (or a cause's begins) with."""

    def __init__(self) -> None:
        self._by_name: dict[str, list[T]] = defaultdict(list)
        self._by_tail: dict[tuple[str, ...], list[T]] = defaultdict(list)
        self._by_head: dict[tuple[str, ...], list[T]] = defaultdict(list)
        self._longest = 1

    def add(self, parts: Iterable[str], entry: T, begins: bool = False) -> None:
        """Puts an entry under some names; `begins`: words that begin with the name mean it too."""
        for part in parts:
            self._by_name[part].append(entry)
            words = tokens(part)
            if words:
                self._longest = max(self._longest, len(words))
                self._by_tail[words].append(entry)
                if begins:
                    self._by_head[words].append(entry)

    def find(self, name: str, words: str, fall_back: bool = False) -> list[T]:
        """The entries for a part: by its name, or by its words where it has none (or, if asked, finds none)."""
        found = list(self._by_name.get(name, ())) if name else []
        if name and (found or not fall_back):
            return found
        said = tokens(words)
        bare = tuple(w for w in said if w not in SIDES) or said
        for form in dict.fromkeys((said, bare)):
            for n in range(1, min(len(form), self._longest) + 1):
                found += self._by_tail.get(form[-n:], ())
                found += self._by_head.get(form[:n], ())
        return list(dict.fromkeys(found))


def part_words(book: FaultBook) -> frozenset[str]:
    """The telling words of all the parts that the fault files speak of."""
    return frozenset(w for fault in book.faults.values() for part in fault.heard.parts for w in tokens(part))
