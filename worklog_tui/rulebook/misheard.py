"""Mis-heard words of grammars/misheard.toml, found by their first word."""

from __future__ import annotations

import marshal
from collections.abc import Callable, Iterable
from typing import Any

Row = tuple[tuple[str, ...], tuple[str, ...], frozenset[str]]
"Heard words, what they mean, words of which one must stand near."
Rows = tuple[dict[str, tuple[Row, ...]], tuple[Row, ...]]
"""The rows for each second word, longest first, and those of the first word alone, which are tried after any second
word too."""
Kept = dict[str, bytes]
"First heard word -> its rows, written small."


class Misheard:
    """The rows of each first heard word; they are made when it is first met."""

    def __init__(self, kept: Kept) -> None:
        self.firsts = self._kept = kept
        self._met: dict[str, Rows] = {}

    def get(self, first: str) -> Rows | None:
        """Its rows."""
        if first not in self._kept:
            return None
        found = self._met.get(first)
        if found is None:
            found = self._met[first] = marshal.loads(self._kept[first])
        return found


def index(entries: Iterable[dict[str, Any]], common: Callable[[str], bool]) -> Kept:
    """The entries of grammars/misheard.toml, found by their first word; a single word that is `common` talk is never
    taken back.
    """
    found: dict[str, list[Row]] = {}
    for entry in entries:
        for heard in entry["heard"]:
            words = tuple(heard.replace("'", "").replace("-", " ").split())
            if len(words) == 1 and common(words[0]):
                continue
            meant = tuple(entry["means"].replace("'", "").replace("-", " ").split())
            found.setdefault(words[0], []).append((words, meant, frozenset(entry.get("near", ()))))
    return {first: marshal.dumps(_by_second(rows)) for first, rows in found.items()}


def _by_second(rows: list[Row]) -> Rows:
    alone = tuple(row for row in rows if len(row[0]) == 1)
    longer = sorted((row for row in rows if len(row[0]) > 1), key=lambda row: -len(row[0]))
    seconds = dict.fromkeys(row[0][1] for row in longer)
    return {second: (*(row for row in longer if row[0][1] == second), *alone) for second in seconds}, alone
