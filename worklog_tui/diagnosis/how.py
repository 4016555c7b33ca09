"""How a thing is looked at: as its own fault file says, else by the kind of part that it is.

A person who says `I think it's the start cap` is told how a capacitor is checked, and what each outcome means.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace

from worklog_tui.diagnosis.candidate import Candidate, Tier
from worklog_tui.diagnosis.safety import Safety
from worklog_tui.diagnosis.signs import Signs
from worklog_tui.diagnosis.words import SIDES, tokens
from worklog_tui.model import Step
from worklog_tui.rulebook.fault_nouns import Fault

OWN = ("own plan", "open item")
PORTS = frozenset({"exhaust", "inlet"})
"Sides of an engine that make another part of the same name: an exhaust gasket holds no oil."


@dataclass(frozen=True, slots=True)
class HowTo:
    """How a thing is looked at, and what follows from it."""

    how: str
    bad: str
    good: str
    minutes: int
    cautions: tuple[str, ...]


def how_to(thing: str, signs: Signs) -> HowTo | None:
    """How a thing is looked at; None for one that neither a fault file nor a kind knows."""
    if fault := _own_fault(thing, signs):
        look = fault.look or fault.repair
        return HowTo(look.say, fault.repair.say, "it is not that: leave it alone and go on", round(look.minutes),
                     look.cautions)  # fmt: skip
    kind = signs.kinds.of(thing)
    if kind is None:
        return None
    return HowTo(kind.check.say, kind.bad, kind.good, round(kind.check.minutes), kind.check.cautions)


def in_full(step: Step, signs: Signs, safety: Safety) -> Step:
    """A step of the person's own with how it is done, where a fault file or the kind of the part tells."""
    if step.source not in OWN or step.how or not step.aim or not step.thing:
        return step
    told = how_to(step.thing, signs)
    if told is None:
        return step
    both = dict.fromkeys((*step.cautions, *safety.cautions(told.how, told.cautions)))
    if step.aim == "look":
        outcomes = (f"bad: {told.bad}, then try it again", f"good: {told.good}")
        return replace(step, how=told.how, outcomes=outcomes, cautions=tuple(both), minutes=told.minutes)
    how = f"{told.how}. If so: {told.bad}"
    return replace(step, how=how, cautions=tuple(both), minutes=step.minutes or told.minutes)


def not_twice(found: Iterable[Candidate], own: Iterable[Candidate], signs: Signs) -> list[Candidate]:
    """The candidates without the looks at what the person suspects himself: his own step tells how it is done."""
    named = {c.name for c in own if c.step.aim == "look" and c.tier <= Tier.COMPLAINT}

    def is_told(one: Candidate) -> bool:
        fault = signs.faults.get(one.step.source)
        look = fault.look if fault else None
        return (
            fault is not None
            and look is not None
            and look.say == one.step.step
            and not named.isdisjoint(fault.heard.parts)
        )

    return [c for c in found if not is_told(c)]


def once(steps: Iterable[Step]) -> tuple[Step, ...]:
    """The steps without those that an earlier one tells how to do."""
    kept: list[Step] = []
    for step in steps:
        if step.step not in [k.how for k in kept]:
            kept.append(step)
    return tuple(kept)


def _own_fault(thing: str, signs: Signs) -> Fault | None:
    """The one fault of the machine's own trade that a thing is about, if it has a look."""
    said = set(tokens(thing)) - (SIDES - PORTS)
    meant = [signs.faults[f] for f in signs.causes("", thing) if f in signs.of_the_trade]
    fits = [f for f in meant if f.look and said <= _words_of(f)]
    return fits[0] if len(fits) == 1 else None


def _words_of(fault: Fault) -> set[str]:
    """The words that a fault's name and look are in: a run capacitor is no start capacitor."""
    return {w for text in (fault.name, fault.look.say if fault.look else "") for w in tokens(text)}
