"""The one registry of the conversion library: every conversion that a person may ask for.

British and American measures have names of their own in it, so that nobody gets the one for the other.
"""

from __future__ import annotations

from functools import lru_cache
from typing import TYPE_CHECKING, Any

from worklog_tui.rulebook.units import Unit

if TYPE_CHECKING:
    import pint

_OURS = (
    "british_gallon = imperial_gallon",
    "british_quart = imperial_quart",
    "british_pint = imperial_pint",
    "british_fluid_ounce = imperial_fluid_ounce",
    "american_gallon = 231 * inch ** 3",
    "american_quart = american_gallon / 4",
    "american_pint = american_gallon / 8",
    "american_fluid_ounce = american_gallon / 128",
    "british_ton = long_ton",
    "thousandth = inch / 1000",
    "cycle_per_minute = hertz / 60",
    "drop_per_minute = [dripping]",
    "specific_gravity = [specific_gravity]",
)


@lru_cache(maxsize=1)
def registry() -> pint.UnitRegistry[Any]:
    """The registry with our names, built at the first call (pint takes a tenth of a second to load)."""
    import pint

    made: pint.UnitRegistry[Any] = pint.UnitRegistry()
    for definition in _OURS:
        made.define(definition)
    return made


def by_library(value: float, source: Unit, target: Unit) -> float:
    """A value of one unit in another, by the library; pint.DimensionalityError when they measure different things."""
    made = registry()
    return float(made.Quantity(value, made.parse_units(source.pint)).to(made.parse_units(target.pint)).magnitude)
