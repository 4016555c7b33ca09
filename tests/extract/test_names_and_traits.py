"""What the machine is, and the numbers that name its parts: kept apart from what was measured."""

from __future__ import annotations

import pytest

from worklog_tui.extract import explain
from worklog_tui.model import Machine, Number, Reading, Trait
from worklog_tui.rulebook import Rulebook

MACHINE = Machine("Sawmill pump", kind="four-cylinder petrol engine", fuel="petrol", cylinders=4)


@pytest.mark.parametrize(
    "words",
    [
        "the tyre is 4.00-8",
        "the bearing is a 6204",
        "compression test. it fires 1 3 4 2",
        "serial number 10774 on the plate",
        "pilot jet, stamped 45",
    ],
)
def test_a_number_that_names_something_is_no_reading(book: Rulebook, words: str) -> None:
    facts = explain(book, MACHINE, words).facts
    assert not [f for f in facts if isinstance(f, Reading)]
    assert [f for f in facts if isinstance(f, Number | Trait)]


def test_the_voltage_of_the_system_is_a_reading_too(book: Rulebook) -> None:
    facts = explain(book, MACHINE, "it's a six volt system").facts
    assert {f.kind for f in facts} == {"trait", "reading"}


@pytest.mark.parametrize(
    ("words", "source", "doubtful"),
    [
        ("the handbook says positive earth", "own handbook", False),
        ("the book for a similar machine says positive earth", "handbook of a similar machine", False),
        ("the plate says it was built in 1957", "plate", False),
        ("maybe it's positive earth", "guess", True),
        ("he told me it ran last year", "person", False),
        ("it's positive earth", "", False),
    ],
)
def test_a_trait_says_where_it_was_learnt(book: Rulebook, words: str, source: str, doubtful: bool) -> None:
    traits = [f for f in explain(book, MACHINE, words).facts if isinstance(f, Trait)]
    assert [(t.source, t.doubtful) for t in traits] == [(source, doubtful)]


@pytest.mark.parametrize("words", ["it is not positive earth", "if it were positive earth the ammeter would tell us"])
def test_what_is_denied_or_supposed_is_no_trait(book: Rulebook, words: str) -> None:
    assert not [f for f in explain(book, MACHINE, words).facts if isinstance(f, Trait)]
