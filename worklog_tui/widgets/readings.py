"""The readings: a table by quantity, each with a bar against what it should be, the cylinders one below the other."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import groupby
from typing import ClassVar

from textual.binding import Binding, BindingType
from textual.message import Message

from worklog_tui.logbook.amounts import bounds_in
from worklog_tui.logbook.outcomes import Point, Series
from worklog_tui.logbook.readings import side_by_side
from worklog_tui.reports.plain_compression import shown
from worklog_tui.reports.plain_readings import should_be
from worklog_tui.reports.sentence import QUANTITIES
from worklog_tui.reports.when import where
from worklog_tui.widgets.gauge import gauge
from worklog_tui.widgets.row import Row
from worklog_tui.widgets.rows import Rows

BAR = 24
"Cells of a bar."
LAST = 6
"So many readings of one thing are told, the latest."
UNITS = {"": "as they were said", "metric": "in metric units", "inch": "in inch units"}
"How the readings can be told, in the order in which the key goes through them."
_VERDICTS = {"low": "too low", "high": "too high", "good": "as it should be", "": ""}


class Readings(Rows):
    """Everything that was measured or set."""

    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("enter", "choose", "go", id="readings.choose", tooltip="Go to the note where it was said"),
        Binding(
            "i",
            "units",
            "inch, metric",
            id="readings.units",
            tooltip="As they were said, in metric units, in inch units",
        ),
    ]

    def __init__(self) -> None:
        super().__init__("Nothing has been measured yet. Say what you measure, with its unit, and it stands here.")
        self.units = ""
        "One of UNITS."
        self._series: Sequence[Series] = ()

    class Told(Message):
        """The person had them told in other units."""

        def __init__(self, units: str) -> None:
            super().__init__()
            self.units = units

    def action_units(self) -> None:
        """Tell them in the next units; what is in the log stays as it was said."""
        ways = list(UNITS)
        self.tell_in(ways[(ways.index(self.units) + 1) % len(ways)])
        self.post_message(self.Told(self.units))

    def tell_in(self, units: str) -> None:
        """Tell them in these units, with the same row pointed at."""
        here, rows = self.here, len(self.rows)
        self.units = units
        self.show_series(self._series)
        self.point(here + len(self.rows) - rows)

    def show_series(self, series: Sequence[Series]) -> None:
        """Show these series, by quantity in the order in which each was first taken."""
        self._series = series
        order = {one.quantity: place for place, one in reversed(list(enumerate(series)))}
        rows: list[Row] = [Row.of(f"Told {UNITS[self.units]}", heading=True)] if series and self.units else []
        for quantity, group in groupby(
            sorted(series, key=lambda one: (order[one.quantity], one.subject)), key=lambda one: one.quantity
        ):
            kept = list(group)
            rows.append(Row.of(QUANTITIES.get(quantity, quantity.replace("_", " ")).capitalize(), heading=True))
            for like in side_by_side(kept):
                rows += _alike(sorted(like, key=lambda one: one.subject), self.units)
        self.show(rows)


def _alike(like: Sequence[Series], units: str) -> Iterator[Row]:
    """Series that differ only by number or side, on one scale; a bar stands where there is something to compare."""
    unit = like[0].last.reading.unit
    compared = len(like) > 1 or like[0].limits is not None or len(like[0].points) > 1
    most = max((high for one in like for high in _ends(one)), default=0.0) * 1.1 if compared else 0.0
    for one in like:
        yield from _rows(one, most, unit, units)


def _rows(one: Series, most: float, unit: str, units: str) -> Iterator[Row]:
    should = f", should be {should_be(one.limits, units)}" if one.limits is not None else ""
    yield Row.of(f"{one.subject or 'the machine'}{should}", key=one.last.place.note)
    for point in one.points[-LAST:]:
        told = ", ".join(filter(None, (_value(point, units), _VERDICTS[point.verdict], where(point.place))))
        yield Row.of("  ".join(filter(None, (f"  {_bar(point, one, most, unit)}", told))), key=point.place.note)


def _bar(point: Point, one: Series, most: float, unit: str) -> str:
    found = bounds_in(point.reading.value, point.reading.unit, unit)
    low, high = _limits(one, unit)
    return gauge((found[0] + found[1]) / 2, low, high, most, BAR) if found is not None else ""


def _limits(one: Series, unit: str) -> tuple[float | None, float | None]:
    """What it should be, in a unit."""
    if one.limits is None:
        return None, None
    ends = []
    for end in (one.limits.low, one.limits.high):
        found = bounds_in(end, one.limits.unit, unit) if end is not None else None
        ends.append(found[0] if found is not None else None)
    return ends[0], ends[1]


def _ends(one: Series) -> list[float]:
    """What the scale has to hold, in the unit of the last reading."""
    unit = one.last.reading.unit
    found = [bounds_in(point.reading.value, point.reading.unit, unit) for point in one.points[-LAST:]]
    return [*(ends[1] for ends in found if ends is not None), *(end for end in _limits(one, unit) if end is not None)]


def _value(point: Point, units: str) -> str:
    reading = point.reading
    parts = [shown(reading.value, reading.unit, units), reading.condition, "set" if reading.role == "set" else ""]
    return ", ".join(filter(None, [*parts, "doubtful" if reading.doubtful else ""]))
