"""Figures without a part of their own: what a work came to, and what was measured at a mere place of a part."""

from __future__ import annotations

import pytest

from worklog_tui.extract.reader import CONFIDENCE_LINE, read_session
from worklog_tui.model import Machine, Note, Reading
from worklog_tui.rulebook import Rulebook

PRESS = Machine("Cider press", kind="power press with a twin-cylinder diesel engine", fuel="diesel", cylinders=2)


def readings(book: Rulebook, *said: str, typed: bool = False) -> list[Reading]:
    track = "typed" if typed else "captions"
    notes = [Note(f"n{k}", "s", words, track=track, arrival=k) for k, words in enumerate(said)]
    facts = read_session(book, PRESS, notes)
    return [f for f in facts if isinstance(f, Reading) and f.confidence >= CONFIDENCE_LINE]


def subjects(found: list[Reading]) -> list[tuple[str, object]]:
    return [(r.subject, r.value) for r in found]


def test_what_came_of_turning_a_nut_is_of_what_was_measured_before(book: Rulebook) -> None:
    said = (
        "The clutch lever goes over with a pull of eleven kilos, it should be sixteen.",
        "Two turns on the band nut and it's sixteen.",
    )
    assert subjects(readings(book, *said))[-1] == ("clutch lever", 16)


def test_two_figures_are_told_in_the_order_of_the_two_before(book: Rulebook) -> None:
    said = (
        "It cuts out at 120 psi and in at 85.",
        "Half a turn on the range nut and it is now 125 and 95 psi.",
    )
    assert subjects(readings(book, *said)) == [
        ("cut-out", 120), ("cut-in", 85), ("range nut", 0.5), ("cut-out", 125), ("cut-in", 95),
    ]  # fmt: skip


def test_a_part_named_with_the_figure_keeps_it(book: Rulebook) -> None:
    said = ("Oil pressure is 30 psi.", "Cleaned the strainer, now the fuel pump gives 4 psi.")
    assert subjects(readings(book, *said))[-1] == ("fuel pump", 4)


@pytest.mark.parametrize(
    ("said", "subject"),
    [
        (("Bottom hose is soft.", "Inch and a quarter bore."), "bottom hose bore"),
        (("Drive belt tightened.", "Deflection's five eighths of an inch."), "drive belt deflection"),
        (("Shaft coupling. Feelers round the faces, four thou.",), "shaft coupling faces"),
    ],
)
def test_a_mere_place_is_told_with_the_part_that_has_it(book: Rulebook, said: tuple[str, ...], subject: str) -> None:
    assert [r.subject.lower() for r in readings(book, *said)] == [subject]


def test_a_bore_behind_what_belongs_to_the_engine_is_its_own(book: Rulebook) -> None:
    found = readings(book, "Piston's clean.", "Bore is worn six thou.")
    assert not found[0].subject.startswith("piston")


def test_a_place_is_told_as_it_was_told_in_full(book: Rulebook) -> None:
    said = ("Motor terminals, 231 volts.", "Cleaned the drum.", "Terminals now 228 volts.")
    assert readings(book, *said)[-1].subject.lower() == "motor terminals"


def test_engine_oil_holds_no_forty_bar(book: Rulebook) -> None:
    found = readings(book, "Injector one pops at a hundred and sixty bar.", "oil pressure forty five from cold")
    assert [(r.value, r.unit) for r in found] == [(160, "bar"), (45, "psi")]


@pytest.mark.parametrize(
    ("said", "last"),
    [
        ("Points are eighteen and it's meant to be twelve. Filed and reset to twelve.", (0.012, "set")),
        ("Oil pressure is forty. Hot, it's twelve.", (12, "measured")),
        ("The thermostat is marked eighty two.", (82, "rated")),
        ("Book says thirty-five for the plugs.  Closed them up to thirty-five.", (0.035, "set")),
    ],
)
def test_figures_without_a_unit_that_the_words_around_them_tell(
    book: Rulebook, said: str, last: tuple[float, str]
) -> None:
    found = readings(book, said)[-1]
    assert (found.value, found.role) == last


def test_with_is_no_watt(book: Rulebook) -> None:
    found = readings(book, "motor draws 3.9 no load, 4.8 w/ the fan on", typed=True)
    assert [(r.value, r.unit) for r in found] == [(3.9, "A"), (4.8, "A")]


def test_where_a_tyre_stood_is_no_way_of_taking_anything(book: Rulebook) -> None:
    found = readings(book, "hydraulic oil wants four litres and the tyres were at eighteen psi")
    assert [r.condition for r in found if r.quantity == "volume"] == [""]
