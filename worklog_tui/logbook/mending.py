"""What a piece of work is: of which things it tells, and whether it puts anything right for good."""

from __future__ import annotations

from worklog_tui.logbook.cured_words import is_akin_to, is_of
from worklog_tui.logbook.deeds import MEND, RENEW
from worklog_tui.logbook.same_thing import Thing, thing
from worklog_tui.logbook.words import raw_words
from worklog_tui.model import Fact, Finding, Work


def things_of(fact: Fact) -> tuple[Thing, ...]:
    """The things that a fact is about: the part, and what was put in."""
    first = thing(fact.about, getattr(fact, "name", ""))
    if isinstance(fact, Work) and fact.used:
        return first, thing(fact.used)
    return (first,)


def puts_something_right(fact: Fact) -> bool:
    """Whether the fact tells of a cure, whatever it is of."""
    return (isinstance(fact, Work) and fact.action in MEND) or (isinstance(fact, Finding) and fact.verdict == "good")


def ends_stop_gap(fact: Fact) -> bool:
    """Whether what was taken off is something that only stop-gaps are made of: tape, a clamp, a bottle."""
    off = isinstance(fact, Work) and fact.action == "remove"
    return off and is_akin_to({things_of(fact)[0].head}, "makeshift")


def only_put_back(work: Work) -> bool:
    """Whether the old one only went back on."""
    said = raw_words(work.quote)
    return work.action == "fit" and "back" in said and "new" not in said and not work.used


def is_makeshift(work: Work) -> bool:
    """Whether what was put in holds for now only."""
    used = set(raw_words(work.used))
    return work.action in RENEW | {"connect"} and is_of(used, "makeshift") and "new" not in used
