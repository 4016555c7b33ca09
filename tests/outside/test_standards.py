"""Shop sums against published tables, standards and open libraries; each source is named beside its check."""

from __future__ import annotations

import csv
import importlib.util
from fractions import Fraction
from pathlib import Path

import pytest

from worklog_tui.trade import battery, compression, conversions, ignition, machines
from worklog_tui.trade.threads import INCH, all_threads, inches, nearest_drill, thread
from worklog_tui.trade.torque import torque


# ASME B1.1 class tables as published on two reference pages
@pytest.mark.parametrize(
    ("written", "minor"), [("8-32", 0.1302), ("10-24", 0.1449), ("12-24", 0.1709), ("12-28", 0.1773)]
)
def test_minor_diameters_of_numbered_threads(written: str, minor: float) -> None:
    assert thread(written).minor / INCH == pytest.approx(minor, abs=1e-4)


# numbered sizes: 0.060 + 0.013 N in (a page on ANSI B1.1)
@pytest.mark.parametrize(
    ("written", "major"),
    [("4-40", 0.112), ("5-40", 0.125), ("6-32", 0.138), ("8-32", 0.164), ("10-24", 0.190), ("12-24", 0.216)],
)
def test_major_diameters_of_numbered_threads(written: str, major: float) -> None:
    assert thread(written).major / INCH == pytest.approx(major, abs=1e-6)


# tap drills for 75 %: two published tables agree
@pytest.mark.parametrize(
    ("written", "drill"),
    [("4-40", "#43"), ("6-32", "#36"), ("8-32", "#29"), ("10-24", "#25"), ("10-32", "#21"), ("12-24", "#16"),
     ("12-28", "#14"), ("1/4-20", "#7"), ("1/4-28", "#3"), ("5/16-18", "F"), ("3/8-16", "5/16"), ("1/2-13", "27/64")],
)  # fmt: skip
def test_tap_drills(written: str, drill: str) -> None:
    assert nearest_drill(thread(written).tap_drill)[0] == drill


# BS 84: core diameters, formula and table agree
@pytest.mark.parametrize(
    ("written", "core"),
    [("1/4 BSW", 0.1860), ("5/16 BSW", 0.2414), ("3/8 BSW", 0.2950), ("7/16 BSW", 0.3460), ("1/2 BSW", 0.3933),
     ("5/8 BSW", 0.5086), ("3/4 BSW", 0.6219)],
)  # fmt: skip
def test_whitworth_core_diameters(written: str, core: float) -> None:
    assert thread(written).minor / INCH == pytest.approx(core, abs=2e-4)


# BS 93
@pytest.mark.parametrize(
    ("number", "major", "pitch"),
    [(0, 6.0, 1.0), (1, 5.3, 0.9), (2, 4.7, 0.81), (3, 4.1, 0.73), (4, 3.6, 0.66), (5, 3.2, 0.59), (6, 2.8, 0.53),
     (7, 2.5, 0.48), (8, 2.2, 0.43), (9, 1.9, 0.39), (10, 1.7, 0.35)],
)  # fmt: skip
def test_ba_threads(number: int, major: float, pitch: float) -> None:
    found = thread(f"{number}BA")
    assert found.major == pytest.approx(major)
    assert found.pitch == pytest.approx(pitch)


# ISO 261, coarse
@pytest.mark.parametrize(
    ("size", "pitch"),
    [(3, 0.5), (4, 0.7), (5, 0.8), (6, 1), (8, 1.25), (10, 1.5), (12, 1.75), (14, 2), (16, 2), (20, 2.5), (24, 3)],
)
def test_metric_coarse_pitches(size: int, pitch: float) -> None:
    assert thread(f"M{size}").pitch == pytest.approx(pitch)


