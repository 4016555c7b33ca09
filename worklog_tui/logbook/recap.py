"""Since last time: what was done, found and measured in a session, what is open, and what was to come next."""

from __future__ import annotations

from collections.abc import Sequence

from worklog_tui.logbook.outcomes import Recap
from worklog_tui.logbook.readings import TAKEN
from worklog_tui.model import Fact, Finding, FollowUp, History, OpenItem, Reading, SessionRecord, Suspect, Work

PLANS = ("to do", "fallback")


def recap(history: History, items: Sequence[OpenItem], session: int | None = None) -> Recap:
    """The recap of the last session, or of the one with that number."""
    number = session if session is not None else len(history.sessions)
    if not 1 <= number <= len(history.sessions):
        return Recap(0, None)
    return of_session(history.sessions[number - 1], number, items)


def of_session(record: SessionRecord, number: int, items: Sequence[OpenItem]) -> Recap:
    """The recap of one session with the items of its machine."""
    still = [i for i in items if i.state in ("open", "left so")]
    return Recap(
        number,
        record.session.start,
        _last_of_each(record.facts, Work),
        tuple(f for f in record.facts if isinstance(f, Finding | Suspect)),
        tuple(f for f in record.facts if isinstance(f, Reading) and f.role in TAKEN),
        tuple(still),
        tuple(i for i in items if i.state == "awaited"),
        tuple(i for i in items if i.state == "done" and i.closed is not None and i.closed.session == number),
        _planned(record.facts, still),
    )


def _last_of_each(facts: Sequence[Fact], kind: type[Work]) -> tuple[Work, ...]:
    """Each work once, where it was said first."""
    seen: dict[tuple[str, str], Work] = {}
    for fact in facts:
        if isinstance(fact, kind):
            seen.setdefault((fact.action, fact.name or fact.part.lower()), fact)
    return tuple(seen.values())


def _planned(facts: Sequence[Fact], still: Sequence[OpenItem]) -> tuple[OpenItem, ...]:
    """The open items that were told of in the session as a plan, in the order of the last telling."""
    said = [f.key for f in facts if isinstance(f, FollowUp) and f.reason in PLANS]
    rank = {key: n for n, key in enumerate(said)}
    told = [(max(rank[a] for a in i.anchors if a in rank), i) for i in still if any(a in rank for a in i.anchors)]
    return tuple(item for _, item in sorted(told, key=lambda row: row[0]))
