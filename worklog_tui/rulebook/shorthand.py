"""Shop shorthand of grammars/shorthand.toml as words that are heard and what they mean."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping
from typing import Any

from worklog_tui.rulebook.senses import Table

FILE = "shorthand.toml"
Entry = dict[str, Any]


Kept = tuple[dict[str, str], dict[str, str]]
"What is short for what, and what is short for what in front of a word with which it names a part."


class Shorthand:
    """What is typed short, and its whole words."""

    def __init__(self, kept: Kept) -> None:
        self._entries, self._before = kept
        self._firsts = {short.partition(" ")[0] for short in self._entries} | set(self._before)

    def whole(self, said: list[str], names: Callable[[str], bool]) -> str:
        """The whole words of what is typed so; empty where it is no shorthand. `names`: whether words name a part."""
        typed = " ".join(said)
        if (found := self._entries.get(typed)) is not None or len(said) != 2 or said[0] not in self._before:
            return found or ""
        both = f"{self._before[said[0]]} {self._entries.get(said[1], said[1])}"
        return both if names(both) else ""

    def may_begin(self, word: str) -> bool:
        """Whether shorthand may begin with a word, so that most words are looked at once."""
        return word in self._firsts


def entries(files: Mapping[str, Any], table: Table) -> list[Entry]:
    """The entries `heard`, `means` of what is shorthand wherever it stands."""
    alone = _with_plurals(_tables(files, "alone"))
    pairs = _pairs(alone, _tables(files, "before"), table)
    return [{"heard": [short], "means": full} for short, full in (alone | dict(pairs)).items()]


def typed(files: Mapping[str, Any]) -> Kept:
    """The same, and what is shorthand in typed lines only."""
    stays = {short for file in _files(files) for short in file.get("as_good", ())}
    before = {short: full for short, full in _tables(files, "before").items() if short not in stays}
    several = _with_plurals(_tables(files, "alone") | _tables(files, "typed"))
    return several | _tables(files, "words"), before


def _tables(files: Mapping[str, Any], name: str) -> dict[str, str]:
    """A table of the shipped file and of the person's own."""
    found: dict[str, str] = {}
    for file in _files(files):
        found.update(file.get(name, {}))
    return found


def _files(files: Mapping[str, Any]) -> list[Mapping[str, Any]]:
    return [files.get(name, {}) for name in (FILE, f"own/{FILE}")]


def _with_plurals(short: Mapping[str, str]) -> dict[str, str]:
    return {_many(one): _many(full) for one, full in short.items() if not one.endswith("s")} | dict(short)


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
