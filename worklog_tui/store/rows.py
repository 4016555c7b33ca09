"""Rows of the tables to the nouns of the model, and back."""

from __future__ import annotations

import json
import sqlite3
from dataclasses import asdict, fields, replace
from typing import Any

from worklog_tui.model import Act, Fact, Instant, Machine, Note, Session, SpecifiedValue
from worklog_tui.model.facts import KINDS, Span, to_plain

NOTE_COLUMNS = (
    "note.uid, session.uid AS session, note.words, note.at, note.said_at, note.track, note.arrival, note.revision,"
    " note.utc, note.zone, note.utc_offset, note.known, note.film, note.struck"
)
SESSION_COLUMNS = (
    "session.id, session.uid, machine.uid AS machine, session.arrival, session.source, session.utc, session.zone,"
    " session.utc_offset, session.known"
)


def instant(row: sqlite3.Row | dict[str, Any]) -> Instant | None:
    """The instant of a row, None when it has none."""
    return Instant(row["utc"], row["zone"], row["utc_offset"], row["known"]) if row["utc"] else None


def instant_values(moment: Instant | None) -> tuple[str | None, str, int, str]:
    """utc, zone, utc_offset and known, as the tables hold them."""
    return (moment.utc, moment.zone, moment.offset, moment.known) if moment else (None, "", 0, "clock")


def note(row: sqlite3.Row) -> Note:
    """A row of NOTE_COLUMNS."""
    uid, session, words, at, said_at, track, arrival, revision, utc, zone, offset, known, film, struck = row
    moment = Instant(utc, zone, offset, known) if utc else None
    return Note(uid, session, words, at, said_at, track, arrival, revision, moment, film, bool(struck))


def session(row: sqlite3.Row) -> Session:
    """A row of SESSION_COLUMNS."""
    return Session(row["uid"], row["machine"], instant(row), row["source"], row["arrival"])


def machine(row: sqlite3.Row) -> Machine:
    """A row of uid, name and card."""
    return replace(machine_of(json.loads(row["card"])), uid=row["uid"], name=row["name"])


_CARD = frozenset(field.name for field in fields(Machine))


def machine_of(data: dict[str, Any]) -> Machine:
    """The machine of a card's JSON data; keys that a newer program wrote are passed over."""
    card = {key: value for key, value in data.items() if key in _CARD}
    card["firing_order"] = tuple(card.get("firing_order", ()))
    card["specified"] = tuple(SpecifiedValue(**value) for value in card.get("specified", ()))
    return Machine(**{"name": "", **card})


def card(machine: Machine) -> str:
    """The card of a machine as JSON text."""
    return json.dumps(asdict(machine), ensure_ascii=False, sort_keys=True)


def act(row: sqlite3.Row | dict[str, Any]) -> Act:
    """A whole row of act, or the same as a table."""
    moment = instant(row)
    assert moment is not None, "the table asks for it"
    value = None if row["value"] is None else json.loads(row["value"])
    seen = tuple(json.loads(row["seen"]))
    return Act(row["uid"], row["device"], row["counter"], moment, row["verb"], row["target"], seen, value)


_UNSAID = {"nth": 0, "evidence": [], "quote": "", "rule": "", "confidence": 1.0, "filled": [], "name": "", "state": ""}
"Fields that are left out of the JSON text while they hold this: a third of the time of loading."


def fact_data(fact: Fact) -> str:
    """A fact as JSON text, without the fields that say nothing."""
    data = to_plain(fact)
    return json.dumps({key: value for key, value in data.items() if _UNSAID.get(key) != value}, ensure_ascii=False)


def facts(texts: list[str]) -> list[Fact]:
    """The facts of many JSON texts."""
    return [_fact(data) for data in json.loads(f"[{','.join(texts)}]")]


def _fact(data: dict[str, Any]) -> Fact:
    kind = KINDS[data.pop("kind")]
    data["main"] = Span(*data["main"])
    if "evidence" in data:
        data["evidence"] = tuple(Span(*span) for span in data["evidence"])
    if "filled" in data:
        data["filled"] = tuple(data["filled"])
    if "value" in data and isinstance(data["value"], list):
        data["value"] = tuple(data["value"])
    return kind(**data)
