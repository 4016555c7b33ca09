"""Open items: one fold over what was said and decided. (state, change) -> state."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import replace
from functools import reduce

from worklog_tui.logbook.changes import Asked, Change, Decided, Said, changes
from worklog_tui.logbook.closing import deals_with
from worklog_tui.logbook.decided import decide
from worklog_tui.logbook.deeds import RENEW
from worklog_tui.logbook.headed import NEAR, WAITED, heading
from worklog_tui.logbook.matters import Matter, Matters, anchor_text, as_item
from worklog_tui.logbook.mending import ends_stop_gap, puts_something_right, things_of
from worklog_tui.logbook.near_cure import puts_right
from worklog_tui.logbook.raising import one_matter, raised, renewed, sent_for, told_again
from worklog_tui.logbook.reopening import came_back, off_again
from worklog_tui.logbook.same_thing import Thing, marks_agree, of_one_head, one_thing, same, speaks_of, thing
from worklog_tui.model import CommentReading, History, OpenItem, Suspect, Work


def open_items(history: History, comments: Sequence[CommentReading] = ()) -> tuple[OpenItem, ...]:
    """All items of a machine in the order in which they were raised, with what became of each."""
    return as_items(fold(Matters(), changes(history, comments)))


def fold(state: Matters, row: Iterable[Change]) -> Matters:
    """The state after all the changes; the one before stays as it is."""
    return reduce(_taken_in, row, state.copy())


def step(state: Matters, change: Change) -> Matters:
    """The state after one change; the one before stays as it is."""
    return fold(state, [change])


def _taken_in(state: Matters, change: Change) -> Matters:
    match change:
        case Said():
            return _proved(_raise(_taken_off(off_again(_close(state, change), change), change), change), change)
        case Asked():
            return _ask(state, change)
        case Decided():
            return decide(state, change.act)


def _close(state: Matters, said: Said) -> Matters:
    also = state.stop_gaps() if ends_stop_gap(said.fact) else set()
    also = also | _waited_for(state, said) | _headed(state, said)
    for position in sorted(also.union(state.near(*things_of(said.fact)))):
        matter = state.all[position]
        if not matter.open:
            continue
        if deals_with(matter, said):
            at = position if matter.into is None else matter.into
            done = replace(state.all[at], state="done", closed=said.place, closed_by=said.fact.key)
            state = state.put(at, done) if state.all[at].open else state
        elif _ordered(matter, said):
            state = state.put(position, replace(matter, state="awaited"))
    return _close_near(state, said)


def _waited_for(state: Matters, said: Said) -> set[int]:
    """Positions of what was wanted another day and is called by the same last word as what was fitted."""
    if not isinstance(said.fact, Work) or said.fact.action not in RENEW:
        return set()
    found = state.called(things_of(said.fact)[0].head)
    return {n for n in found if state.all[n].reason in WAITED and state.all[n].told < said.place.session}


def _headed(state: Matters, said: Said) -> set[int]:
    """Positions of what may be named in the note in which something was put right."""
    if not puts_something_right(said.fact):
        return set()
    return set().union(*(state.called(word) for word in heading(said.note)))


def _close_near(state: Matters, said: Said) -> Matters:
    """The fault that was told last, when it is told a line or two later that it is gone."""
    told = state.just_told(said.place.session, said.line, NEAR)
    faults = sorted((n for n in told if _just_noticed(state.all[n])), key=lambda n: (state.all[n].line, n))
    gone = next((n for n in reversed(faults) if puts_right(state.all[n], said)), None)
    if gone is None:
        return state
    return state.put(gone, replace(state.all[gone], state="done", closed=said.place, closed_by=said.fact.key))


def _just_noticed(matter: Matter) -> bool:
    return matter.open and matter.reason == "fault" and not (matter.firm or matter.suspected or matter.by_hand)


def _taken_off(state: Matters, said: Said) -> Matters:
    """The state that knows what went in this note: the end of a stop-gap is no new one."""
    if not isinstance(said.fact, Work) or said.fact.action != "remove":
        return state
    note = said.place.note
    before = state.gone[1] if state.gone[0] == note else ()
    state.gone = (note, (*before, *things_of(said.fact)))
    return state


def _ordered(matter: Matter, said: Said) -> bool:
    fact = said.fact
    wanted = matter.firm and matter.state == "open" and matter.reason in ("part needed", "temporary", "fault")
    return wanted and isinstance(fact, Work) and fact.action == "order" and speaks_of(things_of(fact)[0], matter.thing)


def _raise(state: Matters, said: Said) -> Matters:
    if (sent := sent_for(said)) is not None:
        return state if _is_asked_for(state, sent) else state.add(sent)
    new = raised(said) or renewed(said)
    if new is not None and not new.open:
        told = any(one_thing(new.thing, state.all[n].thing) for n in state.ever(new.thing))
        return state if told or said.fact.key in state.put_right_by else state.add(new)
    if new is None or (new.reason == "temporary" and _just_gone(state, said, new)):
        return state
    told = new.reason in ("temporary", "part needed", "question")
    near = state.just_told(new.told, new.line, NEAR) if told else set()
    for position in sorted(near | state.alike(new.thing)):
        old = state.all[position]
        at = position if old.into is None else old.into
        if one_matter(old if at == position else replace(old, state=state.all[at].state), new):
            return state.put(at, told_again(state.all[at], new))
    cured = came_back(state, new)
    return state.add(new) if cured is None else state.put(cured, told_again(state.all[cured], new))


def _is_asked_for(state: Matters, sent: Matter) -> bool:
    """Whether something of the words of what was ordered is on the list, or anything that its own note asks for."""
    near = state.ever(sent.thing) | state.just_told(sent.told, sent.line, 0)
    return any(state.all[n].firm and state.all[n].open for n in near)


def _proved(state: Matters, said: Said) -> Matters:
    """The state with a suspicion done whose cause is named when it is put right: so it was the jet."""
    position = state.holding(anchor_text(said.fact.key)) if isinstance(said.fact, Suspect) else None
    just = position is not None and state.all[position].raised == said.place
    proves = position is not None and state.put_right.proves(said, just)
    state.put_right.take_in(said)
    if position is None or not proves or not state.all[position].suspected or not state.all[position].open:
        return state
    done = replace(state.all[position], state="done", closed=said.place, closed_by=said.fact.key)
    return state.put(position, done)


def _just_gone(state: Matters, said: Said, new: Matter) -> bool:
    return state.gone[0] == said.place.note and any(same(one, new.thing) for one in state.gone[1])


def _ask(state: Matters, asked: Asked) -> Matters:
    reading = asked.reading
    about = thing(reading.about)
    for position in sorted(state.alike(about)):
        old = state.all[position]
        if old.firm and old.open and same(old.thing, about):
            return state.put(position, replace(old, people=old.people + asked.people, comment=reading.comment.number))
    new = Matter(about, reading.about, "question", (), None, quote=reading.comment.words)
    return state.add(replace(new, comment=reading.comment.number, people=asked.people))


def as_items(state: Matters) -> tuple[OpenItem, ...]:
    """The items as the other rooms take them; a noticed one keeps that state until it is done."""
    return tuple(as_item(m) for m in state.all if _shown(m, state))


def _shown(matter: Matter, state: Matters) -> bool:
    """Whether a matter is an item: a suspicion only when it was settled, and nothing put right for now only."""
    if matter.state == "merged" or (matter.suspected and matter.open):
        return False
    if matter.firm or matter.open:
        return True
    near = (state.all[n] for n in state.near(matter.thing))
    return not any(_holds_back(m) and _still_there(matter.thing, m.thing) for m in near)


def _holds_back(m: Matter) -> bool:
    """Whether it tells that the last word on its thing is not spoken; a job that is due on it anyway does not."""
    return m.firm and m.state != "merged" and m.reason != "to do"


def _still_there(done: Thing, still: Thing) -> bool:
    """Whether what is open is the same thing, or the thing that it is on."""
    if speaks_of(done, still) or (len(still.words) > 1 and still.words <= done.words and marks_agree(done, still)):
        return True
    return of_one_head(done, still) and (done.words <= still.words or still.words <= done.words)
