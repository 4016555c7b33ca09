"""Shop sums: what each gives, and how it refuses what it cannot know."""

from __future__ import annotations

import math

import pytest

from worklog_tui.trade import battery, compression, conversions, ignition, machines
from worklog_tui.trade.threads import all_threads, candidates, look_alikes, thread
from worklog_tui.trade.torque import torque


@pytest.mark.parametrize(
    ("written", "series", "size"),
    [("10-32", "UNF", "10"), ("1/4-20", "UNC", "1/4"), ("M8x1.25", "M", "8"), ("M8", "M", "8"),
     ("1/4 BSW", "BSW", "1/4"), ("2BA", "BA", "2"), ("G1/2", "BSP", "1/2"), ("1/4-18 NPT", "NPT", "1/4"),
     ("5/16-24 UNF", "UNF", "5/16")],
)  # fmt: skip
def test_a_designation_names_its_thread(written: str, series: str, size: str) -> None:
    found = thread(written)
    assert (found.series, found.size) == (series, size)


@pytest.mark.parametrize("written", ["11-33", "M8x1.3", "1/4-21", "6 apples", ""])
def test_what_no_table_holds_is_refused(written: str) -> None:
    with pytest.raises(ValueError, match="no thread"):
        thread(written)


def test_every_designation_is_read_back() -> None:
    for one in all_threads():
        assert thread(one.designation) == one


def test_a_measured_bolt_is_found_by_diameter_and_pitch() -> None:
    found = candidates(7.87, 1.25)
    assert [t.designation for t in found] == ["M8x1.25"]
    quarter = {t.designation for t in candidates(6.25, 25.4 / 20)}
    assert quarter == {"1/4-20 UNC", "1/4 BSW"}


def test_without_a_pitch_all_of_that_size_stay_possible() -> None:
    assert {"UNC", "UNF", "BSW", "BSF"} <= {t.series for t in candidates(6.25)}


def test_look_alikes_are_named_with_what_tells_them_apart() -> None:
    told = {other.designation: why for other, why in look_alikes(thread("1/4-20"))}
    assert told["1/4 BSW"] == "the same pitch, but 55 degrees against 60"
    assert "10-32 UNF" in {other.designation for other, _ in look_alikes(thread("M5"))}
    assert "5/16-18 UNC" in {other.designation for other, _ in look_alikes(thread("M8"))}


def test_torque_refuses_an_unknown_grade_and_a_size_beyond_it() -> None:
    with pytest.raises(ValueError, match="no grade"):
        torque(thread("M8"), "5")
    with pytest.raises(ValueError, match="no one proof stress"):
        torque(thread("7/8-9"), "2")
    assert torque(thread("M8"), "8.8", oiled=True) == pytest.approx(0.75 * torque(thread("M8"), "8.8"))


def test_compression_is_judged_by_the_best_cylinder_or_by_the_handbook() -> None:
    grades = {name: v.grade for name, v in compression.compared({"1": 100, "2": 74, "3": 60}).items()}
    assert grades == {"1": "sound", "2": "marginal", "3": "bad"}
    assert compression.compared({"1": 60}, reference=120)["1"].grade == "bad"
    assert compression.compared({}) == {}


def test_oil_in_the_cylinder_tells_rings_from_valves() -> None:
    assert compression.wet_test(60, 95) == "rings or bore"
    assert compression.wet_test(60, 62) == "valves or gasket"
    assert compression.wet_test(60, 62, neighbours_low=True) == "gasket between the two"


def test_altitude_is_refused_where_the_formula_does_not_hold() -> None:
    with pytest.raises(ValueError, match="standard formula"):
        compression.pressure_at(20_000)


def test_a_battery_is_read_by_volts_and_by_density() -> None:
    assert battery.charge_by_volts(6.225, nominal=6) == pytest.approx(battery.charge_by_volts(12.45))
    assert battery.charge_by_volts(13.5) == 100
    assert battery.failing_cells([1.225, 1.220, 1.150, 1.230]) == [3]
    assert not battery.cranks_well(9.0)
    assert battery.cranks_well(4.9, nominal=6)


def test_a_volt_drop_gives_the_resistance_only_with_a_current() -> None:
    assert battery.resistance_of(0.1, 150) == pytest.approx(0.00067, abs=1e-5)
    with pytest.raises(ValueError, match="no current"):
        battery.resistance_of(0.1, 0)
    assert battery.allowed_drop(["cable 3 to 6 ft", "solenoid switch", "joint"], nominal=6) == pytest.approx(0.2)


def test_dwell_and_arc_turn_into_one_another() -> None:
    assert ignition.dwell_percent(54, 4) == pytest.approx(60)
    assert ignition.degrees_of(ignition.arc(300, 12), 300) == pytest.approx(12)
    assert ignition.firing_interval(4) == 180
    assert ignition.shares_stroke([1, 5, 3, 6, 2, 4], 1) == 6
    assert ignition.shares_stroke([1, 2, 3], 1) is None


def test_insulation_halves_with_ten_degrees() -> None:
    assert machines.insulation_at_40(20, 50) == pytest.approx(40)
    assert machines.insulation_at_40(20, 40) == 20
    assert machines.least_insulation(230, old=True) == pytest.approx(1.23)


def test_conversions_refuse_another_kind() -> None:
    assert math.isclose(conversions.convert(1, "bar", "psi"), 14.5038, rel_tol=1e-4)
    with pytest.raises(ValueError, match="measures"):
        conversions.convert(1, "bar", "mm")
