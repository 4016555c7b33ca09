"""The readings as a table: what was measured, what it should be, and how it went from session to session."""

from __future__ import annotations

from collections.abc import Sequence

from worklog_tui.logbook.outcomes import Limits, Point, Series
from worklog_tui.reports.bars import bars
from worklog_tui.reports.lines import heading, table, widest, wrapped
from worklog_tui.reports.plain_compression import shown
from worklog_tui.reports.sentence import QUANTITIES

_HEAD = ("what", "readings", "should be", "")
_VERDICTS = {"low": "too low", "high": "too high", "good": "as it should be", "": ""}


def readings_text(series: Sequence[Series], width: int, units: str | None = None) -> str:
    """One row a subject and quantity, the newest reading last; in `units` (metric, inch), else as they were said."""
    if not series:
        return "Nothing has been measured yet."
    rows = [
        (_what(one), _values(one.points, units), should_be(one.limits, units), _VERDICTS[one.last.verdict])
        for one in series
    ]
    title = heading("Readings")
    if widest(rows) <= width:
        return "\n".join([*title, *table(_HEAD, rows, width), *bars(series, width)])
    return "\n".join([*title, *(line for row in rows for line in _stacked(row, width)), *bars(series, width)])


def _stacked(row: tuple[str, str, str, str], width: int) -> list[str]:
    """A row in a narrow window: the readings below what they are of."""
    what, values, should, verdict = row
    rest = f"should be {should}" if should else ""
    return wrapped("; ".join(filter(None, (f"{what}: {values}", rest, verdict))), width, "  - ", "    ")


def _what(one: Series) -> str:
    quantity = QUANTITIES.get(one.quantity, one.quantity.replace("_", " "))
    if not one.subject:
        return quantity
    said = one.subject.lower().split()
    subject = _in_a_row(one.subject)
    return subject if quantity in said or one.quantity in said else f"{subject}: {quantity}"


def _in_a_row(subject: str) -> str:
    """What a sentence began with, with a small letter; a name in capitals stays."""
    first, rest = subject[:1], subject[1:]
    return first.lower() + rest if rest[:1].islower() else subject


def _values(points: Sequence[Point], units: str | None) -> str:
    found = [_value(p, units) for p in points[-4:]]
    return ("… → " if len(points) > 4 else "") + " → ".join(found)


def _value(point: Point, units: str | None) -> str:
    reading = point.reading
    said = shown(reading.value, reading.unit, units)
    marks = [reading.condition] if reading.condition else []
    marks += ["set"] if reading.role == "set" else []
    marks += ["doubtful"] if reading.doubtful else []
    return f"{said} ({', '.join(marks)})" if marks else said


def should_be(limits: Limits | None, units: str | None = None) -> str:
    """What a reading should be, in words, and whose figure that is where it is borrowed; empty when nothing tells."""
    said = _range(limits, units) if limits is not None else ""
    return f"{said} ({limits.borrowed})" if limits is not None and said and limits.borrowed else said


def _range(limits: Limits, units: str | None) -> str:
    if limits.nominal is not None:
        return f"about {shown(limits.nominal, limits.unit, units)}"
    low, high = limits.low, limits.high
    if low is not None and high is not None:
        return shown((low, high), limits.unit, units)
    if low is not None:
        return f"at least {shown(low, limits.unit, units)}"
    return f"at most {shown(high, limits.unit, units)}" if high is not None else ""
