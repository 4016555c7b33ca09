"""Quantities: which unit means which, by what is talked of, and the range in which a value is believable."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any


@dataclass(frozen=True, slots=True)
class Bare:
    """What a number without a unit is, by its size."""

    unit: str
    low: float
    high: float
    factor: float = 1.0
    "The value in `unit` is the number times this: thirty said of a gap is 0.030 in."


@dataclass(frozen=True, slots=True)
class Quantity:
    """One file of grammars/quantities."""

    name: str
    near: frozenset[str]
    "Names of parts and words that make an amount this quantity when they stand near it."
    topic: frozenset[str]
    "Words that announce a test, after which bare numbers are this quantity."
    units: tuple[str, ...]
    plausible: Mapping[str, tuple[float, float]]
    "By short unit; outside, a reading is kept and marked doubtful."
    bare: tuple[Bare, ...]
    card: tuple[str, ...]
    "Keys of a machine card's [specified] whose unit is taken for a bare number."


Quantities = Mapping[str, Quantity]


def read_quantities(files: Mapping[str, Mapping[str, Any]]) -> dict[str, Quantity]:
    """All quantity files, the person's own over ours."""
    found: dict[str, Quantity] = {}
    for name, data in files.items():
        if not name.removeprefix("own/").startswith("quantities/"):
            continue
        found[data["quantity"]] = Quantity(
            data["quantity"],
            frozenset(data.get("near", ())),
            frozenset(data.get("topic", ())),
            tuple(data.get("units", ())),
            {unit: (float(span[0]), float(span[1])) for unit, span in data.get("plausible", {}).items()},
            tuple(Bare(**b) for b in data.get("bare", ())),
            tuple(data.get("card", ())),
        )
    return found


def suggestions_of(quantities: Quantities) -> dict[str, frozenset[str]]:
    """Word or name of a thing -> the quantities that a number near it is likely to be."""
    found: dict[str, set[str]] = {}
    for name, quantity in quantities.items():
        for word in quantity.near | quantity.topic:
            found.setdefault(word, set()).add(name)
    once: dict[frozenset[str], frozenset[str]] = {}
    sets = {word: frozenset(names) for word, names in found.items()}
    return {word: once.setdefault(names, names) for word, names in sets.items()}


def topics_of(quantities: Quantities) -> dict[str, str]:
    """Word that announces a test -> its quantity; of two quantities that name a word, the first by name has it."""
    found: dict[str, str] = {}
    for name in sorted(quantities):
        for word in quantities[name].topic:
            found.setdefault(word, name)
    return found
