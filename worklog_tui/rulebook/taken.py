"""How readings are taken: the ways in which a machine can stand meanwhile, and limits; from grammars/taken.toml."""

from __future__ import annotations

from collections.abc import Mapping
from itertools import accumulate
from typing import Any, NamedTuple

from worklog_tui.rulebook.word_lists import plain

FILE = "taken.toml"
LIMIT = "limit"
"In place of a slot: the words are those of a limit."


class Slot(NamedTuple):
    """One way in which a machine can stand, such as hot or cold."""

    beside: frozenset[str]
    "Quantities that it is told of in one sentence."
    holds: frozenset[str]
    "Quantities that it is still true of afterwards."
    notes: int
    "For how many notes."
    on: Mapping[str, frozenset[str]]
    "Quantity -> words of which a thing must hold one, that it holds for this thing."
    off: Mapping[str, frozenset[str]]
    "Quantity -> words of things that it does not hold for."
    only: Mapping[str, frozenset[str]]
    "Value -> the quantities that it is told of, where not of all."
    brief: frozenset[str] = frozenset()
    "Values that are soon over."
    also: bool = False
    "Whether the words may tell something else too."


class Taken(NamedTuple):
    """What grammars/taken.toml says."""

    slots: Mapping[str, Slot]
    says: Mapping[str, tuple[tuple[str, str], ...]]
    "Words -> the slots, or `limit`, that they tell of, each with its value."
    starts: frozenset[str]
    "The first words of these."
    begins: frozenset[str]
    "With what they begin: one word, two, and so on."
    lists: Mapping[str, frozenset[str]]


def read_taken(files: Mapping[str, Any]) -> Taken:
    """The file and a person's own one after it."""
    slots: dict[str, Slot] = {}
    says: dict[str, tuple[tuple[str, str], ...]] = {}
    lists: dict[str, frozenset[str]] = {}
    for file in (files.get(FILE, {}), files.get(f"own/{FILE}", {})):
        told = [(slot["name"], slot.get("says", {})) for slot in file.get("slot", ())]
        for name, values in (*told, (LIMIT, file.get("limits", {}))):
            for value, phrases in values.items():
                for words in map(plain, phrases):
                    says[words] = (*says.get(words, ()), (name, value))
        slots |= {slot["name"]: _slot(slot) for slot in file.get("slot", ()) if "beside" in slot}
        for name, words in file.get("lists", {}).items():
            lists[name] = lists.get(name, frozenset()) | frozenset(map(plain, words))
    begins = frozenset(begin for words in says for begin in accumulate(words.split(), "{} {}".format))
    return Taken(slots, says, frozenset(words.partition(" ")[0] for words in says), begins, lists)


def _slot(data: Mapping[str, Any]) -> Slot:
    on, off, only = (
        {quantity: frozenset(words) for quantity, words in data.get(key, {}).items()} for key in ("on", "off", "only")
    )
    brief, also = frozenset(data.get("brief", ())), bool(data.get("also", False))
    beside, holds = frozenset(data["beside"]), frozenset(data.get("holds", ()))
    return Slot(beside, holds, int(data.get("notes", 1)), on, off, only, brief, also)
