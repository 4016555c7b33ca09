"""Two things joined by `and`, of which the second begins a clause of its own: no list is made of them."""

from __future__ import annotations

import pytest

from worklog_tui.extract import CONFIDENCE_LINE, read_session
from worklog_tui.model import Finding, Machine, Note, Work
from worklog_tui.rulebook import Rulebook

PUMP = Machine("Quarry pump", kind="single-cylinder petrol engine driving a pump", fuel="petrol", cylinders=1)


def told(book: Rulebook, line: str) -> list[tuple[str, str]]:
    """(action or verdict, of what) of all that was surely told in a line of talk."""
    said = read_session(book, PUMP, [Note("n", "s", line, track="captions")])
    return [
        (f.action if isinstance(f, Work) else f.verdict, f.part)
        for f in said
        if isinstance(f, (Work, Finding)) and f.confidence >= CONFIDENCE_LINE
    ]


@pytest.mark.parametrize(
    ("line", "facts"),
    [
        ("wiped the bowl out and cleaned the tank and the tap leaks", [("clean", "tank"), ("bad", "tap")]),
        ("changed the oil and the filter looks fine", [("replace", "oil"), ("good", "filter")]),
        ("fitted the belt and the pump won't prime", [("fit", "belt"), ("bad", "pump")]),
        ("adjusted the brakes and the pedal feels firm", [("adjust", "brakes"), ("good", "pedal")]),
        ("cleaned the bowl and the jets are worn", [("clean", "bowl"), ("bad", "jets")]),
        ("there's gum in the tap and the plunger's seized solid", [("bad", "tap"), ("bad", "plunger")]),
    ],
)
def test_the_second_has_its_own_verb(book: Rulebook, line: str, facts: list[tuple[str, str]]) -> None:
    """What was done with the first, or told of it, is not of the second; and what is told of the second is its own."""
    found = told(book, line)
    assert all(fact in found for fact in facts), found
    assert not any(" and " in part for _, part in found)


@pytest.mark.parametrize(
    ("line", "fact"),
    [
        ("the cam and the followers are worn", ("bad", "cam and the followers")),
        ("cleaned the tank and the fuel lines", ("clean", "tank and the fuel lines")),
        ("the seal between the pump and the engine's perished", ("bad", "seal")),
        ("the nuts and the bolt is rusted", ("bad", "nuts and the bolt")),
    ],
)
def test_both_have_one_verb(book: Rulebook, line: str, fact: tuple[str, str]) -> None:
    """What is told of both, or done with both, is one."""
    assert fact in told(book, line)


def test_how_a_thing_is_stuck_is_no_cause(book: Rulebook) -> None:
    """Of a thing that is told to be stuck somewhere, the place is not suspected."""
    said = read_session(book, PUMP, [Note("n", "s", "gum in the tap and the plunger is seized solid in the guide")])
    assert [f for f in said if f.kind == "suspect"] == []
