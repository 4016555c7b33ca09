"""Signs: one character for each set of classes that a token can have, so that a rule is a pattern over a short string.

The sets are known when the grammars are loaded; a set that was not foreseen gets a sign that no rule matches.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Mapping, Sequence
from functools import cached_property

FIRST, UNFORESEEN = 0xF0000, "\U000ffffd"
NOTHING: frozenset[str] = frozenset()


class Lately(dict[frozenset[str], str]):
    """The signs asked for so far: few of them, so that they are found sooner than among all."""

    def __init__(self, signs: Mapping[frozenset[str], str]) -> None:
        super().__init__()
        self._signs = signs

    def __missing__(self, classes: frozenset[str]) -> str:
        sign = self[classes] = self._signs.get(classes, UNFORESEEN)
        return sign


class Signs:
    """The table of signs, made of the sets of classes in the order of their signs."""

    def __init__(self, sets: Sequence[frozenset[str]]) -> None:
        if len(sets) > ord(UNFORESEEN) - FIRST:
            raise ValueError("the grammars need more signs than there are")
        self.sets = tuple(sets)
        self._signs = {s: chr(FIRST + n) for n, s in enumerate(self.sets)}
        self.lately = Lately(self._signs)

    @classmethod
    def of_sets(cls, sets: Iterable[frozenset[str]]) -> Signs:
        """Signs for sets in any order: sets that share a class of many sets get signs side by side, so that the
        signs of a class are few runs.
        """
        once = set(sets)
        many = Counter(name for s in once for name in s)
        return cls(sorted(once, key=lambda s: sorted((-many[name], name) for name in s)))

    def of(self, classes: frozenset[str]) -> str:
        """The sign of a set of classes."""
        return self.lately[classes]

    def classes(self, sign: str) -> frozenset[str]:
        """The classes that a sign stands for; none for what is no sign, or was not foreseen."""
        n = ord(sign) - FIRST
        return self.sets[n] if 0 <= n < len(self.sets) else NOTHING

    @cached_property
    def _having(self) -> dict[str, str]:
        found: dict[str, list[str]] = {}
        for classes, sign in self._signs.items():
            for cls in classes:
                found.setdefault(cls, []).append(sign)
        return {cls: "".join(signs) for cls, signs in found.items()}

    def having(self, cls: str) -> str:
        """All signs whose sets hold the class, as one string in their order; empty when there is none."""
        return self._having.get(cls, "")

    def __len__(self) -> int:
        return len(self.sets)
