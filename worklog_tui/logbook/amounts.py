"""Amounts brought to one unit, so that a reading can be laid beside another and beside what it should be.

Factors by definition: the international yard and pound agreement of 1959 (inch, pound), standard gravity 9.80665 m/s²
(pound-force), SI brochure 9th edition (bar, kPa, temperatures).
"""

from __future__ import annotations

from worklog_tui.model import Value

_POUND_FORCE = 0.45359237 * 9.80665
_FACTORS: dict[str, tuple[str, float]] = {
    "psi": ("pressure", _POUND_FORCE / 0.0254**2), "bar": ("pressure", 1e5), "kPa": ("pressure", 1e3),
    "in": ("length", 0.0254), "mm": ("length", 1e-3), "m": ("length", 1.0), "um": ("length", 1e-6),
    "cm": ("length", 1e-2), "ft": ("length", 0.3048), "s": ("time", 1.0), "min": ("time", 60.0), "h": ("time", 3600.0),
    "day": ("time", 86400.0), "V": ("voltage", 1.0), "mV": ("voltage", 1e-3), "kV": ("voltage", 1e3),
    "A": ("current", 1.0), "mA": ("current", 1e-3), "ohm": ("resistance", 1.0), "kohm": ("resistance", 1e3),
    "Mohm": ("resistance", 1e6), "N*m": ("torque", 1.0), "ft_lb": ("torque", 0.3048 * _POUND_FORCE),
    "in_lb": ("torque", 0.0254 * _POUND_FORCE), "rpm": ("speed", 1.0), "deg": ("angle", 1.0), "turn": ("turns", 1.0),
    "L": ("volume", 1.0), "ml": ("volume", 1e-3), "kg": ("mass", 1.0), "g": ("mass", 1e-3),
    "lb": ("mass", 0.45359237), "percent": ("percent", 1.0), "sg": ("density", 1.0), "": ("", 1.0),
    "Hz": ("frequency", 1.0),    "drops/min": ("drops", 1.0),
}  # fmt: skip
"""Unit: what it measures, and how much of that measure's base it is. Pints and gallons are missing: whose are they?"""


def converted(value: float, unit: str, into: str) -> float | None:
    """The value in another unit; None when the two do not measure the same."""
    if unit == into:
        return value
    if {unit, into} == {"degC", "degF"}:
        return value * 9 / 5 + 32 if into == "degF" else (value - 32) * 5 / 9
    mine, theirs = _FACTORS.get(unit), _FACTORS.get(into)
    if mine is None or theirs is None or mine[0] != theirs[0]:
        return None
    return value * mine[1] / theirs[1]


def bounds(value: Value) -> tuple[float, float] | None:
    """The lowest and the highest number of a value; None for a designation."""
    if isinstance(value, tuple):
        return min(value), max(value)
    return None if isinstance(value, str) else (float(value), float(value))


def bounds_in(value: Value, unit: str, into: str) -> tuple[float, float] | None:
    """The bounds of a value in another unit."""
    found = bounds(value)
    if found is None:
        return None
    low, high = converted(found[0], unit, into), converted(found[1], unit, into)
    return None if low is None or high is None else (low, high)
