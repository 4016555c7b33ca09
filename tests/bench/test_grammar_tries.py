"""Trying the grammar: what a pattern means in words, and which patterns a line meets."""

from __future__ import annotations

import pytest

from worklog_tui.bench.grammar_tries import NoPattern, sampled, tried
from worklog_tui.model import Machine
from worklog_tui.rulebook import Rulebook
from worklog_tui.rulebook.samples import samples

KILN = Machine("Kiln blower")


def test_a_sample_has_the_words_of_its_pattern(book: Rulebook) -> None:
    for said in samples("the <thing=condenser> wants (replacing|mending)", book, 3):
        assert said.startswith("the ")
        assert said.endswith((" wants replacing", " wants mending"))


def test_samples_are_the_same_for_the_same_seed(book: Rulebook) -> None:
    pattern = "<thing> [<degree>] <bad>"
    assert samples(pattern, book, 5, seed=7) == samples(pattern, book, 5, seed=7)
    assert samples(pattern, book, 5, seed=7) != samples(pattern, book, 5, seed=8)


def test_a_pattern_by_its_id_says_which_of_its_wordings_are_read(book: Rulebook) -> None:
    lines = sampled(book, KILN, "follow.thing-wants-new")
    assert any(line.startswith("read ") for line in lines)
    assert all(line.startswith(("read ", "not read ")) for line in lines)


def test_what_is_no_pattern_is_refused_with_what_is_wrong(book: Rulebook) -> None:
    with pytest.raises(NoPattern, match="cannot be read"):
        sampled(book, KILN, "<thing")


def test_a_line_names_the_patterns_that_it_meets_and_what_came_of_them(book: Rulebook) -> None:
    lines = tried(book, KILN, "the fan belt needs replacing")
    assert any("follow.thing-wants-new: kept" in line for line in lines)
    assert tried(book, KILN, "the postman came") == ["No pattern meets it."]
