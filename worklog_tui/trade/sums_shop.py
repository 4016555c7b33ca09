"""Sums about belts, height above the sea, conversions and feeler blades."""

from __future__ import annotations

import math
from collections.abc import Mapping
from typing import Any

from worklog_tui.trade.amounts import amount, measure, plain, positive
from worklog_tui.trade.compression import density_ratio, pressure_at, pressure_ratio
from worklog_tui.trade.machines import belt_deflection, belt_speed_ratio
from worklog_tui.trade.shop_sums import Amount, Sum

BLADES_MM = (
    0.05,
    0.08,
    0.10,
    0.15,
    0.20,
    0.25,
    0.30,
    0.35,
    0.40,
    0.45,
    0.50,
    0.55,
    0.60,
    0.65,
    0.70,
    0.75,
    0.80,
    0.90,
    1.00,
)
BLADES_THOU = (1.5, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 18, 19, 20, 22, 24, 25, 28, 30, 35)
"Blades of a usual set (common practice)."


def belt(given: Mapping[str, Any]) -> Sum:
    """Deflection of a V-belt, and the speed that two pulleys give."""
    span = positive(measure(given["span"], "mm"), "the span")
    amounts = [amount("press in at mid-span", belt_deflection(span), "mm")]
    if given.get("driver") and given.get("driven"):
        driver = positive(measure(given["driver"], "mm"), "a pulley")
        driven = positive(measure(given["driven"], "mm"), "a pulley")
        amounts.append(
            Amount("speed of the driven pulley", round(plain(given, "rpm") * belt_speed_ratio(driver, driven)), "rpm")
        )
    return Sum("deflection = span / 64; driven = driver speed x D / d", tuple(amounts),
               "force by section: A 3.7 to 5.5, B 5.3 to 7.9, C 11.5 to 17 lbf; run-in belts the lower figure",
               "belt makers' guides (1/64 in an inch of span)",
               "Isolated and stopped; guard back on before it runs.")  # fmt: skip


def altitude(given: Mapping[str, Any]) -> Sum:
    """What height does to pressure, to a compression reading and to the boiling point."""
    height = measure(given["height"], "m")
    air = pressure_at(height)
    return Sum("p = 101325 (1 - 2.25577e-5 h)^5.25588", (
        amount("pressure of the air", air / 1000, "kPa"),
        Amount("compression reading, of that at the sea (pressure ratio)", round(pressure_ratio(height), 4)),
        Amount("factor of the workshop tables (density ratio)", round(density_ratio(height), 4)),
        amount("water boils, open", boiling(air), "degC"),
    ), "1 km below to 11 km above the sea, standard weather", "ISO 2533; boiling point by the Antoine equation",
        "Two conventions: a gauge follows the pressure ratio; say which one a figure is by.")  # fmt: skip


def boiling(pascals: float) -> float:
    """Boiling point of water in °C at a pressure (Antoine, 1 to 100 °C: within 0.1 °C of the steam tables)."""
    return 1730.63 / (8.07131 - math.log10(pascals / 133.322)) - 233.426


def convert_sum(given: Mapping[str, Any]) -> Sum:
    """An amount in another unit."""
    unit = str(given["unit"])
    value = measure(given["amount"], unit)
    return Sum("by the definitions of the units", (amount(str(given["amount"]), value, unit),),
               "gal and pint are as the unit table has them: say British or American where it matters",
               "SI brochure; NIST SP 811 appendix B",
               "A thou is a thousandth of an inch: a mil in America; in Britain a mil is a millimetre.")  # fmt: skip


def feeler(given: Mapping[str, Any]) -> Sum:
    """The blades that make up a gap, in both systems, at most two together."""
    gap = positive(measure(given["gap"], "mm"), "a gap")
    if gap > 2 * BLADES_MM[-1]:
        raise ValueError("feeler blades reach about 2 mm: use a rule or gauge blocks")
    rows = []
    for unit, blades, scale in (("mm", BLADES_MM, 1.0), ("thou", BLADES_THOU, 0.0254)):
        pair = _blades(gap / scale, blades)
        off = (sum(pair) * scale - gap) * 1000
        rows.append(Amount(f"blades in {unit}", " + ".join(f"{b:g}" for b in pair) + f" (off by {off:+.0f} um)"))
    return Sum("the one or two blades nearest to the gap", (amount("gap", gap, "mm"), *rows),
               "two blades read about 0.01 mm large together", "common practice",
               "Cold or warm as the handbook says; a blade that drags lightly is right.")  # fmt: skip


def _blades(gap: float, blades: tuple[float, ...]) -> tuple[float, ...]:
    ones: list[tuple[float, ...]] = [(b,) for b in blades]
    twos: list[tuple[float, ...]] = [(a, b) for n, a in enumerate(blades) for b in blades[n + 1 :]]
    return min(ones + twos, key=lambda p: (round(abs(sum(p) - gap), 4), len(p)))
