"""Readings against specified values, as positions on a scale: the geometry only, drawn by the page."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import replace

from worklog_tui.logbook.amounts import bounds_in
from worklog_tui.logbook.outcomes import Point, Series
from worklog_tui.logbook.readings import side_by_side
from worklog_tui.reports.log_rows import VERDICTS, quantity, subject_key
from worklog_tui.reports.plain_readings import should_be
from worklog_tui.reports.repair_log import Chart, Mark, Scale
from worklog_tui.reports.sentence import UNITS, amount

MARKS = 12
"So many readings of one subject are marked, the latest."
COURSE = 4
"From so many readings on their course is drawn."
_ROOM = 0.08
"Share of the scale that is left free at either end."
_TICKS = 4
_NOT_DRAWN = frozenset({"duration", "run_time", "thread"})
"""What lies on no common scale: how long something took."""


def charts(series: Sequence[Series]) -> tuple[Chart, ...]:
    """One chart for each quantity of like subjects that has something to be laid beside, or several readings."""
    groups = side_by_side(_one_each([one for one in series if one.quantity not in _NOT_DRAWN]))
    found = [chart for group in groups if _worth(group) and (chart := _chart(group))]
    first = {chart.title: n for n, chart in reversed(list(enumerate(found)))}
    return tuple(sorted(found, key=lambda chart: first[chart.title]))


def _one_each(group: Sequence[Series]) -> list[Series]:
    """Series of one subject that was called by several names as one, in the order in which they were said."""
    rows: dict[object, Series] = {}
    for one in group:
        key = subject_key(one.last.reading)
        before = rows.get(key)
        if before is not None:
            points = sorted((*before.points, *one.points), key=lambda point: point.place.order)
            one = replace(before, points=tuple(points), limits=one.limits or before.limits)
        rows[key] = one
    return list(rows.values())


def _worth(group: Sequence[Series]) -> bool:
    return any(one.limits is not None or len(one.points) > 1 for one in group) or len(group) > 1


def _chart(group: Sequence[Series]) -> Chart | None:
    unit = group[0].last.reading.unit
    kept = [(one, [p for p in one.points if _ends(p, unit)][-MARKS:]) for one in group]
    kept = [(one, points) for one, points in kept if points]
    values = [v for _, points in kept for p in points for v in _ends(p, unit)]
    values += [v for one, _ in kept for v in _limits(one, unit) if v is not None]
    if not values or not all(map(math.isfinite, values)):
        return None
    axis = _Axis(min(values), max(values))
    title, said = "drip" if unit.startswith("drops") else quantity(group[0].quantity), UNITS.get(unit, unit)
    scales = tuple(_scale(one, points, unit, axis) for one, points in kept)
    told = "; ".join(_in_words(s) for s in scales)
    head = title[:1].upper() + title[1:] + (f" ({said})" if said else "")
    return Chart(head, said, scales, axis.ticks(), f"{title}: {told}")


class _Axis:
    """From values to percents."""

    def __init__(self, low: float, high: float) -> None:
        room = (high - low) * _ROOM or abs(high) * _ROOM or 1.0
        self.low = 0.0 if 0 <= low < 0.3 * high else low - room
        self.high = high + room

    def at(self, value: float) -> float:
        return round(min(max((value - self.low) / (self.high - self.low), 0.0), 1.0) * 100, 2)

    def ticks(self) -> tuple[tuple[float, str], ...]:
        rough = (self.high - self.low) / _TICKS
        power = 10.0 ** math.floor(math.log10(rough))
        step = next(power * n for n in (1, 2, 5, 10) if power * n >= rough)
        first = math.ceil(self.low / step - 1e-9)
        count = int((self.high - first * step) / step + 1e-9) + 1
        return tuple((self.at((first + n) * step), amount((first + n) * step, "")) for n in range(count))


def _ends(point: Point, unit: str) -> tuple[float, ...]:
    return bounds_in(point.reading.value, point.reading.unit, unit) or ()


def _limits(one: Series, unit: str) -> tuple[float | None, float | None]:
    limits = one.limits
    if limits is None:
        return None, None
    low, high = limits.low, limits.high
    found = [None if v is None else bounds_in(v, limits.unit, unit) for v in (low, high)]
    return tuple(None if f is None else f[0] for f in found)  # type: ignore[return-value]


def _scale(one: Series, points: Sequence[Point], unit: str, axis: _Axis) -> Scale:
    stands = one.last if one.last in points else points[-1]
    marks = tuple(_mark(p, p is stands, unit, axis) for p in points)
    low, high = _limits(one, unit)
    band = None
    if low is not None or high is not None:
        start = axis.at(axis.low if low is None else low)
        band = (start, round(axis.at(axis.high if high is None else high) - start, 2))
    course: tuple[tuple[float, float], ...] = ()
    if len(marks) >= COURSE:
        course = tuple((round(n / (len(marks) - 1) * 100, 2), round(100 - m.at, 2)) for n, m in enumerate(marks))
    return Scale(one.subject or "machine", marks, band, should_be(one.limits), VERDICTS[one.last.verdict], course)


def _mark(point: Point, last: bool, unit: str, axis: _Axis) -> Mark:
    ends = _ends(point, unit)
    reading = point.reading
    said = amount(reading.value, reading.unit)
    how = ", ".join(filter(None, (reading.condition, "set" if reading.role == "set" else "", _doubt(point))))
    return Mark(axis.at(sum(ends) / len(ends)), f"{said} ({how})" if how else said, last, point.verdict)


def _doubt(point: Point) -> str:
    return "doubtful" if point.reading.doubtful else ""


def _in_words(scale: Scale) -> str:
    said = ", then ".join(mark.said for mark in scale.marks)
    rest = ", ".join(filter(None, (f"should be {scale.should_be}" if scale.should_be else "", scale.verdict)))
    return f"{scale.name} {said}" + (f" ({rest})" if rest else "")
