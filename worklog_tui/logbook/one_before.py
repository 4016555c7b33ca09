"""Two vocabularies of which one is asked before the other."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

Senses = tuple[tuple[Any, ...], ...]


class OneBefore(Mapping[str, Senses]):
    """The first one asked first; a look-up costs no more than one in each."""

    def __init__(self, first: Mapping[str, Senses], second: Mapping[str, Senses]) -> None:
        self._first, self._second = first, second
        self._follows: dict[str, frozenset[str]] = {}
        self.named: dict[str, tuple[str, str] | None] = {}
        "What terms that were asked for lately name, for whoever looks many texts through."

    def get(self, said: str, default: Any = None) -> Any:
        """The senses of a term in the first that has it."""
        found = self._first.get(said)
        return found if found is not None else self._second.get(said, default)

    def follows(self, word: str) -> frozenset[str]:
        """The words that come second in terms which begin with this word."""
        found = self._follows.get(word)
        if found is None:
            longer = {said.split(" ", 2)[1] for said in self._first if said.startswith(word + " ")}
            goes_on = getattr(self._second, "goes_on", None)
            rest = goes_on(word) if goes_on else {s.split(" ", 2)[1] for s in self._second if s.startswith(word + " ")}
            found = self._follows[word] = frozenset(longer | rest)
        return found

    def __getitem__(self, said: str) -> Senses:
        found = self.get(said)
        if found is None:
            raise KeyError(said)
        return tuple(found)

    def __iter__(self) -> Iterator[str]:
        return iter({**self._first, **self._second})

    def __len__(self) -> int:
        return len({*self._first, *self._second})
