"""Figures as they are typed on a bench: inches of a vacuum, the speed that an engine holds, sizes across."""

from __future__ import annotations

import pytest

from worklog_tui.extract import CONFIDENCE_LINE, read_session
from worklog_tui.model import Machine, Note, Reading
from worklog_tui.rulebook import Rulebook

CRANE = Machine("Quay crane", kind="harbour crane with four-cylinder diesel engine", fuel="diesel", cylinders=4)


def figures(book: Rulebook, *lines: str) -> list[tuple[str, object, str]]:
    """Quantity, value and unit of the readings of the last of some typed lines."""
    notes = [Note(f"n{k}", "s", line, arrival=k) for k, line in enumerate(lines)]
    return [
        (fact.quantity, fact.value, fact.unit)
        for fact in read_session(book, CRANE, notes)
        if isinstance(fact, Reading) and fact.confidence >= CONFIDENCE_LINE and fact.main.note == notes[-1].uid
    ]


@pytest.mark.parametrize(
    ("lines", "read"),
    [
        (("vac 17in at idle",), ("pressure", 17.0, "inHg")),
        (("vacuum gauge on the inlet 20 inches",), ("pressure", 20.0, "inHg")),
        (("vac 17in", "now 12in"), ("pressure", 12.0, "inHg")),
        (("coolant 85 degC", "vac 17in", "now 12in"), ("pressure", 12.0, "inHg")),  # from the last one
        (("vac 17in", "coolant 85 degC", "now 12in"), ("length", 12.0, "in")),
        (("vac pipe 8in",), ("length", 8.0, "in")),  # the pipe is measured, not what is in it
        (("vac 17in", "jib pin 3in"), ("length", 3.0, "in")),
        (("vac 17in", "fuel pressure 15"), ("pressure", 15.0, "psi")),  # whose unit is its own
    ],
)
def test_inches_of_a_vacuum_are_of_mercury(
    book: Rulebook, lines: tuple[str, ...], read: tuple[str, object, str]
) -> None:
    assert figures(book, *lines) == [read]


def test_what_an_engine_holds_among_pressures_is_its_speed(book: Rulebook) -> None:
    lines = ("slew pressure 1300, relief 1550", "eng holds 1480")
    assert figures(book, *lines[:1]) == [("pressure", 1300.0, "psi"), ("pressure", 1550.0, "psi")]
    assert figures(book, *lines) == [("speed", 1480.0, "rpm")]


@pytest.mark.parametrize(
    ("line", "read"),
    [
        ("hoist rope 22 dia", ("length", 22.0, "mm")),
        ("spacer .812 od", ("length", 0.812, "in")),
    ],
)
def test_what_is_told_across_a_thing_is_a_length(book: Rulebook, line: str, read: tuple[str, object, str]) -> None:
    assert figures(book, "hoist pressure 1300", line) == [read]


def test_flats_of_a_nut_are_counted(book: Rulebook) -> None:
    assert figures(book, "gib .009, nut in 3 flats") == [("gap", 0.009, "in")]
