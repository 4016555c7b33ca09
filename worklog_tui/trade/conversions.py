"""Conversions that a person asks for, through the rulebook's own table of units."""

from __future__ import annotations

from functools import lru_cache

from worklog_tui import places
from worklog_tui.rulebook.units import Units, load_units


@lru_cache(maxsize=1)
def _units() -> Units:
    return load_units(places.grammars() / "units.toml")


def convert(value: float, source: str, target: str) -> float:
    """A value in another unit of the same kind; a ValueError for unknown units and for different kinds."""
    return _units().convert(value, source, target)


def thou(millimetres: float) -> float:
    """Thousandths of an inch."""
    return millimetres / 0.0254
