"""How a reading was taken: what was said of the machine holds until something else is; each figure keeps its own."""

from __future__ import annotations

import pytest

from worklog_tui.extract.reader import CONFIDENCE_LINE, read_session
from worklog_tui.model import Finding, Machine, Note, Reading
from worklog_tui.rulebook import Rulebook

ENGINE = Machine("test engine", kind="two-cylinder petrol engine", fuel="petrol", ignition="battery", cylinders=2)
MOTOR = Machine("test lathe", kind="lathe with an electric motor", fuel="none", ignition="none")


def taken(book: Rulebook, *said: str, machine: Machine = ENGINE) -> list[tuple[object, str]]:
    """The values that are read of notes, each with its condition."""
    notes = [Note(f"n{k}", "s", words, track="captions", arrival=k) for k, words in enumerate(said)]
    facts = [f for f in read_session(book, machine, notes) if isinstance(f, Reading)]
    return [(f.value, f.condition) for f in facts if f.confidence >= CONFIDENCE_LINE]


def test_each_figure_keeps_the_state_behind_it(book: Rulebook) -> None:
    assert taken(book, "Battery is 12.5 volts at rest, 9.8 volts cranking.") == [(12.5, "at rest"), (9.8, "cranking")]


def test_a_state_holds_for_the_next_figures_of_its_kind(book: Rulebook) -> None:
    found = taken(book, "Valve clearances, engine cold.", "Inlet is six thou.", "Exhaust is eight thou.")
    assert found == [(0.006, "cold"), (0.008, "cold")]


def test_a_new_state_takes_the_place_of_the_old_one(book: Rulebook) -> None:
    said = "Engine running, fast idle.", "Battery is 14.2 volts.", "Shut it down.", "Battery is 12.6 volts."
    found = taken(book, *said)
    assert found == [(14.2, "at fast idle"), (12.6, "at rest")]


def test_a_state_is_told_only_of_what_it_matters_for(book: Rulebook) -> None:
    found = taken(book, "The engine is cold.", "The points gap is fifteen thou.", "Fan belt runs 12 mm slack.")
    assert [how for _, how in found] == ["", ""]


def test_a_running_engine_is_cold_no_longer(book: Rulebook) -> None:
    found = taken(book, "Stone cold, oil pressure is 50 psi.", "She's running.", "Oil pressure is 45 psi.")
    assert found == [(50.0, "stone cold"), (45.0, "running")]


def test_oil_in_the_bores_makes_the_next_compressions_wet(book: Rulebook) -> None:
    said = "Compression test, dry first.", "Number one, 90. Number two, 60.", "Squirt of oil down two. Number two, 85."
    found = taken(book, *said)
    assert [how for _, how in found] == ["dry", "dry", "with oil"]


def test_the_volts_of_the_tester_are_told_of_insulation_only(book: Rulebook) -> None:
    said = "Insulation test at 500 volts.", "Windings to frame, 40 megohms.", "Main winding is 3.2 ohms."
    assert taken(book, *said, machine=MOTOR)[1:] == [(40.0, "at 500 V"), (3.2, "")]


def test_the_first_figure_of_a_wait_is_the_one_at_its_start(book: Rulebook) -> None:
    found = taken(book, "Tank pressure fell from 90 psi to 70 psi in five minutes.")
    assert found[:2] == [(90.0, "at the start"), (70.0, "after five minutes")]


def test_a_time_that_was_waited_is_of_the_temperatures_behind_it(book: Rulebook) -> None:
    found = taken(book, "Ran it for half an hour.", "Front bearing is 48 degrees C.", machine=MOTOR)
    assert found[-1] == (48.0, "after half an hour")


def test_how_figures_were_taken_may_be_told_behind_them(book: Rulebook) -> None:
    assert taken(book, "Motor takes 2.4 amps. That's no load.", machine=MOTOR) == [(2.4, "no load")]


