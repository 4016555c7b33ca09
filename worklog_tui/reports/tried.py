"""What was tried, and what was heard after it."""

from __future__ import annotations

from dataclasses import replace

from worklog_tui.logbook.cures import is_whole
from worklog_tui.logbook.same_thing import Thing, same, thing
from worklog_tui.logbook.starts import start_attempts
from worklog_tui.model import Fact, Finding, Place, Reading, Suspect, Work
from worklog_tui.reports.material import Material, spot
from worklog_tui.reports.repair_log import Told
from worklog_tui.reports.sentence import briefly

_TRIES = frozenset(
    {"replace", "fit", "clean", "adjust", "repair", "charge", "free", "fill", "flush", "bleed", "tighten", "connect",
     "make", "soak", "start"}
)  # fmt: skip
_LOOKS = frozenset({"check", "test", "start"})
"Work that tries nothing else."
FAR = 40
"Facts after which what is heard is not taken for the result any more (judgement)."
SILENCE = "no word of what came of it"


def tried(of: Material) -> tuple[Told, ...]:
    """Everything that was tried within the span, each with the next thing heard of it or of the whole machine.

    An attempt to start it is a trial only when it was said what came of it.
    """
    facts = of.everything()
    came_of = {one.work.key: one.outcome for one in start_attempts(of.history) if one.outcome}
    rows: list[Told] = []
    for number, (place, fact) in enumerate(facts):
        if not isinstance(fact, Work) or fact.action not in _TRIES or place.session < of.first:
            continue
        if fact.action == "start":
            outcome = came_of.get(fact.key)
            result = briefly(outcome) if outcome else ""
        else:
            result = _result(facts[number + 1 : number + 1 + FAR], fact)
        row = Told(briefly(fact), result, spot(place))
        if not result or (rows and rows[-1].text == row.text):
            continue
        if rows and (rows[-1].spot, rows[-1].detail) == (row.spot, row.detail):  # in one breath
            row = replace(row, text=f"{rows.pop().text}; {row.text}")
        rows.append(row)
    return tuple(rows)


def _result(later: list[tuple[Place, Fact]], work: Work) -> str:
    about, alone = _of(work), True
    for _, fact in later:
        if isinstance(fact, Work) and fact.action not in _LOOKS and not same(_of(fact), about):
            alone = False
        if _tells(fact) and (same(_of(fact), about) or (alone and _of_the_machine(fact))):
            return briefly(fact)
    return SILENCE


def _tells(fact: Fact) -> bool:
    if isinstance(fact, Reading):
        return fact.role == "measured" and not fact.doubtful  # what it was set to is no result, it is how
    return isinstance(fact, Finding) or (isinstance(fact, Suspect) and fact.standing != "suspected")


def _of_the_machine(fact: Fact) -> bool:
    """Whether it tells what the machine itself did; that is a result only until something else is tried."""
    return isinstance(fact, Finding) and fact.verdict != "noted" and is_whole(_of(fact))


def _of(fact: Fact) -> Thing:
    return thing(fact.about, getattr(fact, "name", ""))
