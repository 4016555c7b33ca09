"""What is left, told as a bare list: behind `so` or `right` names alone tell what is still to be done."""

from __future__ import annotations

import pytest

from worklog_tui.extract.reader import read_session
from worklog_tui.model import FollowUp, Machine, Note
from worklog_tui.rulebook import Rulebook

CHURN = Machine("Butter churn", kind="electric motor", fuel="none", ignition="none")
BEFORE = ("The lid's off.", "The drum's clean.", "The motor turns freely.", "The guard is back on.", "That runs.")


def left(book: Rulebook, *lines: str) -> list[str]:
    notes = [Note(f"n{n}", "s", line, track="captions", arrival=n) for n, line in enumerate(lines)]
    return [fact.topic for fact in read_session(book, CHURN, notes) if isinstance(fact, FollowUp)]


@pytest.mark.parametrize("opener", ["So.", "Right.", "Right then.", "So, still left:"])
def test_a_bare_list_behind_a_word_that_sums_up_is_what_is_left(book: Rulebook, opener: str) -> None:
    assert left(book, *BEFORE, f"{opener} Belt, lower bearing, drain tap. See you.") == [
        "belt", "lower bearing", "drain tap",
    ]  # fmt: skip


@pytest.mark.parametrize(
    "line",
    [
        "Belt, lower bearing, drain tap.",
        "So. Belt, bearing.",
        "So. The belt broke, the bearing is worn, the drain tap leaks.",
        "So. Saturday, Sunday, the drain tap.",
    ],
)
def test_without_such_a_word_or_with_more_than_names_nothing_is_summed_up(book: Rulebook, line: str) -> None:
    assert left(book, *BEFORE, line) == []


def test_a_list_that_opens_the_session_tells_what_is_to_come(book: Rulebook) -> None:
    assert left(book, "Right. Belt, lower bearing, drain tap.") == []


def test_a_list_goes_on_behind_what_is_told_aside_of_one_of_it(book: Rulebook) -> None:
    said = left(book, "So, the shopping list. Drive belt, new one, I have the number. Drain tap.")
    assert said[0] == "drive belt"
    assert said[-1] == "drain tap"