def test_they_may_be_told_so_with_what_is_thought_of_them(book: Rulebook) -> None:
    found = taken(book, "Coil primary, 1.9 ohms. Nothing amiss with that hot.", machine=ENGINE)
    assert found == [(1.9, "hot")]


@pytest.mark.parametrize(
    ("said", "how"),
    [
        ("The feeder showed 228 volts at rest and 201 volts as it starts.", "starting"),
        ("Front bearing temperature 41 C aft 30 min.", "after 30 min"),
        ("Battery, 12.5 volts, ignition off.", "at rest"),
    ],
)
def test_when_it_was_taken_is_told(book: Rulebook, said: str, how: str) -> None:
    assert how in [h for _, h in taken(book, said)]


@pytest.mark.parametrize(
    ("said", "how"),
    [
        ("The filter takes 40 seconds with the element in.", "with the element in"),
        ("The current is 3.1 amps with the guard closed.", "with the guard closed"),
        ("Run-out is two thou at the nose.", "at the nose"),
        ("Timing is ten degrees before top dead centre.", "BTDC"),
        ("The liner is 3 mm thick.", "thick"),
    ],
)
def test_what_was_so_and_where_is_told(book: Rulebook, said: str, how: str) -> None:
    assert how in taken(book, said)[0][1]


def test_what_was_used_is_no_condition(book: Rulebook) -> None:
    assert taken(book, "Measured the gap with the feeler, 0.4 mm.")[0][1] == ""


@pytest.mark.parametrize(
    ("said", "how"),
    [
        ("The belt should be no more than 12 mm slack.", "maximum"),
        ("Book says 350 psi is as low as you can go.", "minimum"),
        ("The book says 40 psi minimum hot.", "minimum, hot"),
    ],
)
def test_a_figure_of_the_book_tells_which_limit_it_is(book: Rulebook, said: str, how: str) -> None:
    assert [h for _, h in taken(book, said)] == [how]


def test_a_second_figure_after_work_says_after_which(book: Rulebook) -> None:
    found = taken(
        book, "Earth strap resistance is 3.4 ohms.", "Cleaned the earth strap.", "Earth strap resistance is 0.2 ohms."
    )
    assert found == [(3.4, ""), (0.2, "after cleaning")]


def test_the_rounds_of_tightening_are_counted(book: Rulebook) -> None:
    found = taken(book, "Head bolts in three stages, 20 foot pounds, 40 foot pounds, 60 foot pounds.")
    assert found == [(20.0, "first stage"), (40.0, "second stage"), (60.0, "")]


def test_volts_of_a_battery_alone_are_at_rest_and_that_is_filled_in(book: Rulebook) -> None:
    notes = [Note("n0", "s", "Battery is 12.4 volts.", track="captions", arrival=0)]
    (found,) = [f for f in read_session(book, ENGINE, notes) if isinstance(f, Reading)]
    assert found.condition == "at rest"
    assert "condition" in found.filled


@pytest.mark.parametrize(
    ("words", "told"),
    [
        ("comp #2 120, wet 138", [(120.0, ""), (138.0, "wet")]),
        ("comp dry 120, wet 138", [(120.0, "dry"), (138.0, "wet")]),
        ("oil pressure cold 45, hot 20", [(45.0, "cold"), (20.0, "hot")]),
        ("batt 12.3 rest, 13.9 chg", [(12.3, "at rest"), (13.9, "running")]),
    ],
)
def test_a_way_that_leads_to_the_next_figure_is_not_of_the_one_before(
    book: Rulebook, words: str, told: list[tuple[float, str]]
) -> None:
    pump = Machine("Fire pump", "four-cylinder petrol engine", fuel="petrol", ignition="magneto", cylinders=4)
    facts = read_session(book, pump, [Note("n", "s", words, track="live")])
    assert [(f.value, f.condition) for f in facts if isinstance(f, Reading)] == told
    assert not any(isinstance(f, Finding) for f in facts)
