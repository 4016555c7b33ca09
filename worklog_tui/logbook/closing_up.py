"""Closing up: what was begun and not heard finished, collected silently and asked at the end, one key each."""

from __future__ import annotations

from collections.abc import Sequence

from worklog_tui.logbook.before_start import off_key
from worklog_tui.logbook.clashes import clashes, told
from worklog_tui.logbook.how_left import how_left, left_key
from worklog_tui.logbook.matters import anchor_text
from worklog_tui.logbook.mending import things_of
from worklog_tui.logbook.off_machine import off_machine
from worklog_tui.logbook.outcomes import ClosingUp, Question
from worklog_tui.logbook.same_thing import same, speaks_of
from worklog_tui.logbook.unheard import for_another_time, unheard
from worklog_tui.model import Fact, Finding, History, OpenItem, Place, Reading, Suspect, Work

MOST = 60
"So many answers at most for one sitting, the weightiest first."
NEAR = 6
"Lines within which the result of a check is told."
AGAIN = {
    "off": "back on", "apart": "together again", "disconnected": "connected again", "loosened": "tightened again",
    "drained": "filled again",
}  # fmt: skip
"The answer that says that what was done is undone."
_WEIGHTS = ("clash", "wording", "doubtful", "off", "left", "check", "noticed", "announced")


def closing_up(
    history: History, items: Sequence[OpenItem], cleared: frozenset[str] = frozenset(), session: int | None = None,
    most: int = MOST,
) -> ClosingUp:  # fmt: skip
    """What to ask about a session, by default the last one; nothing has to be answered."""
    number = session if session is not None else len(history.sessions)
    if not 1 <= number <= len(history.sessions):
        return ClosingUp(())
    asked = [
        *_clashes(history), *_doubtful(history, number), *_off(history, number), *_left(history, number),
        *_checks(history, number), *_items(history, items, number), *_promised(history, number),
    ]  # fmt: skip
    open_ones = [one for one in asked if one.key not in cleared]
    open_ones.sort(key=lambda one: _WEIGHTS.index(one.kind))
    return ClosingUp(tuple(open_ones[:most]), max(len(open_ones) - most, 0))


def _clashes(history: History) -> list[Question]:
    """What two computers made of one thing, whatever the session: it came with a merge."""
    words = {note.uid: note.words for record in history.sessions for note in record.notes}
    found = []
    for one in clashes(history.acts):
        note = one.later.target.split("/", 1)[0]
        about = one.later.value.get("about", "") if isinstance(one.later.value, dict) else ""
        asks = (
            f"Two computers changed {about or 'this'} without knowing of each other: {told(one.earlier)}, or"
            f" {told(one.later)}. The second counts now; is that right?"
        )
        place = history.place(note) if note in words else None
        said = ("yes", "the first")
        found.append(Question(one.key, "clash", asks, place, words.get(note, ""), said, clash=one))
    return found


def _doubtful(history: History, number: int) -> list[Question]:
    found = []
    for fact in history.sessions[number - 1].questions:
        gone = fact.by_hand
        asks = (
            "The note was edited and these words are gone; does what you said about them still hold?" if gone
            else "Was this meant?"
        )  # fmt: skip
        place = history.place(fact.main.note)
        kind = "wording" if gone else "doubtful"
        key = f"{anchor_text(fact.key)}"
        found.append(Question(key, kind, asks, place, fact.quote, ("yes", "no"), fact.key, read=fact))
    return found


def _off(history: History, number: int) -> list[Question]:
    found = []
    for one in off_machine(history):
        if one.place.session <= number:
            tried = ", and a start was tried since" if one.tried else ""
            asks = f"{one.work.part}: last heard {one.how}{tried}. Is it still so?"
            said = (AGAIN[one.how], "still so")
            found.append(Question(off_key(one), "off", asks, one.place, one.told, said, one.work.key))
    return found


def _left(history: History, number: int) -> list[Question]:
    return [
        Question(left_key(one), "left", f"{one.state}{f', {one.about}' if one.about else ''}: {one.asks}", one.place,
                 one.told, ("still so", "no longer"))
        for one in how_left(history)
        if one.place.session <= number
    ]  # fmt: skip


def _checks(history: History, number: int) -> list[Question]:
    """Checks and tests of which no result was heard in the lines that follow."""
    record = history.sessions[number - 1]
    facts = [(fact, history.place(fact.main.note)) for fact in record.facts]
    words = {note.uid: note.words for note in record.notes}
    found: dict[tuple[str, str], Question] = {}
    for fact, place in facts:
        if isinstance(fact, Work) and fact.action in ("check", "test") and not _answered(fact, place, facts):
            asks = f"What came of it: {fact.part} {'tested' if fact.action == 'test' else 'looked at'}?"
            key = anchor_text(fact.key)
            said = ("good", "bad", "nothing to say")
            found[fact.action, fact.part.casefold()] = Question(
                key, "check", asks, place, words[place.note], said, fact.key
            )
    return list(found.values())


def _answered(check: Work, place: Place, facts: Sequence[tuple[Fact, Place]]) -> bool:
    part = things_of(check)[0]
    for fact, where in facts:
        if not isinstance(fact, Finding | Reading | Suspect):
            continue
        if where.order == place.order:
            return True
        near = 0 < where.order - place.order <= NEAR
        told = things_of(fact)[0]
        if near and (where.order - place.order <= 1 or same(told, part) or speaks_of(told, part)):
            return True
    return False


def _items(history: History, items: Sequence[OpenItem], number: int) -> list[Question]:
    """What was only noticed, and what was announced for that session and not heard done."""
    found, words = [], {note.uid: note.words for note in history.sessions[number - 1].notes}
    for item in items:
        if item.raised is None or item.raised.session != number or not item.anchors:
            continue
        key = f"{anchor_text(item.anchors[0])}"
        if item.state == "noticed":
            answers: tuple[str, ...] = ("come back to it", "leave it so", "done")
            asks = f"{item.about}: is there something to be done about it?"
            found.append(Question(f"{key} noticed", "noticed", asks, item.raised, item.quote, answers, item=item))
        elif item.state == "open" and item.reason == "to do" and not for_another_time(words.get(item.raised.note, "")):
            asks, answers = f"{item.about}: was it done?", ("done", "not yet")
            found.append(Question(f"{key} announced", "announced", asks, item.raised, item.quote, answers, item=item))
    return found


def _promised(history: History, number: int) -> list[Question]:
    """What was announced for that session and not heard done."""
    found = []
    for job in unheard(history, number):
        asks = f"{job.part}: you were going to {job.verb} it; was it done?"
        place = history.place(job.note.uid)
        key = f"{job.note.uid} promised {job.action} {job.part}"
        found.append(Question(key, "announced", asks, place, job.note.words, ("done", "not yet"), promised=job))
    return found