def _bd_warehouse(name: str) -> list[dict[str, str]]:
    found = importlib.util.find_spec("bd_warehouse")
    if found is None or not found.submodule_search_locations:
        pytest.skip("bd-warehouse is not installed (pip install --no-deps bd-warehouse)")
    path = Path(next(iter(found.submodule_search_locations))) / "data" / f"{name}.csv"
    with path.open(encoding="utf-8-sig") as file:
        return list(csv.DictReader(file))


def test_number_and_letter_drills_against_bd_warehouse() -> None:
    ours = 0
    for row in _bd_warehouse("drill_sizes"):
        name, size = list(row.values())[:2]
        try:
            millimetres = float(Fraction(size)) * INCH
        except ValueError:
            continue
        label = name if name.isalpha() and len(name) == 1 else f"#{name.lstrip('#')}"
        if not ((label.startswith("#") and label[1:].isdigit() and 1 <= int(label[1:]) <= 54) or len(label) == 1):
            continue
        drill, diameter = nearest_drill(millimetres)
        assert diameter == pytest.approx(millimetres, abs=0.02), (label, drill)
        ours += 1
    assert ours >= 60


def test_pipe_threads_against_bd_warehouse() -> None:
    checked = 0
    for row in _bd_warehouse("iso_228_1"):
        values = list(row.values())
        size = values[0].lstrip("G").strip().replace('"', "")
        ours = [t for t in all_threads() if t.series == "BSP" and t.size == size]
        numbers = {round(float(v), 3) for v in values[1:] if v.replace(".", "", 1).isdigit()}
        if ours:
            assert round(ours[0].major, 3) in numbers
            checked += 1
    assert checked >= 6


def test_pipe_outside_diameters_against_fluids() -> None:
    fluids = pytest.importorskip("fluids", reason="fluids is not installed")
    for one in all_threads():
        if one.series == "NPT":
            _, _, outside, _ = fluids.nearest_pipe(NPS=inches(one.size))
            assert one.major == pytest.approx(outside * 1000, abs=0.1), one.size


# SAE J429 torque tables, dry, 75 % of proof (two published tables, the same formula); lbf ft
@pytest.mark.parametrize(
    ("written", "grades"),
    [("1/4-20", (5.5, 8.4, 11.9)), ("5/16-18", (11.3, 17.4, 24.6)), ("3/8-16", (20, 31, 44)), ("7/16-14", (32, 49, 70)),
     ("1/2-13", (49, 75, 106)), ("5/8-11", (97, 150, 212)), ("3/4-10", (172, 267, 376))],
)  # fmt: skip
def test_torque_of_inch_bolts(written: str, grades: tuple[float, float, float]) -> None:
    for grade, expected in zip("258", grades, strict=True):
        assert torque(thread(written), grade) / 1.355818 == pytest.approx(expected, rel=0.02)


# ISO 898-1 proof stresses, from memory: these values check the formula
@pytest.mark.parametrize(
    ("written", "grades"),
    [("M6", (4, 11, 15)), ("M8", (10, 25, 36)), ("M10", (20, 50, 72)), ("M12", (34, 88, 126)), ("M16", (85, 218, 312))],
)
def test_torque_of_metric_bolts(written: str, grades: tuple[float, float, float]) -> None:
    for grade, expected in zip(("4.6", "8.8", "10.9"), grades, strict=True):
        assert torque(thread(written), grade) == pytest.approx(expected, abs=0.6)


# ISO 2533 pressure ratios by thousands of feet
@pytest.mark.parametrize(
    ("feet", "ratio"),
    [(1000, 0.9644), (2000, 0.9298), (3000, 0.8962), (4000, 0.8637), (5000, 0.8320), (6000, 0.8014),
     (8000, 0.7428), (10000, 0.6877)],
)  # fmt: skip
def test_altitude_pressure_ratio(feet: int, ratio: float) -> None:
    assert compression.pressure_ratio(feet * 0.3048) == pytest.approx(ratio, abs=2e-4)


