"""A trouble whose cause was found already: mending what was found comes before any further check."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from worklog_tui.diagnosis.candidate import Candidate, Tier
from worklog_tui.diagnosis.signs import Signs
from worklog_tui.rulebook.faults import Symptom

FOUND = (Tier.LISTED, Tier.HOLDS_UP, Tier.PART)
"Jobs that stand for a fault that somebody means to come back to; what was only noticed is too often no fault."
LINK = 0.4
"How surely a fault alone must bring the complaint to explain it (judgement)."


def explained(jobs: Sequence[Candidate], symptom: Symptom, signs: Signs) -> list[Candidate]:
    """The jobs, with those on a found cause of the complaint put where the checks of the complaint would stand."""
    return [_first(job, symptom) if _explains(job, symptom, signs) else job for job in jobs]


def is_explained(jobs: Sequence[Candidate]) -> bool:
    """Whether any job stands for a found cause of the complaint."""
    return any(job.tier is Tier.COMPLAINT for job in jobs)


def _explains(job: Candidate, symptom: Symptom, signs: Signs) -> bool:
    if job.tier not in FOUND:
        return False
    faults = [f for f in signs.causes(job.name, job.thing) if symptom.causes.get(f, 0.0) >= LINK]
    looks = [signs.look_signs.get(f) for f in faults]
    return bool(faults) and not any(look is not None and look.shows == "good" for look in looks)


def _first(job: Candidate, symptom: Symptom) -> Candidate:
    why = f"{job.step.why} It can be the cause: {symptom.says}."
    return replace(job, tier=Tier.COMPLAINT, order=0.1 + job.tier / 100, step=replace(job.step, why=why))
