"""Readings over time: by quantity and subject, against what they should be."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from worklog_tui.logbook.compressions import oiled, taken_wet
from worklog_tui.logbook.limits import MEASURES, Judge, verdict
from worklog_tui.logbook.outcomes import WET, Limits, Point, Series
from worklog_tui.logbook.same_thing import thing
from worklog_tui.model import History, Reading

TAKEN = ("measured", "set")


def readings(history: History) -> tuple[Series, ...]:
    """Every series, in the order in which each was first measured or set."""
    rows: dict[tuple[str, str], list[Point]] = {}
    names: dict[tuple[str, str], str] = {}
    limits: dict[tuple[str, str], Limits] = {}
    judge, wet = Judge(history), _Wet(history)
    taken_ones = [fact for fact in history.facts() if isinstance(fact, Reading) and fact.role in TAKEN]
    bare = {_subject(fact): _key(fact) for fact in taken_ones}
    for fact in taken_ones:
        key = (fact.quantity, bare.get(_without_measure(fact), _key(fact)))
        found = judge.limits(fact)
        if found is not None:
            limits[key] = found
        if key not in names or len(fact.subject.split()) < len(names[key].split()):
            names[key] = fact.subject
        place = history.place(fact.main.note)
        taken = wet.as_taken(fact, place.order)
        poured = fact.role == "set" and fact.quantity == "volume"
        compares = "" if taken.condition == WET or poured else verdict(fact, found)
        rows.setdefault(key, []).append(Point(taken, place, compares))
    return tuple(Series(key[0], names[key], tuple(points), limits.get(key)) for key, points in rows.items())


class _Wet:
    """Tells compressions that were taken after oil was put into the bores."""

    def __init__(self, history: History) -> None:
        self._history = history
        self._spans: list[tuple[int, int]] | None = None

    def as_taken(self, reading: Reading, order: int) -> Reading:
        if reading.quantity != "compression":
            return reading
        if self._spans is None:
            self._spans = oiled(self._history)
        return replace(reading, condition=WET) if taken_wet(reading, order, self._spans) else reading


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


Subject = tuple[frozenset[str], frozenset[str]]
"The words and the marks of what a reading is of."


def _subject(reading: Reading) -> Subject:
    about = thing(reading.subject)
    return about.words, about.marks


def _without_measure(reading: Reading) -> Subject:
    """The clutch gap is of what the gap of the clutch is of."""
    words, marks = _subject(reading)
    return words - MEASURES, marks
