"""Attempts to start the machine, with what came of each, and when it last ran."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from worklog_tui.logbook.cures import is_whole
from worklog_tui.logbook.outcomes import StartAttempt
from worklog_tui.logbook.same_thing import thing
from worklog_tui.model import Fact, Finding, History, Place, Work

NEAR = 4
"Lines within which the outcome of an attempt is told."
_RAN = re.compile(
    r"\b(runs?|ran|running|starts|started|fired up|fires up|caught|catches|idles?|idling|away it goes|ticks? over"
    r"|going)\b",
    re.IGNORECASE,
)


def start_attempts(history: History) -> tuple[StartAttempt, ...]:
    """All attempts in order; one that is told twice within a line or two is one."""
    rows = [(fact, history.place(fact.main.note)) for fact in history.facts()]
    found: list[StartAttempt] = []
    for number, (fact, place) in enumerate(rows):
        if not isinstance(fact, Work) or fact.action != "start":
            continue
        if found and place.order - found[-1].place.order <= 1 and place.session == found[-1].place.session:
            continue
        after = _soon_after(rows, number)
        outcome = next((one for one in after if isinstance(one, Finding) and _of_the_whole(one)), None)
        found.append(StartAttempt(fact, place, outcome, outcome is not None and runs(outcome)))
    return tuple(found)


def _soon_after(rows: Sequence[tuple[Fact, Place]], number: int) -> Iterator[Fact]:
    """The facts after one, as far as its outcome may be told in them."""
    last = rows[number][1].order + NEAR
    for n in range(number + 1, len(rows)):
        if rows[n][1].order > last:
            return
        yield rows[n][0]


def runs(fact: Fact) -> bool:
    """Whether a finding says that the machine runs."""
    good = isinstance(fact, Finding) and fact.verdict == "good" and _of_the_whole(fact)
    return good and bool(_RAN.search(fact.condition)) if isinstance(fact, Finding) else False


def ran_at(history: History) -> list[int]:
    """The places (order) at which the machine was heard to run."""
    return [history.place(fact.main.note).order for fact in history.facts() if runs(fact)]


def _of_the_whole(finding: Finding) -> bool:
    return is_whole(thing(finding.part, finding.name))
