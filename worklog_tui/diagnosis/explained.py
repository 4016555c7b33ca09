"""A trouble whose cause was found already: mending what was found comes before any further check."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from worklog_tui.diagnosis.candidate import Candidate, Tier
from worklog_tui.diagnosis.signs import Signs
from worklog_tui.rulebook.faults import Symptom

FOUND = (Tier.LISTED, Tier.HOLDS_UP, Tier.PART, Tier.NOTICED)
"Jobs that stand for a fault that was found."
LINK = 0.4
"How surely a fault alone must bring the complaint to explain it (judgement)."


def explained(jobs: Sequence[Candidate], symptom: Symptom, signs: Signs, heard: float) -> list[Candidate]:
    """The jobs, with those on a found cause of the complaint put where the checks of the complaint would stand.

    `heard` is the moment at which the complaint was last heard: what was only noticed before that did not explain it.
    """
    return [_first(job, symptom) if _explains(job, symptom, signs, heard) else job for job in jobs]


def is_explained(jobs: Sequence[Candidate]) -> bool:
    """Whether any job stands for a found cause of the complaint."""
    return any(job.tier is Tier.COMPLAINT for job in jobs)


def _explains(job: Candidate, symptom: Symptom, signs: Signs, heard: float) -> bool:
    if job.tier not in FOUND or (job.tier is Tier.NOTICED and -job.order < heard - 1):
        return False
    faults = [f for f in signs.causes(job.name, job.thing) if symptom.causes.get(f, 0.0) >= LINK]
    looks = [signs.look_signs.get(f) for f in faults]
    return bool(faults) and not any(look is not None and look.shows == "good" for look in looks)


def _first(job: Candidate, symptom: Symptom) -> Candidate:
    why = f"{job.step.why} It can be the cause: {symptom.says}."
    return replace(job, tier=Tier.COMPLAINT, order=0.1 + job.tier / 100, step=replace(job.step, why=why))
