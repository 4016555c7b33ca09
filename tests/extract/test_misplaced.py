"""A fluid where it has no business is a fault of what it is in; where it belongs it is none."""

from __future__ import annotations

import pytest

from worklog_tui.extract import CONFIDENCE_LINE, read_session
from worklog_tui.model import Finding, Machine, Note, Work
from worklog_tui.rulebook import Rulebook

MIXER = Machine("Yard mixer", kind="single-cylinder petrol engine driving a mixer", fuel="petrol", cylinders=1)


def found(book: Rulebook, line: str, track: str = "captions") -> list[tuple[str, str, str]]:
    """(verdict, part, condition) of what was surely found."""
    said = read_session(book, MIXER, [Note("n", "s", line, track=track)])
    return [
        (f.verdict, f.part, f.condition) for f in said if isinstance(f, Finding) and f.confidence >= CONFIDENCE_LINE
    ]


@pytest.mark.parametrize(
    ("line", "part", "what"),
    [
        ("lid up and there's water in the tank", "tank", "water"),
        ("found petrol in the oil", "oil", "petrol"),
        ("there's still air in the brake line", "brake line", "air"),
        ("there was water in the cylinder so it stood like that all winter", "cylinder", "water"),
        ("there's oil in the air filter", "air filter", "oil"),
    ],
)
def test_where_it_has_no_business(book: Rulebook, line: str, part: str, what: str) -> None:
    """Told to be there, in talk."""
    assert ("bad", part, f"{what} in it") in found(book, line)


def test_typed_it_needs_no_verb(book: Rulebook) -> None:
    """Shorthand leaves `there is` out."""
    assert ("bad", "bowl", "water in it") in found(book, "bowl off, water in the bowl", "typed")


@pytest.mark.parametrize(
    "line",
    [
        "there's water in the radiator",
        "there's oil in the sump",
        "there's air in the tyre",
        "I put some oil in the cylinder",
        "there's no water in the tank",
    ],
)
def test_where_it_belongs_or_was_put(book: Rulebook, line: str) -> None:
    """A radiator holds water, a sump oil; and what a person put in is no fault."""
    assert not any(verdict == "bad" for verdict, _, _ in found(book, line))


def test_what_holds_it_is_talked_of_then(book: Rulebook) -> None:
    """`Drained that out` is of what the water was in."""
    lines = ("took the motor cover off and there's water in the terminal box", "drained that out")
    said = read_session(book, MIXER, [Note(f"n{i}", "s", line, track="captions") for i, line in enumerate(lines)])
    assert [f.part for f in said if isinstance(f, Work) and f.action == "drain"] == ["terminal box"]
