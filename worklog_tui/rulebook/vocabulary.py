"""The vocabulary as it is kept and used: all terms in their order, compressed, so that sixty thousand of them take
little room and are there at once. What was asked for lately is remembered.
"""

from __future__ import annotations

from array import array
from collections import Counter
from collections.abc import ItemsView, Iterator, Mapping
from sys import intern
from typing import Any

from worklog_tui.rulebook import texts
from worklog_tui.rulebook.texts import Texts

Term = tuple[tuple[Any, ...], ...]
"The senses of a term."
Numbers = tuple[str, bytes]
"Numbers of two or four bytes, as `array` names them, one after the other."
Packed = tuple[texts.Packed, tuple[str, ...], Numbers, Numbers, Numbers, tuple[Any, ...], texts.Packed]
"""The terms; the first of those kept together; which of the meanings each has; where each meaning begins; the
meanings, of each sense how many values it has and then which; the values that stand often; the names that do not,
whose numbers go on from them."""
LATELY = 8000
"So many questions are remembered."
OFTEN = 8
"What stands in so many senses is kept as it is."


def packed(table: Mapping[str, Term]) -> Packed:
    """A table of terms as it is kept."""
    said = sorted(table.items())
    meanings = {senses: n for n, senses in enumerate(dict.fromkeys(table.values()))}
    many = Counter((type(value), value) for senses in meanings for sense in senses for value in sense)
    often = [one for one, times in many.items() if one[0] is not str or times >= OFTEN]
    names = [one for one, times in many.items() if one[0] is str and times < OFTEN]
    values = {one: n for n, one in enumerate((*often, *names))}
    written, begins = [], [0]
    for senses in meanings:
        for sense in senses:
            written.append(len(sense))
            written += [values[type(value), value] for value in sense]
        begins.append(len(written))
    terms = texts.packed([term for term, _ in said])
    return (
        terms, Texts(terms).heads(), _numbers([meanings[senses] for _, senses in said]), _numbers(begins),
        _numbers(written), tuple(value for _, value in often), texts.packed([value for _, value in names]),
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

    __slots__ = ("_at", "_begins", "_heads", "_lately", "_names", "_often", "_said", "_written")

    def __init__(self, kept: Packed) -> None:
        said, self._heads, at, begins, written, self._often, names = kept
        self._said, self._names = Texts(said), Texts(names)
        self._at, self._begins, self._written = _read(at), _read(begins), _read(written)
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
        return iter(self._said)

    def __len__(self) -> int:
        return len(self._at)

    def items(self) -> ItemsView[str, Term]:
        """Every term with its senses, in the order of the alphabet."""
        return _Items(self)

    def in_order(self) -> Iterator[tuple[str, Term]]:
        """The same, one after the other."""
        meanings = [self._meaning(n) for n in range(len(self._begins) - 1)]
        return ((term, meanings[at]) for term, at in zip(self._said, self._at, strict=True))

    def goes_on(self, said: str) -> frozenset[str]:
        """The words that may come next in a longer term that begins so."""
        begun, found = f"{said} ", set()
        for n in range(self._said.place(begun, self._heads), len(self)):
            term = self._said[n]
            if not term.startswith(begun):
                break
            found.add(term[len(begun) :].partition(" ")[0])
        return frozenset(found)

    def _meaning(self, n: int) -> Term:
        at, end, senses = self._begins[n], self._begins[n + 1], []
        while at < end:
            upto = at + 1 + self._written[at]
            senses.append(tuple([self._value(value) for value in self._written[at + 1 : upto]]))
            at = upto
        return tuple(senses)

    def _value(self, n: int) -> Any:
        often = self._often
        return often[n] if n < len(often) else intern(self._names[n - len(often)])

    def _look_up(self, said: str) -> Term | None:
        if len(self._lately) >= LATELY:
            self._lately.clear()
        n = self._said.place(said, self._heads)
        found = self._meaning(self._at[n]) if n < len(self) and self._said[n] == said else None
        self._lately[said] = found
        return found


class _Items(ItemsView[str, Term]):
    def __iter__(self) -> Iterator[tuple[str, Term]]:
        mapping: Vocabulary = self._mapping  # type: ignore[attr-defined]
        return mapping.in_order()
