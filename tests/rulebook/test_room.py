"""The grammars take little room in the program's memory, however much they say: a recorder holds them all day."""

from __future__ import annotations

import gc
import sys
from types import BuiltinFunctionType, FunctionType, ModuleType

from worklog_tui import places
from worklog_tui.rulebook import load
from worklog_tui.rulebook.misheard import Misheard, index

MOST = 4 * 1024 * 1024
"Bytes; 4.00 million now, 3.4 when this was written, 4.9 before texts were compressed, 12.8 before tables were packed."
NO_PART = (type, ModuleType, FunctionType, BuiltinFunctionType)


def bytes_of(thing: object) -> int:
    """The size of an object with all that it is made of."""
    seen, still, found = set(), [thing], 0
    while still:
        one = still.pop()
        if id(one) not in seen and not isinstance(one, NO_PART):
            seen.add(id(one))
            found += sys.getsizeof(one)
            still += gc.get_referents(one)
    return found


def test_the_whole_rulebook_takes_less_than_four_megabytes() -> None:
    assert bytes_of(load([places.grammars()], places.cache())) < MOST


def test_misheard_words_are_found_by_their_first_word_and_say_the_same_each_time() -> None:
    rows = index([{"heard": ["gas kit", "gas"], "means": "gasket", "near": ["head"]}], lambda word: word == "gas")
    known = Misheard(rows)
    for _ in range(2):
        assert known.get("gas") == ({"kit": ((("gas", "kit"), ("gasket",), frozenset({"head"})),)}, ())
    assert known.get("kit") is None
