"""A note that begins with what was left open and tells of a cure: 'That loose cap. Cut the end off, screwed it in.'"""

from __future__ import annotations

from functools import lru_cache

from worklog_tui.logbook.changes import Said
from worklog_tui.logbook.deeds import RENEW
from worklog_tui.logbook.matters import Matter
from worklog_tui.logbook.mending import is_makeshift, only_put_back, puts_something_right
from worklog_tui.logbook.words import one_form, raw_words
from worklog_tui.model import Work

FIRST = 6
"Words with which a note begins and that tell what it is about."
WAITED = ("part needed", "temporary")
"Reasons of what is put right by a part that comes another day."
NEAR = 2
"Lines within which a matter is still being told."


@lru_cache(maxsize=200)
def heading(note: str) -> frozenset[str]:
    """The first words of a note, each in one form."""
    return frozenset(map(one_form, raw_words(note)[:FIRST]))


def same_spot(matter: Matter, said: Said) -> bool:
    """Whether the fact is told where the matter is still being told."""
    return said.place.session == matter.told and said.line - matter.line <= NEAR


def headed(matter: Matter, said: Said) -> bool:
    """Whether a note that tells of a cure begins with what was left open: 'That loose cap. Cut the end off …'."""
    fact, part = said.fact, matter.thing
    apart = matter.suspected or matter.quantity or matter.reason in ("question", "fallback")
    if not matter.firm or apart or not part.words or not puts_something_right(fact) or same_spot(matter, said):
        return False
    renewed = isinstance(fact, Work) and fact.action in RENEW and not only_put_back(fact)
    if (isinstance(fact, Work) and is_makeshift(fact)) or (matter.reason in WAITED and not renewed):
        return False
    return part.words <= heading(said.note)
