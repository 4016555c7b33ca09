"""Amounts as they are typed, and the same amount in the other system of units."""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import Any

from worklog_tui.trade.conversions import convert
from worklog_tui.trade.shop_sums import Amount

OTHER = {
    "mm": "in", "in": "mm", "psi": "bar", "bar": "psi", "kPa": "psi", "N*m": "ft_lb", "ft_lb": "N*m", "degC": "degF",
    "degF": "degC", "m": "ft", "ft": "m", "L": "gal", "kg": "lb", "lb": "kg",
}  # fmt: skip
"""The unit of the other system that a workshop reads."""
_WRITTEN = {"thou": ("in", 0.001), '"': ("in", 1.0), "inch": ("in", 1.0), "c": ("degC", 1.0), "f": ("degF", 1.0),
            "nm": ("N*m", 1.0), "lbft": ("ft_lb", 1.0), "metre": ("m", 1.0), "feet": ("ft", 1.0)}  # fmt: skip
_AMOUNT = re.compile(r"^\s*([-+]?\d+(?:\.\d+)?(?:/\d+)?|\.\d+)\s*((?:[a-zA-Z*_\"/%][a-zA-Z0-9*_\"/%]*)?)\s*$")


def measure(text: str, unit: str, bare: str = "") -> float:
    """An amount as typed, in a unit; a bare number is in `bare`, else in that unit. A ValueError for what is none."""
    found = _AMOUNT.match(str(text))
    if not found:
        raise ValueError(f"{text!r} is no amount: write a number with its unit, such as 6.3{bare or unit}")
    number = found[1]
    top, _, bottom = number.partition("/")
    if bottom and not float(bottom):
        raise ValueError(f"{text!r} divides by nothing")
    value = float(top) / float(bottom) if bottom else float(number)
    written = found[2] or bare or unit
    name, scale = _WRITTEN.get(written.lower(), (written, 1.0))
    return convert(value * scale, name, unit)


def plain(given: Mapping[str, Any], name: str) -> float:
    """A bare number of what a sum was given; a ValueError for anything else."""
    try:
        return float(given[name])
    except (TypeError, ValueError):
        raise ValueError(f"{given[name]!r} is no number for {name}") from None


def positive(value: float, says: str) -> float:
    """The value, when it is above nothing; else a ValueError."""
    if not value > 0:
        raise ValueError(f"{says} must be above nothing")
    return value


def amount(says: str, value: float, unit: str) -> Amount:
    """A result with the same in the other system."""
    other = OTHER.get(unit)
    return Amount(says, value, unit, convert(value, unit, other) if other else None, other or "")
