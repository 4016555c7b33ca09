"""The vocabulary in one sorted text says what the table says that it was made of."""

from __future__ import annotations

import random

import pytest

from worklog_tui.rulebook.vocabulary import Vocabulary, packed

BELT, SLACK = (("part", "belt", "part"),), (("bad", "slack"), ("doing", "slacken"))
TABLE = {
    "belt": BELT, "drive belt": BELT, "drive": (("do", "drive"),), "drive-belt": BELT, "slack": SLACK,
    "drive belt guard": (("part", "belt guard", "part"),), "drive shaft": (("part", "shaft", "part"),), "ölstand": BELT,
}  # fmt: skip


def test_every_term_has_its_senses_and_no_other_word_has_any() -> None:
    words = Vocabulary(packed(TABLE))
    for _ in range(2):  # looked up, and remembered
        assert {said: words.get(said) for said in TABLE} == TABLE
        for said in ("", "bel", "belts", "drive ", "drive belt guards", "zz", "\ud800"):
            assert words.get(said, ()) == ()
            assert said not in words
    with pytest.raises(KeyError):
        words["nothing"]


def test_it_can_be_gone_through_like_the_table() -> None:
    words = Vocabulary(packed(TABLE))
    assert dict(words.items()) == dict(zip(words, words.values(), strict=True)) == TABLE
    assert len(words) == len(TABLE)
    assert words == Vocabulary(packed(TABLE))


def test_what_may_come_next_in_a_longer_term() -> None:
    words = Vocabulary(packed(TABLE))
    assert words.goes_on("drive") == {"belt", "shaft"}
    assert words.goes_on("drive belt") == {"guard"}
    assert words.goes_on("belt") == words.goes_on("driv") == words.goes_on("") == frozenset()


def test_an_empty_one_knows_nothing() -> None:
    words = Vocabulary(packed({}))
    assert words.get("belt") is None
    assert words.goes_on("belt") == frozenset()


def test_any_table_comes_back_whole() -> None:
    chance = random.Random(9)
    pieces = ["a", "ab", "b", "b-c", "é", "zz"]
    table = {" ".join(chance.choices(pieces, k=chance.randint(1, 4))): BELT for _ in range(400)}
    words = Vocabulary(packed(table))
    assert dict(words.items()) == table
    for said in table:
        assert words.goes_on(said) == {t[len(said) + 1 :].split(" ")[0] for t in table if t.startswith(f"{said} ")}
