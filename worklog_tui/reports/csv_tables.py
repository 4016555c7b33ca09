"""Readings, work and parts as CSV (RFC 4180), with no cell that a spreadsheet would take for a formula."""

from __future__ import annotations

import io
import re
from collections.abc import Iterable, Sequence
from typing import Any

from worklog_tui.reports.missing import needed
from worklog_tui.reports.repair_log import RepairLog

TABLES = ("readings", "work", "parts")
_CONTROL = re.compile(r"[\x00-\x1f\x7f-\x9f]+")
_HEADS = {
    "readings": ("session", "day", "time", "subject", "quantity", "value", "low", "high", "unit", "condition", "how",
                 "doubtful", "should be", "result"),
    "work": ("session", "day", "time", "done", "action", "part", "used"),
    "parts": ("session", "time", "part", "state", "used", "later"),
}  # fmt: skip


def csv_table(log: RepairLog, table: str) -> str:
    """One of TABLES; a Missing when defusedcsv is not installed, a KeyError for another name."""
    rows: dict[str, Iterable[Sequence[Any]]] = {
        "readings": (
            (r.session, r.day, r.time, r.subject, r.quantity, r.value, r.low, r.high, r.unit, r.condition, r.how,
             "yes" if r.doubtful else "", r.should_be, r.compares)
            for r in log.readings
        ),
        "work": ((r.session, r.day, r.time, r.done, r.action, r.part, r.used) for r in log.work),
        "parts": ((r.session or "", r.time, r.part, r.state, r.used, r.later) for r in log.parts),
    }  # fmt: skip
    safe = needed("defusedcsv.csv", "defusedcsv", "A table")
    out = io.StringIO(newline="")
    writer = safe.writer(out)
    writer.writerow(_HEADS[table])
    for row in rows[table]:
        writer.writerow([_cell(one) for one in row])
    return out.getvalue()


def _cell(content: Any) -> Any:
    """A number as it is; text on one line, without what hides a formula at its beginning."""
    if content is None:
        return ""
    return " ".join(_CONTROL.sub(" ", content).split()) if isinstance(content, str) else content
