"""What opens an item again that had been dealt with: the same fault found once more, or the same part off once more."""

from __future__ import annotations

from dataclasses import replace

from worklog_tui.logbook.changes import Said
from worklog_tui.logbook.cures import is_whole
from worklog_tui.logbook.deeds import RENEW
from worklog_tui.logbook.headed import NEAR
from worklog_tui.logbook.matters import Matter, Matters
from worklog_tui.logbook.mending import things_of
from worklog_tui.logbook.raising import AGAIN, back_again
from worklog_tui.logbook.same_thing import same
from worklog_tui.logbook.words import raw_words, stem
from worklog_tui.model import Again, Place, Work

OFF_AGAIN = {"remove": "off again", "strip": "apart again", "disconnect": "off again"}
_PUT_RIGHT = ("fault", "part needed", "temporary")
"Reasons of what is put right on a part, so that taking the part off once more tells that it is not."


def came_back(state: Matters, new: Matter) -> int | None:
    """The position of a fault that was only noticed and then cured, and that another session or `again` tells anew."""
    if new.reason != "fault" or new.firm or new.raised is None:
        return None
    once_more = bool(AGAIN.intersection(raw_words(f"{new.bad} {new.quote}")))
    for position in sorted(state.ever(new.thing), reverse=True):
        old = state.all[position]
        cured = _cured_before(old, new.raised, once_more) and old.reason == "fault" and old.quantity == new.quantity
        if cured and same(old.thing, new.thing) and back_again(old, new) and _one_trouble(old, new):
            return position
    return None


def _one_trouble(old: Matter, new: Matter) -> bool:
    """Whether it is one trouble: an engine has many, told by other words."""
    return not is_whole(old.thing) or not set(map(stem, raw_words(old.bad))).isdisjoint(map(stem, raw_words(new.bad)))


def off_again(state: Matters, said: Said) -> Matters:
    """The state in which what was put right on a part is open again, since the part is off or apart once more."""
    fact = said.fact
    if not isinstance(fact, Work) or fact.action not in OFF_AGAIN:
        return state
    part = things_of(fact)[0]
    once_more = bool(AGAIN.intersection(raw_words(said.note)))
    for position in sorted(state.ever(part)):
        old = state.all[position]
        put_right = old.firm and old.reason in _PUT_RIGHT and _cured_before(old, said.place, once_more)
        if put_right and same(part, old.thing):
            why = Again(OFF_AGAIN[fact.action], said.place, "", old.closed)
            opened = replace(old, state="open", closed=None, closed_by=None, again=why)
            state = state.put(position, replace(opened, told=said.place.session, line=said.line))
    return state


def is_back(matter: Matter, work: Work) -> bool:
    """Whether what is open again because the part came off is dealt with: the part is back."""
    off = matter.again is not None and matter.again.how in OFF_AGAIN.values()
    return off and work.action in RENEW | {"connect", "tighten"} and same(things_of(work)[0], matter.thing)


def _cured_before(old: Matter, now: Place, once_more: bool) -> bool:
    """Whether a matter was dealt with by what was said, in an earlier session, or some lines ago where this is said
    to be once more: within one session a thing is looked at and taken off many a time for other reasons.
    """
    if old.state != "done" or old.by_hand or old.suspected or old.into is not None or old.closed is None:
        return False
    return old.closed.session < now.session or (once_more and now.order - old.closed.order > NEAR)
