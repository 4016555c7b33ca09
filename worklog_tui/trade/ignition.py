"""Ignition sums: dwell, degrees on the rim of a flywheel, firing order."""

from __future__ import annotations

import math
from collections.abc import Sequence


def full_dwell(cylinders: int) -> float:
    """Degrees of the distributor between two sparks: 360 / N; dwell and open angle add up to it."""
    return 360.0 / cylinders


def dwell_percent(dwell: float, cylinders: int) -> float:
    """Dwell in percent of the angle between two sparks."""
    return dwell * cylinders / 3.6


def arc(diameter: float, degrees: float = 1.0) -> float:
    """Length on the rim of a flywheel for some degrees of the crank, in the unit of the diameter: pi D / 360."""
    return math.pi * diameter * degrees / 360.0


def degrees_of(arc_length: float, diameter: float) -> float:
    """Degrees of the crank from a length on the rim."""
    return 360.0 * arc_length / (math.pi * diameter)


def firing_interval(cylinders: int, strokes: int = 4) -> float:
    """Degrees of the crank between two firings of an even engine."""
    return 180.0 * strokes / cylinders


def shares_stroke(order: Sequence[int], cylinder: int) -> int | None:
    """The cylinder that is half the order away: its piston is up when that one fires (even numbers only)."""
    half, odd = divmod(len(order), 2)
    if odd or cylinder not in order:
        return None
    return order[(order.index(cylinder) + half) % len(order)]
