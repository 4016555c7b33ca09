"""Mis-heard words of grammars/misheard.toml, found by their first word."""

from __future__ import annotations

import json
from collections.abc import Callable, Iterable
from typing import Any

from worklog_tui.rulebook import texts
from worklog_tui.rulebook.texts import Texts

Row = tuple[tuple[str, ...], tuple[str, ...], frozenset[str]]
"Heard words, what they mean, words of which one must stand near."
Entries = list[tuple[list[str], list[str], list[str]]]
"Rows as they are written."
Rows = tuple[dict[str, tuple[Row, ...]], tuple[Row, ...]]
"""The rows for each second word, longest first, and those of the first word alone, which are tried after any second
word too."""
Kept = tuple[tuple[str, ...], texts.Packed]
"The first heard words, and the rows of each, written as JSON."


class Misheard:
    """The rows of each first heard word; they are made when it is first met."""

    def __init__(self, kept: Kept) -> None:
        firsts, written = kept
        self.firsts, self._written = {first: n for n, first in enumerate(firsts)}, Texts(written)
        self._met: dict[str, Rows] = {}

    def get(self, first: str) -> Rows | None:
        """Its rows."""
        found = self._met.get(first)
        if found is None and first in self.firsts:
            entries: Entries = json.loads(self._written[self.firsts[first]])
            rows = [(tuple(heard), tuple(meant), frozenset(near)) for heard, meant, near in entries]
            found = self._met[first] = _by_second(rows)
        return found


def index(entries: Iterable[dict[str, Any]], common: Callable[[str], bool]) -> Kept:
    """The entries of grammars/misheard.toml, found by their first word; a single word that is `common` talk is never
    taken back.
    """
    found: dict[str, Entries] = {}
    for entry in entries:
        for heard in entry["heard"]:
            words = heard.replace("'", "").replace("-", " ").split()
            if len(words) == 1 and common(words[0]):
                continue
            meant = entry["means"].replace("'", "").replace("-", " ").split()
            found.setdefault(words[0], []).append((words, meant, list(entry.get("near", ()))))
    return tuple(found), texts.packed([json.dumps(rows, ensure_ascii=False) for rows in found.values()])


def _by_second(rows: list[Row]) -> Rows:
    alone = tuple(row for row in rows if len(row[0]) == 1)
    longer = sorted((row for row in rows if len(row[0]) > 1), key=lambda row: -len(row[0]))
    seconds = dict.fromkeys(row[0][1] for row in longer)
    return {second: (*(row for row in longer if row[0][1] == second), *alone) for second in seconds}, alone
