"""Open items: one fold over what was said and decided. (state, change) -> state."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import replace
from functools import reduce

from worklog_tui.logbook.changes import Asked, Change, Decided, Said, changes
from worklog_tui.logbook.closing import deals_with, things_of
from worklog_tui.logbook.matters import Matter, Matters
from worklog_tui.logbook.same_thing import Thing, marks_agree, same, speaks_of, thing
from worklog_tui.model import CommentReading, Fact, Finding, FollowUp, History, OpenItem, Suspect

_WEIGHT = {"question": 0, "fallback": 1, "to do": 2, "fault": 3, "part needed": 4, "temporary": 5}
SUSPICION = "suspicion"


def open_items(history: History, comments: Sequence[CommentReading] = ()) -> tuple[OpenItem, ...]:
    """All items of a machine in the order in which they were raised, with what became of each."""
    return as_items(fold(Matters(), changes(history, comments)))


def fold(state: Matters, row: Iterable[Change]) -> Matters:
    """The state after all the changes."""
    return reduce(step, row, state)


def step(state: Matters, change: Change) -> Matters:
    """The state after one change."""
    match change:
        case Said():
            return _raise(_close(state, change), change)
        case Asked():
            return _ask(state, change)
        case Decided():
            from worklog_tui.logbook.decided import decide

            return decide(state, change.act)


def _close(state: Matters, said: Said) -> Matters:
    for position in state.near(*things_of(said.fact)):
        matter = state.all[position]
        if matter.open and deals_with(matter, said):
            state = state.put(position, replace(matter, state="done", closed=said.place, closed_by=said.fact.key))
    return state


def _raise(state: Matters, said: Said) -> Matters:
    new = _matter(said)
    if new is None:
        return state
    for position in state.near(new.thing):
        old = state.all[position]
        if _one(old, new):
            return state.put(position, _told_again(old, new))
    return state.add(new)


def _matter(said: Said) -> Matter | None:
    fact = said.fact
    told = {
        "anchors": (fact.key,),
        "raised": said.place,
        "line": said.line,
        "told": said.place.session,
        "quote": fact.quote,
    }
    match fact:
        case FollowUp():
            return Matter(thing(fact.topic, fact.name), fact.topic, fact.reason, **told)  # type: ignore[arg-type]
        case Finding(verdict="bad"):
            return Matter(thing(fact.part, fact.name), fact.part, "fault", firm=False, bad=fact.condition, **told)  # type: ignore[arg-type]
        case Suspect(standing="suspected"):
            return Matter(thing(fact.cause, fact.name), fact.cause, SUSPICION, firm=False, **told)  # type: ignore[arg-type]
    return None


def _one(old: Matter, new: Matter) -> bool:
    """Whether a telling is of a matter that stands already."""
    if not same(old.thing, new.thing):
        return False
    if old.by_hand and not old.open:
        return False
    if old.firm != new.firm and not old.open:
        return False
    if old.firm and new.firm:
        return old.reason == new.reason or _akin(old, new)
    if SUSPICION in (old.reason, new.reason):
        return old.reason == new.reason
    return old.firm or not new.firm


def _akin(old: Matter, new: Matter) -> bool:
    """A question or a fallback is a matter of its own beside the part that it is about."""
    apart = {"question", "fallback"}
    if (old.reason in apart) != (new.reason in apart) or {old.reason, new.reason} == apart:
        return False
    deeds = old.thing.deed.actions, new.thing.deed.actions
    return not deeds[0] or not deeds[1] or bool(deeds[0] & deeds[1])


def _told_again(old: Matter, new: Matter) -> Matter:
    merged = replace(old, anchors=(*old.anchors, *new.anchors), told=new.told, line=new.line, bad=old.bad or new.bad)
    if new.firm and (not old.firm or _WEIGHT[new.reason] > _WEIGHT[old.reason]):
        merged = replace(merged, about=new.about if not old.firm else old.about, thing=new.thing if not old.firm else old.thing,
                         reason=new.reason, firm=True, quote=new.quote)  # fmt: skip
    if not old.open:
        merged = replace(merged, state="open", closed=None, closed_by=None)
    return merged


def _ask(state: Matters, asked: Asked) -> Matters:
    reading = asked.reading
    new = Matter(thing(reading.about), reading.about, "question", (), None, comment=reading.comment.number, people=asked.people,
                 quote=reading.comment.words)  # fmt: skip
    for position in state.near(new.thing):
        old = state.all[position]
        if old.firm and old.open and same(old.thing, new.thing):
            return state.put(position, replace(old, people=old.people + asked.people, comment=new.comment))
    return state.add(new)


def as_items(state: Matters) -> tuple[OpenItem, ...]:
    """The items as the other rooms take them; a noticed one keeps that state until it is done."""
    still = [m for m in state.all if m.firm and m.open]
    return tuple(_item(m) for m in state.all if m.reason != SUSPICION and (m.firm or m.open or not _hidden(m, still)))


def _hidden(matter: Matter, still: Sequence[Matter]) -> bool:
    """A bad finding put right for now only: the same thing is still on the list."""
    return any(speaks_of(matter.thing, m.thing) or _head_only(matter.thing, m.thing) for m in still)


def _head_only(a: Thing, b: Thing) -> bool:
    return bool(a.head) and a.head == b.head and marks_agree(a, b) and (a.words <= b.words or b.words <= a.words)


def _item(m: Matter) -> OpenItem:
    state = m.state if m.firm or m.state == "done" else "noticed"
    return OpenItem(
        m.anchors, m.about, m.thing.name, m.reason, state, m.raised, m.closed, m.closed_by, m.quote, m.comment, m.people
    )


def fact_of(history: History) -> dict[str, Fact]:
    """Facts by their anchor as text, to show what closed an item."""
    from worklog_tui.logbook.matters import anchor_text

    return {anchor_text(f.key): f for f in history.facts()}
