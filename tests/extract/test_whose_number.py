"""Whose number it is, what it is for, and which numbers measure nothing."""

from __future__ import annotations

import pytest

from worklog_tui.extract.reader import CONFIDENCE_LINE, read_session
from worklog_tui.model import Machine, Note, Reading
from worklog_tui.rulebook import Rulebook

PETROL = Machine("bench engine", kind="single-cylinder petrol engine", fuel="petrol", ignition="magneto", cylinders=1)


def readings(book: Rulebook, *said: str) -> list[Reading]:
    notes = [Note(f"n{k}", "s", words, track="captions", arrival=k) for k, words in enumerate(said)]
    facts = read_session(book, PETROL, notes)
    return [f for f in facts if isinstance(f, Reading) and f.confidence >= CONFIDENCE_LINE]


def told(of: Reading) -> tuple[str, object, str]:
    return of.quantity, of.value, of.unit


@pytest.mark.parametrize(
    ("said", "subject"),
    [
        ("Lever first. Pedal. Two inches and it stops.", "pedal"),
        ("I drained half a pint of water out of the bowl.", "water"),
        ("Timing light on it, eight degrees before.", "ignition timing"),
        ("It ran forty seconds and died.", "engine"),
        ("The jets were in the ultrasonic for twenty minutes.", "ultrasonic"),
    ],
)
def test_a_number_is_of_what_is_talked_of(book: Rulebook, said: str, subject: str) -> None:
    assert subject in [r.subject for r in readings(book, said)]


def test_shorthand_is_spelt_out(book: Rulebook) -> None:
    assert [r.subject for r in readings(book, "frnt brg 34 degrees celsius")] == ["front bearing"]


@pytest.mark.parametrize(
    "said",
    [
        "pass me the seventeen mil spanner",
        "put the meter on the twenty volt range",
        "it's thirty degrees out there today",
        "there are eighteen of them in the box",
        "I rubbed it on a sheet of 600",
        "that is twenty-six to the inch",
    ],
)
def test_what_measures_nothing_is_no_reading(book: Rulebook, said: str) -> None:
    assert readings(book, said) == []


def test_what_is_told_after_an_adjustment_was_set(book: Rulebook) -> None:
    found = readings(book, "The timing is two degrees. It should be six degrees. Twist it a bit. Six degrees.")
    assert [r.role for r in found] == ["measured", "specified", "set"]


def test_a_fluid_that_came_out_is_measured_and_one_that_went_in_is_set(book: Rulebook) -> None:
    found = readings(book, "I drained two litres of oil.", "Then I filled it with three litres of oil.")
    assert [(r.value, r.role) for r in found] == [(2.0, "measured"), (3.0, "set")]


def test_of_a_number_read_wrong_and_read_again_only_the_last_counts(book: Rulebook) -> None:
    found = readings(book, "Plug gap is twenty thou. No, hang on, wrong blade. Plug gap is thirty thou.")
    assert [r.value for r in found] == [0.03]


def test_a_bare_number_is_what_its_thing_was_measured_in_before(book: Rulebook) -> None:
    said = [
        "The relief valve lifts at 2,400 psi.", "Now the engine runs at 1,500 rpm.", "Kettle.", "Who wants a biscuit?",
        "Nobody.", "Relief valve again, a turn in. Twenty-three hundred.",
    ]  # fmt: skip
    assert told(readings(book, *said)[-1]) == ("pressure", 2300.0, "psi")


@pytest.mark.parametrize(
    ("said", "roles"),
    [
        ("Brake coil, one ninety volts it wants, and I'm getting eighty-six volts.", ["specified", "measured"]),
        ("The lining is two millimetres and a new one is five millimetres.", ["measured", "specified"]),
        ("The plate says four hundred volts.", ["rated"]),
        ("Brake disc 2.35 mm. New 2.40 mm, limit 2.20 mm.", ["measured", "specified", "specified"]),
        ("Piston play is 0.21 mm, reject over 0.15 mm.", ["measured", "specified"]),
        ("The battery is at eleven volts and cranking it goes down to nine volts.", ["measured", "measured"]),
    ],
)
def test_what_a_number_is_for(book: Rulebook, said: str, roles: list[str]) -> None:
    assert [r.role for r in readings(book, said)] == roles


