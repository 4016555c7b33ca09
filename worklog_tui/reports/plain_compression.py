"""Compression tests as plain text, and readings before beside after a repair."""

from __future__ import annotations

from collections.abc import Sequence

from worklog_tui.logbook.amounts import bounds_in
from worklog_tui.logbook.compressions import BeforeAfter, CompressionTest
from worklog_tui.model import Reading, Value
from worklog_tui.reports.lines import heading, table, wrapped
from worklog_tui.reports.sentence import amount, briefly

INTO = {
    "metric": {"psi": "bar", "in": "mm", "ft_lb": "N*m", "in_lb": "N*m", "degF": "degC", "lb": "kg", "ft": "m"},
    "inch": {"bar": "psi", "kPa": "psi", "mm": "in", "N*m": "ft_lb", "degC": "degF", "kg": "lb", "m": "ft"},
}
"The person's units: what each unit is shown in."


def compression_text(
    tests: Sequence[CompressionTest], pairs: Sequence[BeforeAfter], units: str | None, width: int
) -> str:  # fmt: skip
    """One table a session: dry, wet, the share of what it should be, and what the two say."""
    rows: list[str] = []
    for one in tests:
        rows += ["", *heading(f"Compression, session {one.session}")]
        body = [
            (f"cylinder {c.cylinder}" if c.cylinder else "cylinder", _shown(c.dry, units), _shown(c.wet, units),
             f"{c.verdict.share:.0%}" if c.verdict else "", c.verdict.grade if c.verdict else "", c.wet_says)
            for c in one.cylinders
        ]  # fmt: skip
        rows += table(("", "dry", "wet", "share", "", "oil says"), body, width)
        if one.should_be is not None:
            at = f", at {one.altitude:.0f} m above the sea" if one.altitude else ""
            whose = f" ({one.source})" if one.source else ""
            rows += wrapped(f"Shares are of {_shown(one.should_be, units)}, the card's figure{whose}{at}.", width)
        elif one.lowest_share is not None:
            rows += wrapped(f"The lowest is {one.lowest_share:.0%} of the highest, which shares are of.", width)
    if pairs:
        rows += ["", *heading("Before and after")]
        for pair in pairs:
            said = f"{briefly(pair.work)}: {_reading(pair.before, units)} before, {_reading(pair.after, units)} after"
            rows += wrapped(f"{said} ({pair.after.subject or pair.after.quantity})", width, "  - ", "    ")
    return "\n".join(rows[1:]) or "No compression was measured, and nothing both before and after work."


def _reading(reading: Reading, units: str | None) -> str:
    return shown(reading.value, reading.unit, units)


def shown(value: Value, unit: str, units: str | None) -> str:
    """A value in the person's units; as it was said where they are not set or do not fit."""
    into = INTO.get(units or "", {}).get(unit)
    found = bounds_in(value, unit, into) if into else None
    if into is None or found is None:
        return amount(value, unit)
    low, high = (float(f"{end:.3g}") for end in found)
    return amount(low if low == high else (low, high), into)


def _shown(psi: float | None, units: str | None) -> str:
    if psi is None:
        return ""
    if units == "metric":
        found = bounds_in(psi, "psi", "bar")
        assert found is not None
        return f"{found[0]:.1f} bar"
    return f"{psi:.0f} psi"
