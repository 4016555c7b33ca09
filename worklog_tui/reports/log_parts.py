"""The parts of a published log: what is still needed, what is on its way, what was put in, and what came of it."""

from __future__ import annotations

from worklog_tui.logbook.part_states import part_states
from worklog_tui.model import OpenItem, Work
from worklog_tui.reports.log_items import LIVE
from worklog_tui.reports.material import Material, maybe_spot, spot
from worklog_tui.reports.repair_log import PartRow
from worklog_tui.reports.when import where

_STATES = {"open": "needed", "awaited": "ordered, not here yet", "left so": "left so on purpose"}


def parts(of: Material) -> tuple[PartRow, ...]:
    """What is needed first, then everything that was put in."""
    needed = [_needed(i) for i in of.items if i.reason == "part needed" and i.state in _STATES]
    return (*needed, *_events(of))


def _needed(item: OpenItem) -> PartRow:
    place = item.raised
    return PartRow(
        item.about, _STATES[item.state], "", place.session if place else 0, place.at if place else "", maybe_spot(place)
    )


def _events(of: Material) -> list[PartRow]:
    """What was put in, came, was sent back, broke, in the order of the log."""
    works = {(place.note, fact.part): fact for place, fact in of.told() if isinstance(fact, Work)}
    asked = {i.closed_by: i for i in of.items if i.reason == "part needed" and i.closed_by is not None}
    for_now = {i.raised.note for i in of.items if i.reason == "temporary" and i.raised and i.state in LIVE}
    rows = []
    for event in part_states(of.history, of.items):
        if event.place is None or event.place.session < of.first or event.state in ("needed", "ordered"):
            continue
        work = works.get((event.place.note, event.part))
        wanted = asked.get(work.key) if work else None
        state = "replaced" if event.state == "fitted" and work and work.action == "replace" else event.state
        state += ", for now only" if work and event.place.note in for_now else ""
        later = f"needed since {where(wanted.raised)}" if wanted and wanted.raised else ""
        place = spot(event.place)
        rows.append(PartRow(event.part, state, event.used, event.place.session, event.place.at, place, later))
    return rows
