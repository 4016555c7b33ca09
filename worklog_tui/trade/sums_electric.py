"""Sums about batteries, volt drops and insulation."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from worklog_tui.trade.amounts import plain, positive
from worklog_tui.trade.battery import DROPS, charge_by_density, charge_by_volts, corrected, resistance_of
from worklog_tui.trade.machines import insulation_at_40, least_insulation
from worklog_tui.trade.shop_sums import Amount, Sum

GAS = "Charging gas explodes and acid burns: air the place, goggles, charger off before the clips move."


def charge(given: Mapping[str, Any]) -> Sum:
    """Charge from rested volts or from the density."""
    reading, nominal = plain(given, "reading"), plain(given, "nominal")
    celsius = plain(given, "celsius")
    if nominal not in (6, 12):
        raise ValueError("the table is for batteries of 6 and 12 volts")
    if 1.0 <= reading < 1.4:
        return Sum("density at 26.7 degC = reading + 0.004 for each 10 degF above, then by the table", (
            Amount("density at 26.7 degC (80 degF)", round(corrected(reading, celsius), 4)),
            Amount("charge", round(charge_by_density(reading, celsius)), "percent"),
        ), "1.120 flat to 1.265 full; cells more than 0.050 apart: one is failing",
            "published table of rested lead-acid batteries", GAS)  # fmt: skip
    if not 0.7 * nominal < reading < 1.25 * nominal:
        raise ValueError(f"{reading:g} is neither the rested volts of a {nominal:g} volt battery nor a density")
    return Sum("between the rows of the table by straight lines; a 6 V battery counts double", (
        Amount("charge", round(charge_by_volts(reading, nominal)), "percent"),
    ), "rested four hours or with the surface charge burnt off; 0.05 V either way between published tables",
        "published table: 12.65, 12.45, 12.24, 12.06, 11.89 V for full to flat at 80 degF", GAS)  # fmt: skip


def volt_drop(given: Mapping[str, Any]) -> Sum:
    """A volt drop as ohms, beside what each part of a starter circuit may lose."""
    volts, amps = plain(given, "volts"), positive(plain(given, "amps"), "the current")
    scale = positive(plain(given, "nominal"), "the voltage") / 12
    ohms = resistance_of(volts, amps)
    return Sum("R = V / I; watts lost = V I", (
        Amount("resistance", round(ohms * 1000, 3), "mohm"), Amount("heat in it", round(volts * amps, 1), "W"),
        *(Amount(f"may lose: {part}", round(v * scale, 3), "V") for part, v in DROPS.items()),
        Amount("may lose: whole feed", 0.5 * scale, "V"), Amount("may lose: earth side", 0.2 * scale, "V"),
    ), "measured while cranking, meter across the part; 6 V half of it (from memory)",
        "T-5-3820-256-24-4 p. 8; Ohm's law",
        "Gear in neutral, hands clear of belts; crank 30 s at most, rest two minutes."
    )  # fmt: skip


def insulation(given: Mapping[str, Any]) -> Sum:
    """Insulation at 40 degrees, against the least that the winding should have."""
    megohms, celsius = positive(plain(given, "megohms"), "the reading"), plain(given, "celsius")
    volts, kind = plain(given, "volts"), str(given["winding"])
    if kind not in ("old", "random", "form"):
        raise ValueError("a winding is old, random or form wound")
    at_40 = insulation_at_40(megohms, celsius)
    least = least_insulation(volts, random_wound=kind == "random", old=kind == "old")
    return Sum("R40 = R 2^((t - 40) / 10); least: old kV + 1, random wound 5, form wound 100 megohms", (
        Amount("at 40 degC", round(at_40, 3), "Mohm"), Amount("least", least, "Mohm"),
        Amount("verdict", "good enough" if at_40 >= least else "too low: dry it and measure again"),
    ), "the reading halves for each 10 degC; 500 V DC for 230 V gear, one minute",
        "IEEE 43 by name, from memory",
        "Dead and disconnected, capacitors and electronics off first, discharged after; fixed wiring and the final "
        "test are for a licensed person.")  # fmt: skip
