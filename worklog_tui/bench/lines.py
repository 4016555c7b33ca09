"""Finding lines of a machine's log by session number and time, as they are printed: 2/1:23, 2/1:23-2:05, or 2."""

from __future__ import annotations

import re
from collections.abc import Sequence
from typing import TYPE_CHECKING

from worklog_tui.bench.acting import CannotAct
from worklog_tui.model import Fact, History, Instant, Note, OpenItem, SessionRecord

if TYPE_CHECKING:
    from worklog_tui.bench.desk import Desk

HOW = "name it by session and time as the timeline prints them, such as 2/1:23"


def lines(known: History, said: str) -> list[Note]:
    """A run of lines: all at one time, from one time to another, or a whole session."""
    number, _, times = said.strip().partition("/")
    record = session(known, number)
    if not times:
        return list(record.notes)
    first, dash, last = times.partition("-")
    if dash:
        start, end = _at(record, first, said)[0], _at(record, last, said)[-1]
        if end < start:
            raise CannotAct(f"“{said}” ends before it begins.")
        return list(record.notes[start : end + 1])
    time, _, which = times.partition("/")
    found = _at(record, time, said)
    if which:
        if not which.isdecimal() or not 1 <= int(which) <= len(found):
            raise CannotAct(f"At {time} there are {len(found)} lines; “{which}” is none of them.")
        found = [found[int(which) - 1]]
    return [record.notes[place] for place in found]


def line(known: History, said: str) -> Note:
    """One line; a third number tells apart those of one time: 2/14:05/3."""
    found = lines(known, said)
    if len(found) != 1:
        raise CannotAct(f"“{said}” means {len(found)} lines; name one of them, such as {said.strip()}/1.")
    return found[0]


def _at(record: SessionRecord, time: str, said: str) -> list[int]:
    found = [place for place, note in enumerate(record.notes) if note.said_at == time.strip()]
    if not found:
        raise CannotAct(f"There is no line “{said}”: {HOW}.")
    return found


def session(known: History, number: str) -> SessionRecord:
    """A session by its number."""
    if not number.strip().isdecimal() or not 1 <= int(number) <= len(known.sessions):
        raise CannotAct(f"There is no session “{number}”; {known.machine.name} has {len(known.sessions)}.")
    return known.sessions[int(number) - 1]


def fact_in(known: History, note: Note, which: int | None, kind: str = "") -> Fact:
    """A fact of a line, by its number there (from 1) or its kind; the only one when neither is said."""
    record = next(one for one in known.sessions if one.session.uid == note.session)
    facts = [f for f in (*record.facts, *record.questions) if f.main.note == note.uid and kind in ("", f.kind)]
    facts.sort(key=lambda f: (f.main.start, f.main.end, f.kind, f.nth))
    if which is not None and 1 <= which <= len(facts):
        return facts[which - 1]
    if which is not None or len(facts) != 1:
        raise CannotAct(_which(facts))
    return facts[0]


def _which(facts: Sequence[Fact]) -> str:
    from worklog_tui.reports.sentence import briefly

    if not facts:
        return "Nothing of that kind was read from the line."
    told = "; ".join(f"{number}: {briefly(fact)}" for number, fact in enumerate(facts, 1))
    return f"Say which of the line's facts with --which: {told}."


def item_called(items: Sequence[OpenItem], words: str) -> OpenItem:
    """The item that is called so, or the only one that is called something with all these words."""
    wanted = words.casefold().split()
    exact = [one for one in items if one.about.casefold().split() == wanted]
    found = exact or [one for one in items if all(word in one.about.casefold() for word in wanted)]
    still = [one for one in found if one.state != "done"] or found
    if len(still) != 1 or not wanted:
        named = "; ".join(one.about for one in still[:8]) or "see the list of open items"
        raise CannotAct(f"“{words}” means {len(still)} items: {named}.")
    return still[0]


def seconds(said: str) -> int:
    """How far lines are moved in time: `30`, `-30` (earlier) or `-1:30` (minutes and seconds)."""
    found = re.fullmatch(r"([-+−]?)\s*(?:(\d{1,4}):)?(\d{1,6})", said.strip())
    if found is None:
        raise CannotAct("Say by how many seconds, such as 30, or -1:30 for a minute and a half earlier.")
    size = int(found[2] or 0) * 60 + int(found[3])
    return -size if found[1] in ("-", "−") else size


def moment(desk: Desk, said: str) -> Instant | None:
    """A day, or a day and time, at this place, as an instant; None for "unknown"."""
    from datetime import datetime

    from worklog_tui.notes.day_said import day_said

    text = " ".join(said.split())
    if text.casefold() in ("unknown", "not known"):
        return None
    try:
        told = datetime.fromisoformat(text)
    except ValueError as fault:
        day = day_said(text, desk.now().date())
        if day is not None:
            return Instant.of(desk.at_home(datetime(day.year, day.month, day.day)), known="assumed")
        how = "say it as yesterday, 1 May, 2031-05-01 or “2031-05-01 14:05”, or unknown"
        raise CannotAct(f"“{said}” is no day that is past; {how}.") from fault
    at_home = told if told.tzinfo is not None else desk.at_home(told)
    return Instant.of(at_home, known="header" if len(text) > 10 else "assumed")
