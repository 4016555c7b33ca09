"""What two tellings of one thing have in common once they are read: the part and its state, the figure, the deed."""

from __future__ import annotations

from collections.abc import Iterable
from typing import TYPE_CHECKING

from worklog_tui.logbook.same_thing import thing
from worklog_tui.logbook.words import FILLER, one_form, raw_words
from worklog_tui.model import Finding, FollowUp, Reading, Suspect, Work

if TYPE_CHECKING:
    from worklog_tui.model import Fact

Sign = tuple[str, ...]


def signs(facts: Iterable[Fact]) -> frozenset[Sign]:
    """The signs of some facts: two tellings that share one are likely to tell the same."""
    return frozenset(sign for fact in facts for sign in _signs(fact))


def _signs(fact: Fact) -> list[Sign]:
    match fact:
        case Finding():
            head = thing(fact.part, fact.name).head
            states = {fact.state} - {""} or {one_form(w) for w in raw_words(fact.condition) if w not in FILLER}
            return [("found", head, state) for state in states if head]
        case Reading():
            figure = f"{fact.value:.4g}" if isinstance(fact.value, int | float) else str(fact.value)
            return [("measured", fact.quantity, figure, fact.unit)] if fact.role != "planned" else []
        case Work():
            head = thing(fact.part, fact.name).head
            return [("done", one_form(fact.action.lower()), head)] if head else []
        case FollowUp():
            head = thing(fact.topic, fact.name).head
            return [("to come", head, fact.reason)] if head else []
        case Suspect():
            return [("suspected", thing(fact.cause, fact.name).head)]
        case _:
            return []
