"""Units and number words as the grammar files give them, and conversion by an own small table.

The table serves where no millisecond can be spared; the tests hold it against the conversion library.
"""

from __future__ import annotations

import tomllib
from collections.abc import Iterable
from dataclasses import dataclass, field
from functools import cached_property
from pathlib import Path
from typing import Any


class BadUnits(ValueError):
    """A table of units that cannot be; its two arguments say what is wrong and what mends it."""


@dataclass(frozen=True, slots=True)
class Unit:
    """A unit: base unit of its dimension = factor * value + offset."""

    short: str
    dimension: str
    factor: float
    offset: float
    quantities: tuple[str, ...]
    pint: str


@dataclass(frozen=True, slots=True)
class Doubt:
    """What the surroundings of a doubtful form must be for it to be a unit."""

    glued: bool = False
    digits: bool = False
    article: bool = True
    uncountable: bool = False
    lone: bool = False
    least: float = 0.0
    most: float = float("inf")
    not_before: frozenset[str] = frozenset()
    not_after: frozenset[str] = frozenset()
    not_a_after: frozenset[str] = frozenset()
    then: frozenset[str] = frozenset()


@dataclass(frozen=True, slots=True)
class SaidUnit:
    """A spoken or written form: its words, the canonical form, the unit and what one of it is in that unit."""

    words: tuple[str, ...]
    name: str
    unit: Unit
    scale: float
    quantities: tuple[str, ...]
    doubt: Doubt | None = None


@dataclass(frozen=True, slots=True)
class Units:
    """All units, by short name and by the first word of each form, longest form first."""

    by_short: dict[str, Unit]
    by_head: dict[str, tuple[SaidUnit, ...]]
    systems: dict[str, str] = field(default_factory=dict)
    "Unit -> metric or inch, for the units that tell in which measures somebody works."

    def quantity_tuples(self) -> frozenset[tuple[str, ...]]:
        """Every tuple of quantities that an amount can carry."""
        return frozenset(said.quantities for forms in self.by_head.values() for said in forms) | {("temperature",)}

    def convert(self, value: float, source: str, target: str) -> float:
        """A value of one unit in another; ValueError for unknown names and for two different dimensions."""
        try:
            a, b = self.by_short[source], self.by_short[target]
        except KeyError as unknown:
            raise ValueError(f"no unit is called {unknown.args[0]!r}") from None
        if a.dimension != b.dimension:
            raise ValueError(f"{source} measures {a.dimension}, {target} measures {b.dimension}")
        return (value * a.factor + a.offset - b.offset) / b.factor


@dataclass(frozen=True)
class Numerals:
    """The words that numbers are made of, by what they do."""

    digit: dict[str, int]
    teen: dict[str, int]
    ten: dict[str, int]
    nothing: dict[str, int]
    scale: dict[str, int]
    dozen: dict[str, int]
    heard: dict[str, int]
    part: dict[str, int]
    part_after_ten: dict[tuple[str, str], int]
    share: dict[str, int]
    ordinal: dict[str, int]
    article: frozenset[str]
    join: frozenset[str]
    point: frozenset[str]
    minus: frozenset[str]
    couple: frozenset[str]
    loose: frozenset[str]
    no_point_after: frozenset[str]
    no_pair_before: frozenset[str]
    single: frozenset[str] = field(default=frozenset())

    @cached_property
    def starts(self) -> frozenset[str]:
        """Every word that a spoken number can begin with."""
        tables = (self.digit, self.teen, self.ten, self.nothing, self.scale, self.dozen, self.part, self.ordinal)
        sets: tuple[Iterable[str], ...] = (self.article, self.point, self.minus, self.couple, self.single)
        return frozenset(w for table in (*tables, *sets) for w in table)

    @cached_property
    def within(self) -> frozenset[str]:
        """Every word that can stand in a spoken number."""
        ends = {word for pair in self.part_after_ten for word in pair}
        return self.starts | self.join | frozenset(self.heard) | ends


def load_numerals(path: Path) -> Numerals:
    """The number words of a file such as grammars/numerals.toml."""
    return numerals_from(_read(path))


def numerals_from(data: dict[str, Any]) -> Numerals:
    """The number words of a parsed file."""
    after_ten = {tuple(k.split()): v for k, v in data["part_after_ten"].items()}
    tables = ("digit", "teen", "ten", "nothing", "scale", "dozen", "heard", "part", "share", "ordinal")
    read: dict[str, Any] = {name: data[name] for name in tables}
    read |= {name: frozenset(words) for name, words in data["words"].items()}
    return Numerals(**read, part_after_ten={(k[0], k[1]): v for k, v in after_ten.items()})


def load_units(path: Path) -> Units:
    """The units of a file such as grammars/units.toml; BadUnits names what is wrong in it."""
    return units_from(_read(path))


def units_from(data: dict[str, Any]) -> Units:
    """The units of a parsed file; BadUnits names a form that is said for two units, and a multiple of no unit."""
    by_short = {row["short"]: _unit(row) for row in data["unit"]}
    doubts = _doubts(data.get("doubtful", ()))
    by_head: dict[str, list[SaidUnit]] = {}
    seen: dict[tuple[str, ...], str] = {}
    for row in (*data["unit"], *data.get("scaled", ())):
        if row["short"] not in by_short:
            raise BadUnits(
                f"{row['short']!r} is no unit, and {row.get('name')!r} is said to be a multiple of it",
                "give the short of a unit",
            )
        unit = by_short[row["short"]]
        for form in row["said"]:
            words = tuple(form.split())
            if words in seen:
                raise BadUnits(
                    f"{form!r} is said both for {seen[words]!r} and for {unit.short!r}", "take it out of one of them"
                )
            seen[words] = unit.short
            said = SaidUnit(
                words, row.get("name", row["said"][0]), unit, row.get("scale", 1.0), tuple(row["quantities"]),
                doubts.get(form),
            )  # fmt: skip
            by_head.setdefault(words[0], []).append(said)
    systems = {unit: system for system, units in data.get("systems", {}).items() for unit in units}
    return Units(by_short, {k: tuple(sorted(v, key=lambda s: -len(s.words))) for k, v in by_head.items()}, systems)


def _unit(row: dict[str, Any]) -> Unit:
    return Unit(
        row["short"], row["dimension"], row["factor"], row.get("offset", 0.0), tuple(row["quantities"]), row["pint"]
    )


def _doubts(rows: Iterable[dict[str, Any]]) -> dict[str, Doubt]:
    """The conditions of each doubtful form; tables that name the same form add up."""
    merged: dict[str, dict[str, Any]] = {}
    for row in rows:
        for form in row["said"]:
            known = merged.setdefault(form, {})
            for key, value in row.items():
                if isinstance(value, list) and key != "said":
                    known[key] = known.get(key, frozenset()) | frozenset(value)
                elif key != "said":
                    known[key] = value
    return {form: Doubt(**conditions) for form, conditions in merged.items()}


def _read(path: Path) -> dict[str, Any]:
    with path.open("rb") as file:
        return tomllib.load(file)
