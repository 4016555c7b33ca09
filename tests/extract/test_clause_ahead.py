"""Two things joined by `and`, of which the second begins a clause of its own: no list is made of them."""

from __future__ import annotations

import pytest

from tests.extract.one_line import done_and_found
from worklog_tui.extract import read_session
from worklog_tui.model import Machine, Note
from worklog_tui.rulebook import Rulebook

PUMP = Machine("Quarry pump", kind="single-cylinder petrol engine driving a pump", fuel="petrol", cylinders=1)


@pytest.mark.parametrize(
    ("line", "facts"),
    [
        ("wiped the bowl out and cleaned the tank and the tap leaks", [("clean", "tank"), ("leaks", "tap")]),
        ("changed the oil and the filter looks fine", [("replace", "oil"), ("fine", "filter")]),
        ("fitted the belt and the pump won't prime", [("fit", "belt"), ("won't prime", "pump")]),
        ("adjusted the brakes and the pedal feels firm", [("adjust", "brakes"), ("firm", "pedal")]),
        ("cleaned the bowl and the jets are worn", [("clean", "bowl"), ("worn", "jets")]),
        ("there's gum in the tap and the plunger's seized solid", [("gum", "tap"), ("seized solid", "plunger")]),
    ],
)
def test_the_second_has_its_own_verb(book: Rulebook, line: str, facts: list[tuple[str, str]]) -> None:
    """What was done with the first, or told of it, is not of the second; and what is told of the second is its own."""
    found = done_and_found(book, PUMP, line)
    assert all(fact in found for fact in facts), found
    assert not any(" and " in part for _, part in found)


@pytest.mark.parametrize(
    ("line", "fact"),
    [
        ("the cam and the followers are worn", ("worn", "cam and the followers")),
        ("cleaned the tank and the fuel lines", ("clean", "tank and the fuel lines")),
        ("the seal between the pump and the engine's perished", ("perished", "seal")),
        ("the nuts and the bolt is rusted", ("rusted", "nuts and the bolt")),
    ],
)
def test_both_have_one_verb(book: Rulebook, line: str, fact: tuple[str, str]) -> None:
    """What is told of both, or done with both, is one."""
    assert fact in done_and_found(book, PUMP, line)


def test_how_a_thing_is_stuck_is_no_cause(book: Rulebook) -> None:
    """Of a thing that is told to be stuck somewhere, the place is not suspected."""
    said = read_session(book, PUMP, [Note("n", "s", "gum in the tap and the plunger is seized solid in the guide")])
    assert [f for f in said if f.kind == "suspect"] == []
