"""Words of what is owed: duty, intention, when it will be done; from grammars/owed.toml."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

FILE = "owed.toml"
Owed = Mapping[str, frozenset[str]]
OPENS = "^"
"Before the name of a list: the first words of what it holds, by which most tokens are passed over."


def read_owed(files: Mapping[str, Any]) -> Owed:
    """Name of a list -> its words, as they stand in tokens: in lower case, without apostrophes."""
    found: dict[str, set[str]] = {}
    for file in (FILE, f"own/{FILE}"):
        for name, words in files.get(file, {}).items():
            found.setdefault(name, set()).update(str(word).lower().replace("'", "") for word in words)
    firsts = {OPENS + name: frozenset(word.partition(" ")[0] for word in words) for name, words in found.items()}
    return {name: frozenset(words) for name, words in found.items()} | firsts
