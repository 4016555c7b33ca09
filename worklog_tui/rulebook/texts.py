"""Many texts in little room: compressed some together, and unpacked when one of them is asked for."""

from __future__ import annotations

import zlib
from bisect import bisect_left, bisect_right
from collections.abc import Iterator, Sequence
from typing import overload

TOGETHER = 64
"So many texts are compressed together; more of them take less room and more time."
BETWEEN = "\0"
"Stands between two of them, and in none."

Packed = tuple[int, tuple[bytes, ...]]
"How many texts; they themselves, so many together."


def packed(texts: Sequence[str]) -> Packed:
    """Texts as they are kept; a ValueError when one cannot be."""
    if any(BETWEEN in text for text in texts):
        raise ValueError("a text that is kept holds no zero byte")
    together = [BETWEEN.join(texts[n : n + TOGETHER]) for n in range(0, len(texts), TOGETHER)]
    return len(texts), tuple(zlib.compress(some.encode(), 9) for some in together)


class Texts(Sequence[str]):
    """The texts in their order; one costs some hundred-thousandths of a second."""

    __slots__ = ("_count", "_kept", "_last")

    def __init__(self, kept: Packed) -> None:
        self._count, self._kept = kept
        self._last: tuple[int, list[str]] = (-1, [])
        "Those that were unpacked last, and which they are."

    def __len__(self) -> int:
        return self._count

    @overload
    def __getitem__(self, at: int) -> str: ...
    @overload
    def __getitem__(self, at: slice) -> list[str]: ...
    def __getitem__(self, at: int | slice) -> str | list[str]:
        if isinstance(at, slice):
            return [self[n] for n in range(*at.indices(self._count))]
        if not 0 <= at < self._count:
            raise IndexError(at)
        return self._some(at // TOGETHER)[at % TOGETHER]

    def __iter__(self) -> Iterator[str]:
        return (text for n in range(len(self._kept)) for text in self._some(n))

    def heads(self) -> tuple[str, ...]:
        """The first of each that are kept together: by them `place` finds one."""
        return tuple(self._some(n)[0] for n in range(len(self._kept)))

    def place(self, sought: str, heads: Sequence[str]) -> int:
        """Of texts in the order of their signs: the place of the first that does not come before this one."""
        some = max(bisect_right(heads, sought) - 1, 0)
        return some * TOGETHER + bisect_left(self._some(some), sought) if self._count else 0

    def _some(self, n: int) -> list[str]:
        known, texts = self._last
        if known != n:
            texts = zlib.decompress(self._kept[n]).decode().split(BETWEEN)
            self._last = n, texts
        return texts
