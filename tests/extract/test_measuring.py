"""Bare numbers are in the measures that somebody works in: what was said last, the machine card, metric or inch."""

from __future__ import annotations

import pytest

from worklog_tui import places
from worklog_tui.extract import read_session, read_specified
from worklog_tui.model import Machine, Note, Reading
from worklog_tui.rulebook import load

BOOK = load([places.grammars()], places.cache())


def machine(**specified: str) -> Machine:
    values = tuple(read_specified(BOOK, key, text) for key, text in specified.items())
    return Machine("Dough mixer", kind="electric motor", fuel="none", specified=values)


def lengths(words: str, of: Machine) -> list[tuple[float, str]]:
    notes = [Note("n0", "s", words, track="typed")]
    facts = [f for f in read_session(BOOK, of, notes) if isinstance(f, Reading)]
    return [(f.value, f.unit) for f in facts if f.quantity in ("length", "gap") and isinstance(f.value, float)]


METRIC, INCH, BARE = machine(belt_deflection="10 mm"), machine(end_float="0.004 in"), machine()


def test_a_diameter_on_a_metric_machine_is_in_millimetres() -> None:
    assert lengths("shaft diameter 34.98", METRIC) == [(34.98, "mm")]


def test_what_was_said_last_comes_before_the_card() -> None:
    assert lengths("the lip is 2 mm. run-out of the shaft .15", INCH)[-1] == (0.15, "mm")


def test_sixteenths_are_of_an_inch_whatever_the_machine() -> None:
    assert lengths("float level 3/16", METRIC) == [(0.1875, "in")]


def test_three_figures_behind_a_bare_point_are_thousandths_of_an_inch() -> None:
    assert lengths("run-out of the shaft .022", METRIC) == [(0.022, "in")]


@pytest.mark.parametrize("words", ["shaft 220 then 400 grit", "the pulley came off at 3"])
def test_a_number_beside_a_thing_alone_is_no_length(words: str) -> None:
    assert lengths(words, METRIC) == []


def test_a_tyre_on_a_metric_machine_is_pumped_to_bar() -> None:
    of = machine(oil_pressure="4 bar")
    facts = read_session(BOOK, of, [Note("n0", "s", "tyre pressure 2.1", track="typed")])
    assert [(f.value, f.unit) for f in facts if isinstance(f, Reading)] == [(2.1, "bar")]
