"""Signs: one character for each set of classes that a token can have, so that a rule is a pattern over a short string.

The sets are known when the grammars are loaded; a set that was not foreseen gets a sign that no rule matches.
"""

from __future__ import annotations

from collections.abc import Iterable

FIRST = 0xE000
UNFORESEEN = "\uf8ff"


class Signs:
    """The table of signs."""

    def __init__(self, sets: Iterable[frozenset[str]]) -> None:
        ordered = sorted(set(sets), key=sorted)
        if len(ordered) > 0xF8FF - FIRST:
            raise ValueError("the grammars need more signs than there are")
        self._signs = {s: chr(FIRST + n) for n, s in enumerate(ordered)}
        self._having: dict[str, str] = {}
        for classes, sign in self._signs.items():
            for cls in classes:
                self._having[cls] = self._having.get(cls, "") + sign

    def of(self, classes: frozenset[str]) -> str:
        """The sign of a set of classes."""
        return self._signs.get(classes, UNFORESEEN)

    def having(self, cls: str) -> str:
        """All signs whose sets hold the class, as one string; empty when there is none."""
        return self._having.get(cls, "")

    def __len__(self) -> int:
        return len(self._signs)
