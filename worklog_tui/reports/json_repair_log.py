"""The repair log as JSON data, as `repair_log.schema.json` describes it."""

from __future__ import annotations

from dataclasses import asdict
from typing import Any

from worklog_tui.reports.repair_log import Group, RepairLog, Spot, Told

FORMAT = 1
"Raised when a reader of the former shape would be misled."


def json_repair_log(log: RepairLog) -> dict[str, Any]:
    """The whole log; an anchor is the same as on the page and in Markdown."""
    return {
        "format": FORMAT,
        "machine": log.machine,
        "kind": log.kind,
        "span": log.span,
        "made": log.made,
        "whole": log.whole,
        "where_it_stands": {
            "headline": log.where_it_stands.headline,
            "rows": [{"name": n, "text": t, "at": _spot(s)} for n, t, s in log.where_it_stands.rows],
        },
        "card": [{"name": name, "text": text} for name, text in log.card],
        "next_steps": _told(log.next_steps),
        "do_not_start": _told(log.forbidden),
        "left": _told(log.left),
        "off": _told(log.off),
        "starts": _told(log.starts),
        "cautions": _told(log.cautions),
        "open": [_group(group) for group in log.open_items],
        "for_now": _told(log.for_now),
        "left_so": _told(log.left_so),
        "not_proved": _told(log.not_proved),
        "put_right": _told(log.dealt_with),
        "settled": _told(log.settled),
        "systems": [{"system": s.system, "standing": s.standing, "why": _told(s.why)} for s in log.systems],
        "readings": [_flat(row) for row in log.readings],
        "work": [_flat(row) for row in log.work],
        "parts": [_flat(row) for row in log.parts],
        "sessions": [_flat(one) for one in log.sessions],
        "left_out": asdict(log.left_out),
    }


def _group(group: Group) -> dict[str, Any]:
    return {"title": group.title, "rows": _told(group.rows)}


def _told(rows: tuple[Told, ...]) -> list[dict[str, Any]]:
    return [{"text": r.text, "detail": r.detail, "quote": r.quote, "at": _spot(r.spot)} for r in rows]


def _spot(spot: Spot | None) -> dict[str, str] | None:
    return None if spot is None else {"said": spot.said, "anchor": spot.anchor}


def _flat(row: Any) -> dict[str, Any]:
    data: dict[str, Any] = asdict(row)
    if "spot" in data:
        data["at"] = data.pop("spot")
    return data