@pytest.mark.parametrize(
    ("said", "subjects"),
    [
        ("tyres lf 12 psi, rf 14 psi", ["left front tyre", "right front tyre"]),
        ("tyres L 12 psi R 14 psi", ["left tyre", "right tyre"]),
        ("vlvs: in .05 ex .25", ["inlet valves", "exhaust valves"]),
        ("batt 12.4 volts", ["battery"]),
    ],
)
def test_typed_sides_and_parts_are_spelt_out(book: Rulebook, said: str, subjects: list[str]) -> None:
    facts = read_session(book, PETROL, [Note("n0", "s", said, track="typed")])
    assert [f.subject for f in facts if isinstance(f, Reading)] == subjects


def test_a_price_is_no_reading(book: Rulebook) -> None:
    assert readings(book, "Compression test, ring set is £46.") == []


@pytest.mark.parametrize(
    ("said", "wanted"),
    [
        ("Hydrometer. One two fifty, one two forty.", [("density", 1.25, "sg"), ("density", 1.24, "sg")]),
        ("Two eighty on the head.", [("temperature", 280.0, "degF")]),
        ("The coil is at twenty-two k and that's too high.", [("resistance", 22.0, "kohm")]),
        ("Bucket pin 37.2, bush 40.4.", [("length", 37.2, "mm"), ("length", 40.4, "mm")]),
        ("Head nuts 12 then 24 Nm.", [("torque", 12.0, "N*m"), ("torque", 24.0, "N*m")]),
    ],
)
def test_what_a_bare_number_is(book: Rulebook, said: str, wanted: list[tuple[str, float, str]]) -> None:
    assert [told(r) for r in readings(book, said)] == wanted


HOIST = Machine("hoist", kind="electric chain hoist with a brake", fuel="none", ignition="none")
COMPRESSOR = Machine("air", kind="single-stage air compressor", fuel="none", ignition="none")


@pytest.mark.parametrize(
    ("of", "said", "subject"),
    [
        (HOIST, "The plate says three amps.", "motor"),
        (HOIST, "The plate says five hundred kilos.", "hoist"),
        (HOIST, "It measures four hundred volts.", "supply"),
        (COMPRESSOR, "The tyres are at two bar.", "tyres"),
        (COMPRESSOR, "And it stops at eight bar.", "tank"),
        (PETROL, "Temperature's sat at eighty degrees.", "engine"),
    ],
)
def test_what_nothing_was_named_for_is_of_the_machine(book: Rulebook, of: Machine, said: str, subject: str) -> None:
    facts = read_session(book, of, [Note("n0", "s", said, track="captions")])
    assert [f.subject for f in facts if isinstance(f, Reading)] == [subject]


def test_a_part_that_only_its_last_word_places_is_measured_as_others_of_that_word(book: Rulebook) -> None:
    """A roller is what has a size; nothing is measured on the bobbin that was named after it."""
    found = readings(book, "The take-up roller is next.", "There is fluff all over the bobbin.", "It's nine thou.")
    assert [r.subject for r in found if r.quantity in ("gap", "length")] == ["take-up roller"]


@pytest.mark.parametrize(
    ("measured", "beside", "wanted", "subject"),
    [
        (
            "The brake lining is four millimetres.",
            "The drum has a lip on it.",
            "The book says two millimetres.",
            "brake lining",
        ),
        (
            "The drive belt has twelve millimetres of slack.",
            "The pulley is scored.",
            "They want eight millimetres.",
            "drive belt",
        ),
    ],
)
def test_what_a_figure_should_be_is_of_what_was_measured_just_before(
    book: Rulebook, measured: str, beside: str, wanted: str, subject: str
) -> None:
    """Whatever was named in passing between the two."""
    assert [r.subject for r in readings(book, measured, beside, wanted)] == [subject, subject]


def test_a_figure_of_another_size_is_of_something_else(book: Rulebook) -> None:
    found = readings(
        book, "The drive belt has two millimetres of slack.", "The pulley is scored.", "Ninety millimetres."
    )
    assert [r.subject for r in found] == ["drive belt", "pulley"]


def test_a_torque_is_of_the_next_fastening_not_of_the_last(book: Rulebook) -> None:
    found = readings(book, "The hub nut got ninety newton metres.", "Sump bolts next.", "Seventy newton metres.")
    assert [r.subject for r in found] == ["hub nut", "sump bolts"]
