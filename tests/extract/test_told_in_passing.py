"""What the words around a figure tell of it: whose it is, whether it is still owed, with what it was taken."""

from __future__ import annotations

import pytest

from worklog_tui.extract.reader import CONFIDENCE_LINE, read_session
from worklog_tui.model import Machine, Note, Reading
from worklog_tui.rulebook import Rulebook

PUMP = Machine("Fire pump", kind="trailer pump with a twin-cylinder petrol engine", fuel="petrol", cylinders=2)
CHURN = Machine("Churn", kind="electric butter churn", fuel="none")


def readings(book: Rulebook, *said: str, of: Machine = PUMP, typed: bool = False) -> list[Reading]:
    track = "typed" if typed else "captions"
    notes = [Note(f"n{k}", "s", words, track=track, arrival=k) for k, words in enumerate(said)]
    return [f for f in read_session(book, of, notes) if isinstance(f, Reading) and f.confidence >= CONFIDENCE_LINE]


@pytest.mark.parametrize(
    ("said", "subject"),
    [
        ("exhaust two's gone to nine thou", "cylinder 2 exhaust valve"),
        ("inlet two is ten thou", "cylinder 2 inlet valve"),
        ("inlet two thou", "inlet valve"),
    ],
)
def test_a_valve_may_have_its_cylinder_behind_it(book: Rulebook, said: str, subject: str) -> None:
    assert [r.subject for r in readings(book, "Tappets, feeler gauge.", said)] == [subject]


def test_an_end_with_its_verb_is_that_end(book: Rulebook) -> None:
    found = readings(book, "Compression again. Front's ninety now, back's eighty-four.")
    assert [r.subject for r in found] == ["front cylinder", "back cylinder"]


@pytest.mark.parametrize(
    ("said", "role"),
    [
        ("the head nuts have to be gone over hot, a hundred and ten foot pounds", "planned"),
        ("the head nuts were gone over hot, a hundred and ten foot pounds", "set"),
    ],
)
def test_what_is_still_to_be_pulled_up_is_planned(book: Rulebook, said: str, role: str) -> None:
    assert [r.role for r in readings(book, said)] == [role]


def test_a_figure_that_ends_a_line_is_not_of_the_part_that_begins_the_next(book: Rulebook) -> None:
    said = ("charging thirteen nine with the lamps on thirteen four", "suction hose has gone hard")
    assert not any("hose" in r.subject for r in readings(book, *said))


def test_what_is_found_behind_the_plate_is_measured(book: Rulebook) -> None:
    found = readings(book, "max speed's fifteen hundred on the plate and it went to seventeen fifty")
    assert [(r.value, r.role) for r in found] == [(1500, "rated"), (1750, "measured")]


def test_fluids_told_before_their_amount(book: Rulebook) -> None:
    found = readings(book, "Fresh water in her, fourteen litres, five of that's antifreeze.")
    assert [(r.subject, r.value, r.role) for r in found] == [("water", 14, "set"), ("antifreeze", 5, "set")]
    assert readings(book, "Fresh oil in the sump.", "Three and a half litres of it.")[0].role == "set"
    assert readings(book, "it's had a pint of thirty grade")[0].role == "set"


def test_turns_that_were_counted_were_found(book: Rulebook) -> None:
    assert readings(book, "Mixture screw. Count it in. One and a half turns.")[-1].role == "measured"


def test_a_pressure_is_of_no_revs(book: Rulebook) -> None:
    found = readings(book, "oil pressure fifty two hot at full revs thirty at tickover")
    assert {r.subject for r in found} == {"oil pressure"}


def test_the_draw_of_a_driven_machine_is_its_motors(book: Rulebook) -> None:
    assert readings(book, "amps 3.7", of=CHURN, typed=True)[0].subject == "motor"


def test_give_of_a_belt_is_no_size_of_it(book: Rulebook) -> None:
    assert readings(book, "fan belt half inch of give")[0].role == "measured"


def test_figures_that_count_are_no_lengths(book: Rulebook) -> None:
    assert readings(book, "New packing, four rings.") == []
    assert readings(book, "grease nipples, and two of them eighth gas") == []
