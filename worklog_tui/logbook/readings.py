"""Readings over time: by quantity and subject, against what they should be."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from worklog_tui.logbook.limits import Judge, Limits, verdict
from worklog_tui.logbook.same_thing import thing
from worklog_tui.model import History, Place, Reading

TAKEN = ("measured", "set")


@dataclass(frozen=True, slots=True)
class Point:
    """One reading, and how it compares."""

    reading: Reading
    place: Place
    verdict: str
    "low, high, good, or empty when nothing tells."


@dataclass(frozen=True, slots=True)
class Series:
    """All readings of one quantity of one subject, in order."""

    quantity: str
    subject: str
    points: tuple[Point, ...]
    limits: Limits | None = None

    @property
    def last(self) -> Point:
        """The reading that stands now."""
        return self.points[-1]


def readings(history: History) -> tuple[Series, ...]:
    """Every series, in the order in which each was first measured or set."""
    rows: dict[tuple[str, str], list[Point]] = {}
    names: dict[tuple[str, str], str] = {}
    limits: dict[tuple[str, str], Limits] = {}
    judge = Judge(history)
    for fact in history.facts():
        if not isinstance(fact, Reading) or fact.role not in TAKEN:
            continue
        key = (fact.quantity, _key(fact))
        found = judge.limits(fact)
        if found is not None:
            limits[key] = found
        names.setdefault(key, fact.subject)
        rows.setdefault(key, []).append(Point(fact, history.place(fact.main.note), verdict(fact, found)))
    return tuple(Series(key[0], names[key], tuple(points), limits.get(key)) for key, points in rows.items())


def side_by_side(series: Sequence[Series]) -> list[list[Series]]:
    """Series of one quantity that differ only by number or side, together: the cylinders of an engine."""
    groups: dict[tuple[str, frozenset[str]], list[Series]] = {}
    for one in series:
        groups.setdefault((one.quantity, thing(one.subject).words), []).append(one)
    return list(groups.values())


def _key(reading: Reading) -> str:
    about = thing(reading.subject, reading.name)
    words = thing(about.name).words if about.name else about.words
    return " ".join([*sorted(words), *sorted(about.marks)])