# the compression-factor table of workshop pages is the density ratio
@pytest.mark.parametrize(
    ("feet", "factor"), [(1000, 0.971), (2000, 0.943), (3000, 0.915), (4000, 0.888), (5000, 0.862), (6000, 0.836)]
)
def test_workshop_altitude_factors_are_density_ratios(feet: int, factor: float) -> None:
    assert compression.density_ratio(feet * 0.3048) == pytest.approx(factor, abs=5e-4)


def test_standard_atmosphere_against_fluids() -> None:
    fluids = pytest.importorskip("fluids", reason="fluids is not installed")
    for height in (0, 305, 610, 1524, 3048):
        assert compression.pressure_at(height) == pytest.approx(fluids.ATMOSPHERE_1976(height).P, rel=1e-4)


# theory: gauge = p (r^n - 1), psi
@pytest.mark.parametrize(
    ("exponent", "psi"), [(1.2, (63, 87, 111, 137, 164, 191)), (1.3, (74, 104, 136, 170, 205, 241))]
)
def test_cranking_compression(exponent: float, psi: tuple[int, ...]) -> None:
    for ratio, wanted in zip(range(4, 10), psi, strict=True):
        assert compression.expected(ratio, exponent) / 6894.757 == pytest.approx(wanted, abs=0.6)


# a published table of a rested lead-acid battery
@pytest.mark.parametrize(("percent", "volts", "density"), [(75, 12.45, 1.225), (50, 12.24, 1.190), (25, 12.06, 1.155)])
def test_state_of_charge(percent: float, volts: float, density: float) -> None:
    assert battery.charge_by_volts(volts) == pytest.approx(percent)
    assert battery.charge_by_density(density) == pytest.approx(percent)


def test_density_correction() -> None:
    """0.004 for each 10 °F, that is 0.007 for each 10 °C, added when hotter (published)."""
    assert battery.corrected(1.250, 36.7) == pytest.approx(1.2572)
    assert battery.corrected(1.250, 16.7) == pytest.approx(1.2428)


# common practice: distributor degrees between sparks; flywheel arc = pi D / 360
def test_dwell_and_arc() -> None:
    assert [ignition.full_dwell(n) for n in (4, 6, 8)] == [90, 60, 45]
    assert [round(ignition.arc(d), 2) for d in (300, 400, 500)] == [2.62, 3.49, 4.36]


def test_alternator_frequency() -> None:
    """Poles times revolutions over 120 (common practice)."""
    assert machines.alternator_hertz(2, 3000) == 50
    assert machines.alternator_hertz(4, 1800) == 60


# common practice, computed with pint
@pytest.mark.parametrize(
    ("value", "source", "target", "wanted"),
    [(82, "degC", "degF", 179.6), (71, "degC", "degF", 159.8), (-40, "degC", "degF", -40), (1, "bar", "psi", 14.504),
     (1, "ft_lb", "N*m", 1.3558), (1, "in", "mm", 25.4)],
)  # fmt: skip
def test_conversions(value: float, source: str, target: str, wanted: float) -> None:
    assert conversions.convert(value, source, target) == pytest.approx(wanted, rel=1e-4)


def test_thousandths() -> None:
    for millimetres, thou in ((0.25, 9.84), (0.30, 11.8), (0.38, 15.0), (0.40, 15.7), (0.50, 19.7), (0.80, 31.5)):
        assert conversions.thou(millimetres) == pytest.approx(thou, abs=0.05)


def test_boiling_points_are_known_to_an_open_library() -> None:
    """Water boils at 98.3 °C at 500 m and at 90 °C at 3,000 m: our pressure there, CoolProp's steam tables."""
    props = pytest.importorskip("CoolProp.CoolProp", reason="CoolProp is not installed")
    for height, celsius in ((0, 100.0), (500, 98.3), (1000, 96.7), (2000, 93.3), (3000, 90.0)):
        kelvin = props.PropsSI("T", "P", compression.pressure_at(height), "Q", 0, "Water")
        assert kelvin - 273.15 == pytest.approx(celsius, abs=0.06)
