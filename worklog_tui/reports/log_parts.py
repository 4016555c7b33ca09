"""The parts of a published log: what is still needed, what is on its way, what was put in, and what came of it."""

from __future__ import annotations

from worklog_tui.model import OpenItem, Work
from worklog_tui.reports.material import Material, maybe_spot, spot
from worklog_tui.reports.repair_log import PartRow
from worklog_tui.reports.when import where

_PUT_IN = ("replace", "fit", "make")
_STATES = {"open": "needed", "awaited": "ordered, not here yet", "left so": "left so on purpose"}


def parts(of: Material) -> tuple[PartRow, ...]:
    """What is needed first, then everything that was put in."""
    needed = [_needed(i) for i in of.items if i.reason == "part needed" and i.state in _STATES]
    return (*needed, *_put_in(of))


def _needed(item: OpenItem) -> PartRow:
    place = item.raised
    return PartRow(
        item.about, _STATES[item.state], "", place.session if place else 0, place.at if place else "", maybe_spot(place)
    )


def _put_in(of: Material) -> list[PartRow]:
    asked = {i.closed_by: i for i in of.items if i.reason == "part needed" and i.closed_by is not None}
    for_now = {i.raised.note: i for i in of.items if i.reason == "temporary" and i.raised is not None}
    rows = []
    for place, fact in of.told():
        if not isinstance(fact, Work) or fact.action not in _PUT_IN:
            continue
        wanted, stopgap = asked.get(fact.key), for_now.get(place.note)
        state = "replaced" if fact.action == "replace" else "made" if fact.action == "make" else "fitted"
        if stopgap is not None and stopgap.state in ("open", "awaited"):
            state += ", for now only"
        later = f"needed since {where(wanted.raised)}" if wanted is not None and wanted.raised else ""
        rows.append(PartRow(fact.part, state, fact.used, place.session, place.at, spot(place), later))
    return rows
