"""The machine and its card: what it is, and the values that it should have."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class SpecifiedValue:
    """What a number of the machine should be, and who says so."""

    quantity: str
    subject: str
    text: str
    "The words as given; kept also when nothing could be read from them."
    low: float | None = None
    high: float | None = None
    nominal: float | None = None
    limit: str = ""
    "min, max, new or empty."
    unit: str = ""
    condition: str = ""
    rule: str = ""
    source: str = ""
    "plate, own handbook, other handbook, person or memory."
    uid: str = ""


@dataclass(frozen=True, slots=True)
class Machine:
    """A machine card. Empty text and None mean: not known."""

    name: str
    kind: str = ""
    fuel: str = ""
    "petrol, diesel, paraffin, gas or none."
    ignition: str = ""
    "magneto, battery, electronic or none."
    cylinders: int | None = None
    firing_order: tuple[int, ...] = ()
    measures: str = ""
    "british or american: whose pints and gallons are meant; empty: not told."
    specified: tuple[SpecifiedValue, ...] = ()
    uid: str = ""
