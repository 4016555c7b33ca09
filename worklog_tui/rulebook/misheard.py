"""Mis-heard words of grammars/misheard.toml, found by their first word."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from typing import Any

Row = tuple[tuple[str, ...], tuple[str, ...], frozenset[str]]
"Heard words, what they mean, words of which one must stand near."
Misheard = dict[str, tuple[Row, ...]]
"First heard word -> its rows, longest first."


def index(entries: Iterable[dict[str, Any]], common: Callable[[str], bool]) -> Misheard:
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
    return {first: tuple(sorted(rows, key=lambda r: -len(r[0]))) for first, rows in found.items()}
