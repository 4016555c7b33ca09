"""Words that are a verb in one place and a name in another: plug, oil, dust; what was done to them all the same."""

from __future__ import annotations

import pytest

from tests.extract.one_line import done_and_found
from worklog_tui.model import Machine
from worklog_tui.rulebook import Rulebook

SPRAYER = Machine("Orchard sprayer", kind="single-cylinder petrol engine driving a pump", fuel="petrol", cylinders=1)


@pytest.mark.parametrize(
    ("line", "facts"),
    [
        ("pulled the plug it was black", [("remove", "plug"), ("black", "plug")]),
        ("drained the oil it came out milky", [("drain", "oil"), ("milky", "oil")]),
        ("wiped the dust off the coil", [("clean", "coil")]),
        ("filed the contacts up", [("repair", "contacts")]),
        ("filed up a new key", [("make", "key")]),
    ],
)
def test_behind_an_article_it_is_a_name(book: Rulebook, line: str, facts: list[tuple[str, str]]) -> None:
    """`The plug it was black` plugs nothing, and who wiped the dust off a coil did not dust it off."""
    found = done_and_found(book, SPRAYER, line)
    assert all(fact in found for fact in facts), found


@pytest.mark.parametrize("line", ["removed four bolts", "took the four bolts out", "got four bolts out"])
def test_how_many_stands_between(book: Rulebook, line: str) -> None:
    """A deed done to several is told with their number."""
    assert ("remove", "bolts") in done_and_found(book, SPRAYER, line)


def test_what_is_told_to_be_soaked_was_not_soaked(book: Rulebook) -> None:
    """A state of the one is no deed done to what was named before it."""
    found = done_and_found(book, SPRAYER, "the slave cylinder leaks the linings are soaked in fluid")
    assert ("soaked", "linings") in found
    assert not any(action == "soak" for action, _ in found)


def test_it_is_blown_between_two_of_them(book: Rulebook) -> None:
    """Where it is blown belongs to how it is."""
    found = done_and_found(book, SPRAYER, "took the head off gasket's blown between two and three")
    assert ("blown between two and three", "gasket") in found
