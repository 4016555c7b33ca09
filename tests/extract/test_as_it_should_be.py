"""What a figure is for, told by how the sentence is built: what should be, what it was brought to. A rope machine."""

from __future__ import annotations

import pytest

from worklog_tui.extract.reader import read_session
from worklog_tui.model import Machine, Note, Reading
from worklog_tui.rulebook import Rulebook

ROPEWALK = Machine("rope machine", kind="rope making machine, electric motor", fuel="none", ignition="none")


def role(book: Rulebook, line: str) -> str:
    """The role of the last figure of a line."""
    found = read_session(book, ROPEWALK, [Note("n0", "s", line, track="captions", arrival=0)])
    return [f.role for f in found if isinstance(f, Reading)][-1]


@pytest.mark.parametrize(
    "line",
    [
        "the correct clearance is twelve thou",
        "factory figure is 0.4 mm",
        "tolerance 0.02 mm",
        "a healthy one will show ninety psi",
        "they quote twelve thou",
        "the decal inside the door gives thirty psi",
        "all the old hands reckon ten thou",
        "it needs to come up to seven bar",
        "seven bar it says here",
        "fifteen thou is what they're after",
        "anywhere between two and four thou will do",
        "18 newton metres req'd",
    ],
)
def test_what_should_be_is_told_in_many_ways(book: Rulebook, line: str) -> None:
    assert role(book, line) == "specified"


@pytest.mark.parametrize(
    "line",
    [
        "bored the bush to 20 mm",
        "trimmed the strip back to 300 mm",
        "took a shim out and that gives me four thou",
        "screwed it in till the gauge showed thirty psi",
        "turned the regulator up and we've got 14.2 volts",
        "they've all had sixty newton metres",
        "the last pull was sixty newton metres",
        "half a litre of gear oil went into the box",
    ],
)
def test_what_a_person_brought_it_to_was_set(book: Rulebook, line: str) -> None:
    assert role(book, line) == "set"


@pytest.mark.parametrize(
    "line",
    [
        "slack of the good one is 12 mm",  # there is one, and it was measured
        "the sleeve came home bored to 30 mm",
        "cleaned the terminals and I've got 12.6 volts now",  # no adjuster was moved
        "it creeps up to forty psi",
    ],
)
def test_what_came_by_itself_was_measured(book: Rulebook, line: str) -> None:
    assert role(book, line) == "measured"


@pytest.mark.parametrize(
    "line",
    [
        "that wants torquing to sixty newton metres tomorrow",
        "I'll set that to fifteen thou when it's back together",
    ],
)
def test_what_is_put_off_is_planned(book: Rulebook, line: str) -> None:
    assert role(book, line) == "planned"
