"""Readings of like parts side by side, as bars: the cylinders of an engine, dry against wet."""

from __future__ import annotations

from collections.abc import Sequence

from worklog_tui.logbook.amounts import bounds_in
from worklog_tui.logbook.outcomes import Point, Series
from worklog_tui.logbook.readings import side_by_side
from worklog_tui.reports.lines import columns
from worklog_tui.reports.sentence import QUANTITIES, amount

BAR = "█"
LONGEST = 24
"Columns of the longest bar."
_VERDICTS = {"low": "  too low", "high": "  too high"}


def bars(series: Sequence[Series], width: int) -> list[str]:
    """One block for each quantity that was taken of two or more like parts; nothing where they do not compare."""
    rows: list[str] = []
    for group in side_by_side(series):
        if len(group) > 1 and all(any(c.isdigit() for c in one.subject) for one in group):
            rows += _block(sorted(group, key=lambda one: one.subject), width)
    return rows


def _block(group: Sequence[Series], width: int) -> list[str]:
    unit = group[0].last.reading.unit
    shown = [(one.subject, point) for one in group for point in _each_way(one)]
    highs = [found[1] if (found := bounds_in(p.reading.value, p.reading.unit, unit)) else 0.0 for _, p in shown]
    if max(highs) <= 0:
        return []
    label = max(columns(_label(subject, point)) for subject, point in shown)
    longest = max(6, min(LONGEST, width - label - 26))
    rows = ["", f"{QUANTITIES.get(group[0].quantity, group[0].quantity)} side by side"]
    for (subject, point), high in zip(shown, highs, strict=True):
        name = _label(subject, point)
        bar = BAR * max(1, round(longest * max(high, 0.0) / max(highs)))
        said = amount(point.reading.value, point.reading.unit)
        line = f"  {name}{' ' * (label - columns(name))}  {bar}{' ' * (longest - len(bar))}  {said}"
        rows.append(line + _VERDICTS.get(point.verdict, ""))
    return rows


def _each_way(one: Series) -> list[Point]:
    """The last reading of each condition: dry, then wet."""
    last: dict[str, Point] = {}
    for point in one.points:
        last[point.reading.condition] = point
    return list(last.values())


def _label(subject: str, point: Point) -> str:
    return f"{subject}, {point.reading.condition}" if point.reading.condition else subject
