"""Since last time, as plain text: half a minute to know where things stand."""

from __future__ import annotations

from collections.abc import Sequence

from worklog_tui.logbook.outcomes import Recap
from worklog_tui.model import Advice, Fact, Finding, OpenItem, Reading
from worklog_tui.reports.lines import heading, wrapped
from worklog_tui.reports.plain_items import item_lines
from worklog_tui.reports.sentence import briefly
from worklog_tui.reports.when import session_title


def recap_text(recap: Recap, advice: Advice | None, width: int) -> str:
    """The last session in short: what comes first is what to do."""
    if not recap.session:
        return "There is no session yet, so there is nothing to look back on."
    rows = heading(f"Since last time: {session_title(recap.session, recap.start)}")
    if advice is not None and advice.steps:
        rows += wrapped(f"First: {advice.steps[0].step}", width)
    rows += _items("You were going to", recap.planned, width)
    rows += _items("Awaited", recap.awaited, width)
    rows += _facts("Done", recap.done, width)
    rows += _facts("Found", [f for f in recap.found if not (isinstance(f, Finding) and f.verdict == "noted")], width)
    rows += _facts("Measured", _last_of_each(recap.measured), width)
    rows += _items("Dealt with", recap.closed, width)
    rows += _items("Still open", [i for i in recap.open if i not in recap.planned], width)
    if len(rows) == len(heading("")):
        rows += wrapped("Nothing was done, found or measured in it, and nothing is open.", width)
    return "\n".join(rows)


def _facts(title: str, facts: Sequence[Fact], width: int) -> list[str]:
    if not facts:
        return []
    said = dict.fromkeys(briefly(f) for f in facts)
    return ["", f"{title}:", *(line for s in said for line in wrapped(s, width, "  - ", "    "))]


def _last_of_each(readings: Sequence[Reading]) -> list[Reading]:
    """The last reading of each quantity, subject and condition."""
    last: dict[tuple[str, str, str], Reading] = {}
    for one in readings:
        last.pop((one.quantity, one.subject.lower(), one.condition), None)
        last[one.quantity, one.subject.lower(), one.condition] = one
    return list(last.values())


def _items(title: str, items: Sequence[OpenItem], width: int) -> list[str]:
    if not items:
        return []
    return ["", f"{title}:", *(line for i in items for line in item_lines(i, width))]
