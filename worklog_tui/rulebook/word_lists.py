"""Lists of words that no pattern names: of what is owed or was seen from grammars/owed.toml and grammars/shown.toml,
others from grammars/lists.toml.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

FILE, SHOWN, LISTS = "owed.toml", "shown.toml", "lists.toml"
Lists = Mapping[str, frozenset[str]]
OPENS = "^"
"Before the name of a list: the first words of what it holds, by which most tokens are passed over."


def read_owed(files: Mapping[str, Any]) -> Lists:
    """Name of a list -> its words, and under `^` and its name the first words of them."""
    found = read_lists(files, FILE) | read_lists(files, SHOWN)
    firsts = {OPENS + name: frozenset(word.partition(" ")[0] for word in words) for name, words in found.items()}
    return found | firsts


def read_lists(files: Mapping[str, Any], of: str = LISTS) -> dict[str, frozenset[str]]:
    """Name of a list -> its words, as they stand in tokens: in lower case, without apostrophes."""
    found: dict[str, set[str]] = {}
    for file in (of, f"own/{of}"):
        for name, words in files.get(file, {}).items():
            found.setdefault(name, set()).update(str(word).lower().replace("'", "") for word in words)
    return {name: frozenset(words) for name, words in found.items()}
