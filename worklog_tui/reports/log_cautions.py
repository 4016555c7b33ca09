"""The usual cautions for what the log tells was done, and for what comes next."""

from __future__ import annotations

from worklog_tui.diagnosis.log import Log
from worklog_tui.diagnosis.makeup import makeup
from worklog_tui.diagnosis.safety import Safety
from worklog_tui.model import Work
from worklog_tui.reports.material import Material, spot
from worklog_tui.reports.repair_log import Spot, Told
from worklog_tui.reports.sentence import briefly

ALWAYS = "general"
"The tag of the caution that closes every page."


def cautions(of: Material) -> tuple[Told, ...]:
    """Each caution once, with the first work that calls for it; those of the next step come first."""
    made = makeup(of.history.machine, of.faults.has.values(), Log(of.history).names)
    safety = Safety(of.faults, made)
    found: dict[str, tuple[str, Spot | None]] = {}
    if of.whole:
        for step in of.advice.steps[:1]:
            for says in step.cautions:
                found.setdefault(says, (f"for the next step: {step.step}", None))
    seen: set[str] = set()
    for place, fact in of.told():
        if isinstance(fact, Work) and (words := briefly(fact)) not in seen:
            seen.add(words)
            for says in safety.cautions(f"{fact.action} {fact.part} {fact.name} {fact.used}"):
                found.setdefault(says, (words, spot(place)))
    return tuple(Told(says, why, where) for says, (why, where) in found.items())


def closing(of: Material) -> str:
    """What stands below every page."""
    known = of.faults.cautions.get(ALWAYS)
    return known.says if known else ""
