"""Things found again by their words, without looking at each of them.

Two words can only be one when they begin with the same two letters (`same_word`), and of two tellings of one thing the
vaguer one's words all stand in the other. So a thing is entered under all its words, and under its most telling one.
"""

from __future__ import annotations

from collections.abc import Iterable

from worklog_tui.logbook.same_thing import Thing

Places = dict[str, set[int]]
_KIT = frozenset({"kit"})
"A kit is dealt with when what it is for is repaired."


class WordIndex:
    """Positions of things by their names and words."""

    def __init__(self) -> None:
        self._names: Places = {}
        self._words: Places = {}
        self._telling: Places = {}

    def copy(self) -> WordIndex:
        """The same index, to be changed without changing this one."""
        fresh = WordIndex()
        fresh._names, fresh._words, fresh._telling = map(_copied, (self._names, self._words, self._telling))
        return fresh

    def add(self, one: Thing, position: int) -> None:
        """Enters a thing."""
        for places, key in self._under(one):
            places.setdefault(key, set()).add(position)

    def drop(self, one: Thing, position: int) -> None:
        """Takes a thing out; nothing happens when it is not there."""
        for places, key in self._under(one):
            places.get(key, set()).discard(position)

    def may_be(self, one: Thing) -> set[int]:
        """Positions of all that may be the same thing: of that name, or the one telling within the other."""
        found = set(self._names.get(one.name, ())) if one.name else set()
        found |= self.with_all(one.core)
        return found.union(*(self._telling.get(word[:2], ()) for word in one.words))

    def with_all(self, words: Iterable[str]) -> set[int]:
        """Positions of all that may have each of the words; empty without words."""
        rows = sorted((self._words.get(word[:2], set()) for word in words), key=len)
        return set.intersection(*rows) if rows else set()

    def _under(self, one: Thing) -> list[tuple[Places, str]]:
        rows = [(self._words, word[:2]) for word in one.words]
        if one.name:
            rows.append((self._names, one.name))
        if core := (one.core - _KIT or one.core):
            rows.append((self._telling, max(core, key=lambda word: (word != one.head, len(word), word))[:2]))
        return rows


def _copied(places: Places) -> Places:
    return {key: set(found) for key, found in places.items()}
