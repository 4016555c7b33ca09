"""Sums about belts, insulation, alternators and oil pressure."""

from __future__ import annotations


def insulation_at_40(megohms: float, celsius: float) -> float:
    """Insulation resistance as it would be at 40 °C: it halves with each 10 °C (IEEE 43, from memory)."""
    return float(megohms * 2 ** ((celsius - 40) / 10))


def least_insulation(volts: float, random_wound: bool = True, old: bool = False) -> float:
    """Megohms at 40 °C that a winding should have (IEEE 43): old ones kV + 1, random-wound under 1 kV 5, else 100."""
    if old:
        return volts / 1000 + 1
    return 5.0 if random_wound and volts < 1000 else 100.0


def belt_deflection(span: float) -> float:
    """How far a V-belt may be pressed at mid-span, in the unit of the span: 1/64 in an inch (belt makers' guides)."""
    return span / 64


def belt_speed_ratio(driver: float, driven: float) -> float:
    """Speed of the driven pulley for one turn of the driver, from the pitch diameters."""
    return driver / driven


def alternator_hertz(poles: int, rpm: float) -> float:
    """Frequency of an alternator: poles x rpm / 120."""
    return poles * rpm / 120
