"""Lists of words that no pattern names: of what is owed or was seen from grammars/owed.toml and grammars/shown.toml,
others from grammars/lists.toml.
"""

from __future__ import annotations

from collections.abc import Mapping
from itertools import accumulate
from typing import Any, NamedTuple

FILE, SHOWN, LISTS = "owed.toml", "shown.toml", "lists.toml"
Lists = Mapping[str, frozenset[str]]
OPENS = "^"
"Before the name of a list: the first words of what it holds, by which most tokens are passed over."


BEGINNING = (
    "duty", "intends", "looks", "people", "not_known", "much", "some", "little", "nothing", "lots", "acts", "be",
    "somebody", "before", "tries", "took", "balked", "sparked",
)  # fmt: skip
"The lists with whose words a reading begins: a sentence without any of them is passed over."


class Beginnings(NamedTuple):
    """The words of the lists with which a reading begins."""

    of: Mapping[str, tuple[str, ...]]
    "Words -> the lists that hold them."
    starts: frozenset[str]
    "These words, and with what those of several words begin."


def beginnings(lists: Lists) -> Beginnings:
    """Those words, by which all places are found where a reading may begin, whichever it is."""
    of: dict[str, tuple[str, ...]] = {}
    starts: set[str] = set()
    for name in BEGINNING:
        for words in lists.get(name, ()):
            of[words] = (*of.get(words, ()), name)
            starts.update(accumulate(words.split(), "{} {}".format))
    once: dict[tuple[str, ...], tuple[str, ...]] = {}
    return Beginnings({words: once.setdefault(names, names) for words, names in of.items()}, frozenset(starts))


def read_owed(files: Mapping[str, Any]) -> Lists:
    """Name of a list -> its words, and under `^` and its name the first words of them."""
    found = read_lists(files, FILE) | read_lists(files, SHOWN)
    once: dict[str, str] = {}
    for name, words in tuple(found.items()):
        firsts = {word.partition(" ")[0] for word in words}
        found[OPENS + name] = frozenset(once.setdefault(first, first) for first in firsts)
    return found


def read_lists(files: Mapping[str, Any], of: str = LISTS) -> dict[str, frozenset[str]]:
    """Name of a list -> its words, as they stand in tokens: in lower case, without apostrophes; kept once each."""
    found: dict[str, set[str]] = {}
    for file in (of, f"own/{of}"):
        for name, words in files.get(file, {}).items():
            found.setdefault(name, set()).update(plain(str(word)) for word in words)
    return {name: frozenset(words) for name, words in found.items()}


def plain(word: str) -> str:
    """As it stands in tokens; the same object where it does so already."""
    plain = word.lower().replace("'", "")
    return word if plain == word else plain
