"""Signs: one character for each set of classes that a token can have, so that a rule is a pattern over a short string.

The sets are known when the grammars are loaded; a set that was not foreseen gets a sign that no rule matches. They are
kept as numbers of their classes, one after the other and in order, because there are many thousands of them.
"""

from __future__ import annotations

from array import array
from bisect import bisect_left
from collections import Counter
from collections.abc import Iterable, Sequence
from itertools import accumulate

FIRST, LAST, UNFORESEEN = 0x3400, 0xD7FF, "\uffff"
"Characters of two bytes, of which no rule and no expression means anything else."

Packed = tuple[tuple[str, ...], bytes, bytes]
"""The classes, those of many sets first; the numbers of the classes of every set, two bytes each, one set after the
other; where each begins, four bytes each."""


class Lately(dict[frozenset[str], str]):
    """The signs asked for so far: few of them, so that they are found sooner than among all."""

    def __init__(self, signs: Signs) -> None:
        super().__init__()
        self._signs = signs

    def __missing__(self, classes: frozenset[str]) -> str:
        sign = self[classes] = self._signs.look_up(classes)
        return sign


class Signs:
    """The table of signs."""

    def __init__(self, kept: Packed) -> None:
        self.kept = kept
        self._classes, self._written, starts = kept
        self._starts = memoryview(starts).cast("I")
        self._in_order = array("H", sorted(range(len(self._classes)), key=self._classes.__getitem__))
        "The numbers of the classes in the order of their names."
        self._having: dict[str, str] = {}
        self.lately = Lately(self)

    @classmethod
    def of_sets(cls, sets: Iterable[frozenset[str]]) -> Signs:
        """Signs for sets in any order: sets that share a class of many sets get signs side by side, so that the
        signs of a class are few runs.
        """
        once = set(sets)
        if len(once) > LAST - FIRST:
            raise ValueError("the grammars need more signs than there are")
        many = Counter(name for s in once for name in s)
        classes = sorted(many, key=lambda name: (-many[name], name))
        numbers = {name: n for n, name in enumerate(classes)}
        written = sorted(_written(sorted(numbers[name] for name in s)) for s in once)
        starts = array("I", accumulate(map(len, written), initial=0))
        return cls((tuple(classes), b"".join(written), starts.tobytes()))

    def of(self, classes: frozenset[str]) -> str:
        """The sign of a set of classes."""
        return self.lately[classes]

    def look_up(self, classes: frozenset[str]) -> str:
        """The same, looked for among all."""
        numbers = [self.number(cls) for cls in classes]
        if None in numbers:
            return UNFORESEEN
        sought, low, high = _written(sorted(n for n in numbers if n is not None)), 0, len(self)
        while low < high:
            middle = (low + high) // 2
            if self._set(middle) < sought:
                low = middle + 1
            else:
                high = middle
        return chr(FIRST + low) if low < len(self) and self._set(low) == sought else UNFORESEEN

    def classes(self, sign: str) -> frozenset[str]:
        """The classes that a sign stands for; none for what is no sign, or was not foreseen."""
        return frozenset(self._classes[number] for number in self.numbers(sign))

    def numbers(self, sign: str) -> list[int]:
        """The same as numbers of the classes."""
        n = ord(sign) - FIRST
        row = self._set(n) if 0 <= n < len(self) else b""
        return [int.from_bytes(row[at : at + 2]) for at in range(0, len(row), 2)]

    def number(self, cls: str) -> int | None:
        """The number of a class; None of one that no set holds."""
        at = bisect_left(self._in_order, cls, key=self._classes.__getitem__)
        if at < len(self._in_order) and self._classes[number := self._in_order[at]] == cls:
            return number
        return None

    @property
    def many(self) -> int:
        """How many classes there are."""
        return len(self._classes)

    def having(self, cls: str) -> str:
        """All signs whose sets hold the class, as one string in their order; empty when there is none."""
        if cls not in self._having:
            number = self.number(cls)
            holding = () if number is None else self._holding(_written([number]))
            self._having[cls] = "".join(chr(FIRST + n) for n in holding)
        return self._having[cls]

    def _holding(self, number: bytes) -> Iterable[int]:
        """The places of the sets that hold a class, by its number as it is written."""
        n, at = 0, self._written.find(number)
        while at >= 0:
            if at % 2 == 0:
                while self._starts[n + 1] <= at:
                    n += 1
                yield n
            at = self._written.find(number, at + 1)

    def _set(self, n: int) -> bytes:
        return self._written[self._starts[n] : self._starts[n + 1]]

    def __len__(self) -> int:
        return len(self._starts) - 1


def _written(numbers: Sequence[int]) -> bytes:
    """Numbers so that their bytes have the order of the numbers."""
    return b"".join(number.to_bytes(2) for number in numbers)
