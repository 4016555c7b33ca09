"""What the commands on a logbook print with --json: timeline, readings, recap and advice."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from worklog_tui.logbook.outcomes import Limits, Point, Recap, Series
from worklog_tui.logbook.timeline import TimelineLine, TimelineSession
from worklog_tui.model import Advice, Cause, Evidence, Fact, History, SystemStanding
from worklog_tui.reports.json_out import fact, next_step, open_item, value, where


def timeline(sessions: Sequence[TimelineSession]) -> list[dict[str, Any]]:
    """Sessions with their lines and facts."""
    return [
        {
            "session": one.number,
            "start": one.session.start.utc if one.session.start else None,
            "lines": [_line(line) for line in one.lines],
        }
        for one in sessions
    ]


def _line(line: TimelineLine) -> dict[str, Any]:
    return {
        "at": line.place.at,
        "words": line.note.words,
        "facts": [fact(f, line.place) for f in line.facts],
        "questions": [fact(f, line.place) for f in line.questions],
    }


def readings(series: Sequence[Series]) -> list[dict[str, Any]]:
    """Series with their points and limits."""
    return [
        {
            "quantity": one.quantity,
            "subject": one.subject,
            "should_be": _limits(one.limits),
            "readings": [_point(p) for p in one.points],
        }
        for one in series
    ]


def _point(point: Point) -> dict[str, Any]:
    reading = point.reading
    return {
        "at": where(point.place),
        "value": value(reading.value),
        "unit": reading.unit,
        "condition": reading.condition or None,
        "role": reading.role,
        "doubtful": reading.doubtful,
        "compares": point.verdict or None,
    }


def _limits(limits: Limits | None) -> dict[str, Any] | None:
    if limits is None:
        return None
    given = {"nominal": limits.nominal, "low": limits.low, "high": limits.high}
    return given | {"unit": limits.unit, "text": limits.text, "source": limits.source or None}


def recap(found: Recap, history: History, advised: Advice) -> dict[str, Any]:
    """The recap, and the first steps."""

    def rows(facts: Sequence[Fact]) -> list[dict[str, Any]]:
        return [fact(f, history.place(f.main.note)) for f in facts]

    return {
        "session": found.session,
        "start": found.start.utc if found.start else None,
        "done": rows(found.done),
        "found": rows(found.found),
        "measured": rows(found.measured),
        "planned": [open_item(i) for i in found.planned],
        "awaited": [open_item(i) for i in found.awaited],
        "closed": [open_item(i) for i in found.closed],
        "open": [open_item(i) for i in found.open],
        "next_steps": [next_step(s) for s in advised.steps],
    }


def advice(found: Advice) -> dict[str, Any]:
    """The advice with systems and causes."""
    return {
        "complaint": found.complaint or None,
        "next_steps": [next_step(s) for s in found.steps],
        "systems": [_system(s) for s in found.systems],
        "causes": [_cause(c) for c in found.causes],
        "remark": found.remark or None,
        "instead": found.instead or None,
        "asks": list(found.asks),
        "own_plan": list(found.plan),
        "standing": found.standing or None,
    }


def _system(one: SystemStanding) -> dict[str, Any]:
    return {"system": one.system, "standing": one.standing, "evidence": [_evidence(e) for e in one.evidence]}


def _cause(one: Cause) -> dict[str, Any]:
    return {
        "cause": one.name,
        "system": one.system,
        "grade": one.grade,
        "chance": round(one.chance, 4),
        "evidence": [_evidence(e) for e in one.evidence],
    }


def _evidence(one: Evidence) -> dict[str, Any]:
    return {"words": one.words, "at": where(one.place), "weight": round(one.weight, 3), "trust": round(one.trust, 3)}
