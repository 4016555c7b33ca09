"""Shop shorthand of grammars/shorthand.toml as words that are heard and what they mean."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from typing import Any

from worklog_tui.rulebook.senses import Table

FILE = "shorthand.toml"
Entry = dict[str, Any]


def entries(files: Mapping[str, Any], table: Table) -> list[Entry]:
    """The entries `heard`, `means` of the shipped file and the person's own, several of each too."""
    alone: dict[str, str] = {}
    before: dict[str, str] = {}
    for file in (FILE, f"own/{FILE}"):
        data = files.get(file, {})
        alone.update(data.get("alone", {}))
        before.update(data.get("before", {}))
    plural = {_many(short): _many(full) for short, full in alone.items() if not short.endswith("s")}
    alone = plural | alone
    pairs = _pairs(alone, before, table)
    return [{"heard": [short], "means": full} for short, full in (alone | dict(pairs)).items()]


def _many(words: str) -> str:
    return f"{words}{'es' if words.endswith(('ch', 'sh', 's', 'x')) else 's'}"


def _pairs(alone: Mapping[str, str], before: Mapping[str, str], table: Iterable[str]) -> Iterator[tuple[str, str]]:
    """Each name of two words of the vocabulary, in the shorthand of its first word and of both."""
    firsts: dict[str, list[str]] = {}
    for short, full in before.items():
        firsts.setdefault(full, []).append(short)
    lasts: dict[str, list[str]] = {}
    for short, full in alone.items():
        lasts.setdefault(full, []).append(short)
    for said in table:
        first, _, last = said.partition(" ")
        if not last or " " in last or first not in firsts or not _names_part(said, table):
            continue
        for short in firsts[first]:
            for end in (last, *lasts.get(last, ())):
                yield f"{short} {end}", said


def _names_part(said: str, table: Any) -> bool:
    return any(sense[0] == "part" for sense in table.get(said, ()))
