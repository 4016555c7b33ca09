"""Compression: what a gauge should show, how altitude lowers it, and what the cylinders say beside one another."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

SEA_LEVEL = 101325.0
"Standard pressure in Pa (ISO 2533)."
EARTH = 6_356_766.0
"Radius of the earth in metres in the standard atmosphere."
SOUND, BAD = 0.75, 0.70
"Shares of the best cylinder: at least 75 % is sound (three makers' texts), under 70 % is bad."
LEAK_SUSPECT = 25.0
"Loss in percent at 80 psi from which a cylinder is suspect (FAA AC 43.13-1B section 8-14: below 60/80)."


def pressure_at(height: float) -> float:
    """Pressure of the standard atmosphere in Pa at a height in metres (ISO 2533 below 11 km)."""
    if not -1000 <= height <= 11_000:
        raise ValueError("the standard formula holds from 1 km below to 11 km above the sea")
    return float(SEA_LEVEL * _temperature_ratio(height) ** 5.25588)


def _temperature_ratio(height: float) -> float:
    geopotential = height / (1 + height / EARTH)
    return 1 - 2.25577e-5 * geopotential


def pressure_ratio(height: float) -> float:
    """By how much altitude lowers a compression reading: the pressure ratio (what physics gives a gauge)."""
    return pressure_at(height) / SEA_LEVEL


def density_ratio(height: float) -> float:
    """The factor of the workshop pages (1,000 ft: .971): it is the density ratio of the standard atmosphere."""
    return pressure_ratio(height) / _temperature_ratio(height)


def expected(ratio: float, exponent: float = 1.25, pressure: float = SEA_LEVEL) -> float:
    """Gauge pressure in Pa from the compression ratio: p (r^n - 1), with n = 1.2 to 1.3 at cranking speed (theory)."""
    return float(pressure * (ratio**exponent - 1))


@dataclass(frozen=True, slots=True)
class Verdict:
    """What one cylinder is beside the others."""

    share: float
    grade: str
    "sound, marginal or bad."


def compared(readings: Mapping[str, float], reference: float | None = None) -> dict[str, Verdict]:
    """Each cylinder against the machine's own figure, or against the best one where there is none."""
    best = reference if reference is not None else max(readings.values(), default=0.0)
    if best <= 0:
        return {}
    return {name: Verdict(value / best, grade(value / best)) for name, value in readings.items()}


def grade(share: float) -> str:
    """The grade of a share of what it should be."""
    return "sound" if share >= SOUND else "marginal" if share >= BAD else "bad"


def wet_test(dry: float, wet: float, neighbours_low: bool = False) -> str:
    """What oil in a petrol cylinder tells: up by a tenth is rings or bore, else valves or gasket (makers' text)."""
    if wet >= dry * 1.10:
        return "rings or bore"
    return "gasket between the two" if neighbours_low else "valves or gasket"


def leak_down(loss: float, heard_at: str = "") -> str:
    """What a leak-down test tells: the loss in percent and where the air is heard (AC 43.13-1B section 8-14)."""
    if loss <= LEAK_SUSPECT:
        return "sound"
    places = {"exhaust": "exhaust valve", "inlet": "inlet valve", "breather": "rings", "radiator": "gasket or crack"}
    return places.get(heard_at, "suspect: listen where the air goes")
