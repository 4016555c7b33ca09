"""What `extract --json` prints: facts, open items, next steps and comments, as `extract.schema.json` describes them."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import Any

from worklog_tui.model import (
    Advice,
    Again,
    CommentReading,
    Fact,
    Finding,
    FollowUp,
    History,
    Number,
    OpenItem,
    Place,
    Reading,
    Step,
    Suspect,
    Trait,
    Value,
    Work,
)  # fmt: skip
from worklog_tui.reports.sentence import briefly


def extraction(
    history: History, items: Sequence[OpenItem], advice: Advice, comments: Sequence[CommentReading]
) -> dict[str, Any]:
    """The whole of one machine as JSON data."""
    return {
        "facts": facts(history),
        "questions": facts(history, doubtful=True),
        "open_items": open_items(items, history),
        "next_steps": [next_step(s) for s in advice.steps],
        "comments": [comment(c) for c in comments],
    }


def facts(history: History, *, doubtful: bool = False) -> list[dict[str, Any]]:
    """The facts of all sessions, or those below the confidence line."""
    rows = (f for record in history.sessions for f in (record.questions if doubtful else record.facts))
    return [fact(f, history.place(f.main.note)) for f in rows]


def fact(one: Fact, place: Place) -> dict[str, Any]:
    """One fact: where it was said, what it is, and the words that it was read from."""
    data: dict[str, Any] = {"session": place.session, "at": place.at, "kind": one.kind, **_fields(one)}
    if one.filled:
        data["filled"] = list(one.filled)
    return data | {"confidence": round(one.confidence, 3), "quote": one.quote, "pattern": one.rule}


def _fields(one: Fact) -> dict[str, Any]:
    match one:
        case Reading():
            data = {
                "quantity": one.quantity,
                "value": value(one.value),
                "unit": one.unit,
                "subject": one.subject,
                "role": one.role,
            }
            return data | _said(condition=one.condition, doubtful=one.doubtful, name=one.name, source=one.source)
        case Finding():
            data = {"part": one.part, "condition": one.condition, "verdict": one.verdict}
            return data | _said(name=one.name, state=one.state)
        case Work():
            return {
                "action": one.action,
                "part": one.part,
                **_said(name=one.name),
                **({"with": one.used} if one.used else {}),
            }
        case Suspect():
            return {"cause": one.cause, "standing": one.standing, **_said(name=one.name)}
        case FollowUp():
            return {"about": one.topic, "reason": one.reason, **_said(name=one.name)}
        case Trait():
            return {"trait": one.trait, "value": one.value, **_said(source=one.source, doubtful=one.doubtful)}
        case Number():
            return {"number": one.number, "of": one.of, **_said(source=one.source)}
    return {}


def _said(**fields: Any) -> dict[str, Any]:
    return {name: content for name, content in fields.items() if content}


def value(amount: Value) -> float | str | list[float]:
    """A value as JSON: whole numbers without a point, a range as a list."""
    if isinstance(amount, str):
        return amount
    if isinstance(amount, tuple):
        return [_plain(v) for v in amount]
    return _plain(amount)


def _plain(number: float) -> float:
    rounded = round(float(number), 9)
    return int(rounded) if rounded.is_integer() else rounded


def open_items(items: Iterable[OpenItem], history: History) -> list[dict[str, Any]]:
    """All items but what was only noticed."""
    known = {f.key: f for f in history.facts()}
    return [open_item(i, known.get(i.closed_by) if i.closed_by else None) for i in items if i.state != "noticed"]


def open_item(item: OpenItem, closer: Fact | None = None) -> dict[str, Any]:
    """One item, with what dealt with it; what is awaited or left so on purpose is open."""
    data: dict[str, Any] = {
        "about": item.about,
        "reason": item.reason,
        "state": "done" if item.state == "done" else "open",
        "raised": where(item.raised),
        "closed": where(item.closed),
    }
    if closer is not None:
        data["closed_by"] = briefly(closer)
    if item.again is not None:
        data["again"] = _again(item.again)
    if item.comment is not None:
        data |= {"comment": item.comment, "people": item.people}
    if item.due is not None:
        data["due"] = _said(day=item.due.day, hours=item.due.hours, event=item.due.event)
    return data | ({"quote": item.quote} if item.quote else {})


def _again(why: Again) -> dict[str, Any]:
    """Why an item that was dealt with is open again."""
    return {"how": why.how, "at": where(why.place), "dealt_with": where(why.dealt_with)} | _said(what=why.what)


def where(place: Place | None) -> list[int | str] | None:
    """A place as `[session, "time"]`."""
    return None if place is None else [place.session, place.at]


def next_step(step: Step) -> dict[str, Any]:
    """One step with its reason, its minutes and its cautions."""
    return {
        "step": step.step,
        "why": step.why,
        "minutes": step.minutes,
        "cautions": list(step.cautions),
        "outcomes": list(step.outcomes),
        "access": list(step.access),
        **({"how": step.how} if step.how else {}),
    }


def comment(reading: CommentReading) -> dict[str, Any]:
    """One comment: what it is, what it is about, the line that answers it, or the one that only perhaps does."""
    at = where(reading.answered)
    sure, perhaps = (None, at) if reading.perhaps else (at, None)
    return {"is": reading.kind, "about": reading.about or None, "answered_at": sure, "perhaps_at": perhaps}


def machines(names: Iterable[str]) -> list[dict[str, str]]:
    """The machines of a logbook."""
    return [{"name": name} for name in names]
