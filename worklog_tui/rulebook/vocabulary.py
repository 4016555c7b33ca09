"""The vocabulary as it is kept and used: all terms in one sorted text, so that sixty thousand of them take little room
and are there at once. What was asked for lately is remembered.
"""

from __future__ import annotations

from array import array
from collections.abc import ItemsView, Iterator, Mapping
from itertools import accumulate
from typing import Any

Term = tuple[tuple[Any, ...], ...]
"The senses of a term."
Numbers = tuple[str, bytes]
"Numbers of two or four bytes, as `array` names them, one after the other."
Packed = tuple[bytes, Numbers, Numbers, Numbers, Numbers, tuple[Any, ...]]
"""The terms one after the other; where each begins; which of the meanings each has; where each meaning begins; the
meanings, of each sense how many values it has and then which; the values."""
LATELY = 8000
"So many questions are remembered."


def packed(table: Mapping[str, Term]) -> Packed:
    """A table of terms as it is kept."""
    said = sorted((term.encode(), senses) for term, senses in table.items())
    meanings = {senses: n for n, senses in enumerate(dict.fromkeys(table.values()))}
    values: dict[tuple[type, Any], int] = {}
    written, begins = [], [0]
    for senses in meanings:
        for sense in senses:
            written.append(len(sense))
            written += [values.setdefault((type(value), value), len(values)) for value in sense]
        begins.append(len(written))
    starts = list(accumulate((len(term) for term, _ in said), initial=0))
    at = [meanings[senses] for _, senses in said]
    return (
        b"".join(term for term, _ in said), _numbers(starts), _numbers(at), _numbers(begins), _numbers(written),
        tuple(value for _, value in values),
    )  # fmt: skip


def _numbers(of: list[int]) -> Numbers:
    """As small as they can be."""
    kind = "H" if max(of, default=0) < 1 << 16 else "I"
    return kind, array(kind, of).tobytes()


def _read(kept: Numbers) -> memoryview[int]:
    kind, written = kept
    return memoryview(written).cast("I" if kind == "I" else "H")


class Vocabulary(Mapping[str, Term]):
    """The senses of every term."""

    __slots__ = ("_at", "_begins", "_lately", "_said", "_starts", "_values", "_written")

    def __init__(self, kept: Packed) -> None:
        self._said, starts, at, begins, written, self._values = kept
        self._starts, self._at = _read(starts), _read(at)
        self._begins, self._written = _read(begins), _read(written)
        self._lately: dict[str, Term | None] = {}

    def get(self, said: str, default: Any = None) -> Any:
        """The senses of a term."""
        try:
            found = self._lately[said]
        except KeyError:
            found = self._look_up(said)
        return default if found is None else found

    def __getitem__(self, said: str) -> Term:
        found: Term | None = self.get(said)
        if found is None:
            raise KeyError(said)
        return found

    def __iter__(self) -> Iterator[str]:
        return (self._term(n).decode() for n in range(len(self)))

    def __len__(self) -> int:
        return len(self._at)

    def items(self) -> ItemsView[str, Term]:
        """Every term with its senses, in the order of the alphabet."""
        return _Items(self)

    def in_order(self) -> Iterator[tuple[str, Term]]:
        """The same, one after the other."""
        meanings = [self._meaning(n) for n in range(len(self._begins) - 1)]
        return ((self._term(n).decode(), meanings[at]) for n, at in enumerate(self._at))

    def goes_on(self, said: str) -> frozenset[str]:
        """The words that may come next in a longer term that begins so."""
        begun, found = said.encode(errors="surrogatepass") + b" ", set()
        for n in range(self._first(begun), len(self)):
            term = self._term(n)
            if not term.startswith(begun):
                break
            found.add(term[len(begun) :].partition(b" ")[0].decode())
        return frozenset(found)

    def _term(self, n: int) -> bytes:
        return self._said[self._starts[n] : self._starts[n + 1]]

    def _meaning(self, n: int) -> Term:
        at, end, senses = self._begins[n], self._begins[n + 1], []
        while at < end:
            upto = at + 1 + self._written[at]
            senses.append(tuple([self._values[value] for value in self._written[at + 1 : upto]]))
            at = upto
        return tuple(senses)

    def _first(self, said: bytes) -> int:
        """The place of the first term that does not come before these bytes."""
        text, starts, low, high = self._said, self._starts, 0, len(self._at)
        while low < high:
            middle = (low + high) // 2
            if text[starts[middle] : starts[middle + 1]] < said:
                low = middle + 1
            else:
                high = middle
        return low

    def _look_up(self, said: str) -> Term | None:
        if len(self._lately) >= LATELY:
            self._lately.clear()
        sought = said.encode(errors="surrogatepass")
        n = self._first(sought)
        found = self._meaning(self._at[n]) if n < len(self) and self._term(n) == sought else None
        self._lately[said] = found
        return found


class _Items(ItemsView[str, Term]):
    def __iter__(self) -> Iterator[tuple[str, Term]]:
        mapping: Vocabulary = self._mapping  # type: ignore[attr-defined]
        return mapping.in_order()
