"""Numbers without a unit, as they are said in a shop, and what tells what they are."""

from __future__ import annotations

import pytest

from worklog_tui import places
from worklog_tui.extract import read_session
from worklog_tui.model import Machine, Note, Reading
from worklog_tui.rulebook import load

BOOK = load([places.grammars()], places.cache())
ENGINE = Machine("Pond pump", kind="four-cylinder petrol engine", fuel="petrol", ignition="battery", cylinders=4)
Expected = tuple[str, float | tuple[float, float], str]


def readings_of(*lines: str, typed: bool = False) -> list[Expected]:
    """Quantity, value and unit of what is read in lines that follow each other."""
    track = "typed" if typed else "captions"
    notes = [Note(f"n{n}", "s", line, track=track, arrival=n) for n, line in enumerate(lines)]
    facts = [f for f in read_session(BOOK, ENGINE, notes) if isinstance(f, Reading) and f.confidence >= 0.5]
    return [(f.quantity, f.value, f.unit) for f in facts if not isinstance(f.value, str)]


SAID: dict[str, tuple[str, Expected]] = {
    "parts of an inch are divided so finely, nothing else": (
        "Lining of the left shoe is an eighth, the right shoe lining is, oh, a sixteenth.", ("length", 0.0625, "in")),
    "a float that sits low, in shorthand": ("float sits 3/32 low", ("length", 0.09375, "in")),
    "a screw is out by eighths of a turn": ("damper screws: rh 2 turns out, lh 1/4 out", ("turns", 0.25, "turn")),
    "the needles of a diaphragm carburettor by their letters": ("L 1 1/8 out now", ("turns", 1.125, "turn")),
    "what went in, of the fluid that is talked of": (
        "Engine oil changed. One point eight in, and the old lot was black.", ("volume", 1.8, "L")),
    "a share of what went in": ("Fresh water in her, fourteen litres, five of that's antifreeze.", ("volume", 5, "L")),
    "drops in a minute": ("The gland's dripping, what, twenty a minute.", ("leakage", 20, "drops/min")),
    "what every bolt was pulled to": (
        "Wheel nuts, because one was finger tight. Sixty-five on all eight.", ("torque", 65, "ft_lb")),
    "how fast a motor runs on one of its settings": (
        "The motor runs 1420 on slow and a good deal more on fast.", ("speed", 1420, "rpm")),
    "and on another": ("Runs 1420 on slow and 2860 on fast.", ("speed", 2860, "rpm")),
    "the speed on a motor plate stands bare behind the amps": (
        "plate spindle motor 1.5kW 400V 3.4A 2870", ("speed", 2870, "rpm")),
    "what it should be, beside what it was": (
        "End float on the spindle. Six thou. Should be one to two, the leaflet says.", ("gap", (0.001, 0.002), "in")),
    "seconds that a book gives": ("Nine seconds to run up. The book gives four.", ("duration", 4, "s")),
    "what it is, beside what it should be": (
        "Tyres. Left should be thirty-five, she's eleven.", ("pressure", 11, "psi")),
    "hundreds that are said alone": (
        "Tacho says nineteen hundred revs and it's supposed to sit at twenty four", ("speed", 2400, "rpm")),
    "a decimal that ends in one, at the battery": (
        "Fast idle, and I've got twelve one at the battery.", ("voltage", 12.1, "V")),
    "a decimal that ends in one, while it cranks": (
        "battery's twelve six just sitting, ten one while it's cranking", ("voltage", 10.1, "V")),
    "a small number read off an instrument": (
        "timing light says four before and it's supposed to be twelve", ("angle", 4, "deg")),
    "megohms of an insulation test": ("insul 500V: spindle motor 85M, pump motor 60M", ("resistance", 60, "Mohm")),
    "by the camera": ("And it dies. Forty-two seconds by the camera.", ("duration", 42, "s")),
}  # fmt: skip


@pytest.mark.parametrize("custom", SAID)
def test_a_bare_figure_is_told_by_what_stands_around_it(custom: str) -> None:
    line, expected = SAID[custom]
    assert expected in readings_of(line, typed="shorthand" in custom or "letters" in custom)


def test_a_wait_came_to_more_than_was_meant() -> None:
    told = readings_of("Carb's in the dip, twenty minutes.", "okay that was more like twenty five")
    assert ("duration", 25, "min") in told


def test_millimetres_where_nothing_else_was_told() -> None:
    assert ("length", 0.004, "mm") in readings_of("spindle end float .011 mm", "run-out in taper .004", typed=True)


def test_a_gauge_that_climbs_has_one_reading() -> None:
    read = readings_of("Compression, throttle wide. Number one. Seventy, seventy-four, seventy-six. It stays there.")
    assert [r for r in read if r[0] == "compression"] == [("compression", 76, "psi")]


@pytest.mark.parametrize(
    "line",
    [
        "Two of those are mine, the other is the landlord's.",
        "That's twelve, and the boy is eleven next week.",
        "There's eleven of us at the table and three of those eat no meat.",
        "A sixteenth of what it cost new.",
        "That's a fifteen sixteenths socket if you are following along.",
        "Drilled it out with 1/8.",
        "Ordered ten needles, the 7 gauge ones.",
        "Earthed it with 18 gauge wire.",
        "We ran 500 sheets through it.",
    ],
)
def test_what_only_counts_or_compares_is_no_reading(line: str) -> None:
    assert readings_of(line) == []


def test_figures_that_follow_each_other_are_counted() -> None:
    assert readings_of("Gap of the brush. Switch on, five, six, seven, it sparks a little there.") == []


def test_the_book_is_set_beside_what_was_told_just_now() -> None:
    told = readings_of("ohms of the winding 11.4", "Hydraulic oil drained, 38 litres. Book 45.", typed=True)
    assert ("volume", 45, "L") in told


def test_cranked_against_a_gauge_it_is_compression() -> None:
    told = readings_of("Plug gap, twenty-two thou.", "Throttle wide, and I swing the handle. Number one. Seventy-six.")
    assert ("compression", 76, "psi") in told


def test_an_injector_opens_at_a_pressure() -> None:
    assert ("pressure", 1750, "psi") in readings_of("Injectors next.", "number one opens at seventeen fifty, nice fog")


def test_cylinders_that_read_one_more_each_are_no_counting() -> None:
    told = readings_of("Compression test, all four.", "Eighty-eight, eighty-nine, ninety.")
    assert [value for quantity, value, _ in told if quantity == "compression"] == [88, 89, 90]
