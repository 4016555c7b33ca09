"""Two numbers in one breath: which one is the book's, which state is whose, what both are of."""

from __future__ import annotations

import pytest

from worklog_tui.extract.reader import CONFIDENCE_LINE, read_session
from worklog_tui.model import Machine, Note, Reading
from worklog_tui.rulebook import Rulebook

PRESS = Machine("test press", kind="hand-fed press with an electric motor", fuel="none", ignition="none")


def readings(book: Rulebook, *said: str) -> list[Reading]:
    notes = [Note(f"n{k}", "s", words, track="captions", arrival=k) for k, words in enumerate(said)]
    return [f for f in read_session(book, PRESS, notes) if isinstance(f, Reading) and f.confidence >= CONFIDENCE_LINE]


@pytest.mark.parametrize(
    "said",
    [
        "The belt deflection is twenty millimetres and it should be twelve.",
        "The belt deflection is twenty millimetres where the book says twelve.",
        "The belt deflection is twenty millimetres, twelve is what they want.",
    ],
)
def test_the_book_speaks_of_the_number_beside_its_word(book: Rulebook, said: str) -> None:
    assert [(r.value, r.role) for r in readings(book, said)] == [(20.0, "measured"), (12.0, "specified")]


def test_where_each_number_tells_its_place_each_keeps_its_own(book: Rulebook) -> None:
    found = readings(book, "The clearance is 0.8 mm at the bottom and 0.9 mm at the top.")
    assert [(r.value, r.condition) for r in found] == [(0.8, "at the bottom"), (0.9, "at the top")]


def test_a_state_told_once_is_of_both(book: Rulebook) -> None:
    found = readings(book, "On no load the motor takes 2.1 amps and 230 volts.")
    assert {r.condition for r in found} == {"no load"}


def test_a_limit_for_new_parts_says_so(book: Rulebook) -> None:
    found = readings(book, "The linings are four millimetres, the book says five millimetres new.")
    assert [r.condition for r in found] == ["", "new"]


@pytest.mark.parametrize(
    "said",
    [
        "The bearing is twelve bore, thirty outside, nine wide.",
        "bearing 12 bore 30 od 9 w",
        "The bearing is 12 bore by 30.",
    ],
)
def test_the_sizes_of_a_bearing_are_told_one_after_the_other(book: Rulebook, said: str) -> None:
    found = readings(book, said)
    assert [(r.condition, r.unit, r.role) for r in found][:2] == [("bore", "mm", "rated"), ("outside", "mm", "rated")]
    assert {r.subject.lower() for r in found} == {"bearing"}


def test_what_a_plate_says_is_of_its_owner_not_of_what_was_talked_of(book: Rulebook) -> None:
    found = readings(book, "The key of the cabinet door is in my pocket.", "Motor plate. 230 volts, 3.6 amps.")
    assert {(r.subject, r.role) for r in found} == {("motor", "rated")}


def test_a_speed_is_of_the_part_that_turns(book: Rulebook) -> None:
    found = readings(book, "The drum turns with 44 revolutions per minute, and it should be 52.")
    assert [(r.subject, r.value, r.role) for r in found] == [("drum", 44.0, "measured"), ("drum", 52.0, "specified")]


def test_what_came_down_by_itself_was_not_set(book: Rulebook) -> None:
    found = readings(book, "The left tyre is down to 4 psi.", "I pumped it up to 25 psi.")
    assert [r.role for r in found] == ["measured", "set"]


def test_after_a_time_the_numbers_are_of_the_test(book: Rulebook) -> None:
    found = readings(book, "Bearing temperatures after twenty minutes. Inner bush, forty-four.")
    assert [(r.quantity, r.value) for r in found][-1] == ("temperature", 44.0)


def test_pounds_on_a_spring_balance_are_a_pull(book: Rulebook) -> None:
    found = readings(book, "Spring balance on the holder. It lets go at forty-six pounds.")
    assert [(r.quantity, r.value, r.unit) for r in found] == [("mass", 46.0, "lb")]


def test_so_many_revolutions_are_those_of_a_minute(book: Rulebook) -> None:
    found = readings(book, "Motor plate, four hundred volts, fourteen forty revolutions.")
    assert [(r.quantity, r.value, r.unit) for r in found][-1] == ("speed", 1440.0, "rpm")
