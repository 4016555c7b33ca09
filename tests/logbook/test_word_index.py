"""Things are found by their words: none that is the same is passed over, and most others are not even looked at."""

from __future__ import annotations

from hypothesis import given, settings
from hypothesis import strategies as st

from worklog_tui.logbook.same_thing import FASTENERS, same, speaks_of, thing
from worklog_tui.logbook.word_index import WordIndex

PARTS = ["gasket", "gaskets", "bellows", "relief valve", "carburettor", "carb", "carburetor", "drive belt", "kit"]
WORDS = st.sampled_from([*PARTS, "bolts", "left", "new", "on the", "sump", "head", "tighten"])
SAID = st.builds(" ".join, st.lists(WORDS, min_size=1, max_size=4))
NAMES = st.sampled_from(["", "", "relief valve", "belt"])


@given(SAID, NAMES, SAID, NAMES)
@settings(max_examples=400, deadline=None)
def test_what_is_the_same_is_found(told: str, name: str, again: str, other: str) -> None:
    one, two = thing(told, name), thing(again, other)
    index = WordIndex()
    index.add(one, 7)
    if same(one, two):
        assert 7 in index.may_be(two)
    if speaks_of(two, one):
        assert 7 in index.may_be(two) | index.with_all(two.words) | index.with_all(two.words - FASTENERS)


def test_most_others_are_not_looked_at() -> None:
    index = WordIndex()
    for n, place in enumerate(("inlet manifold", "water jacket", "gearbox", "hopper", "mast", "rudder")):
        index.add(thing(f"{place} valve"), n)
    assert index.may_be(thing("hopper valve")) == {3}
    assert index.may_be(thing("valve")) == {0, 1, 2, 3, 4, 5}


def test_what_was_taken_out_is_not_found() -> None:
    index = WordIndex()
    index.add(thing("drive belt", "belt"), 1)
    copy = index.copy()
    index.drop(thing("drive belt", "belt"), 1)
    assert index.may_be(thing("drive belt")) == set()
    assert copy.may_be(thing("drive belt")) == {1}
