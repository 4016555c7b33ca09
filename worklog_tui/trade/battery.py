"""Lead-acid batteries: charge by rested voltage or density, the cells beside one another, cranking, volt drops."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

CHARGE = ((100.0, 12.65, 1.265), (75.0, 12.45, 1.225), (50.0, 12.24, 1.190), (25.0, 12.06, 1.155), (0.0, 11.89, 1.120))
"Percent, volts of a rested 12 V battery, density at 80 °F (a published table; others differ by up to 0.05 V)."
CELLS_APART = 0.050
"Densities further apart than this mean a failing cell (from memory)."


def charge_by_volts(volts: float, nominal: float = 12.0) -> float:
    """Percent of charge from the voltage of a rested battery (four hours off the charger) of 12 or 6 V."""
    return _between([(v, percent) for percent, v, _ in CHARGE], volts * 12.0 / nominal)


def charge_by_density(density: float, celsius: float = 26.7) -> float:
    """Percent of charge from the density of the acid at a temperature."""
    return _between([(d, percent) for percent, _, d in CHARGE], corrected(density, celsius))


def corrected(density: float, celsius: float) -> float:
    """Density as it would be at 26.7 °C (80 °F): 0.004 for each 10 °F, added when hotter."""
    return density + 0.004 * (celsius - 26.7) * 1.8 / 10


def failing_cells(densities: Sequence[float]) -> list[int]:
    """The cells (from 1) that lie further below the best one than cells of a sound battery do."""
    best = max(densities, default=0.0)
    return [n for n, d in enumerate(densities, 1) if best - d > CELLS_APART]


def cranks_well(volts: float, nominal: float = 12.0) -> bool:
    """Whether the battery holds up on the starter: at least 9.6 V after 15 s at 21 to 27 °C (T-10-3930-671-24)."""
    return volts >= 9.6 * nominal / 12.0


DROPS = {
    "cable under 3 ft": 0.1, "cable 3 to 6 ft": 0.2, "mechanical switch": 0.1, "solenoid switch": 0.2,
    "magnetic switch": 0.3, "joint": 0.0,
}  # fmt: skip
"Volts that may be lost while cranking a 12 V starter (T-5-3820-256-24-4 p. 8); half of it for 6 V (from memory)."


def allowed_drop(parts: Sequence[str], nominal: float = 12.0) -> float:
    """Volts that a path of these parts may lose; a KeyError for a part that the table does not have."""
    return sum(DROPS[part] for part in parts) * nominal / 12.0


def resistance_of(drop: float, current: float) -> float:
    """Ohms of a path from the volts it loses and the amperes through it (Ohm)."""
    if current == 0:
        raise ValueError("no current flows, so the drop tells nothing")
    return drop / current


def _between(points: Sequence[tuple[float, float]], x: float) -> float:
    """Straight lines through the points, held at the ends."""
    ordered = sorted(points)
    if x <= ordered[0][0]:
        return ordered[0][1]
    for (x0, y0), (x1, y1) in pairwise(ordered):
        if x <= x1:
            return y0 + (y1 - y0) * (x - x0) / (x1 - x0)
    return ordered[-1][1]
