"""One thing to do about a complaint, with what it is worth, and which of two comes first."""

from __future__ import annotations

from dataclasses import dataclass

from worklog_tui.diagnosis.spread import Spread
from worklog_tui.rulebook.faults import Job

TIE = 0.003
"The share within which two options cost the same."


@dataclass(frozen=True, slots=True)
class Choice:
    """One thing that could be done, with the outcomes of a check: the name of each, the belief after it."""

    sort: str
    "check, look or repair."
    id: str
    job: Job
    outcomes: tuple[tuple[str, Spread], ...] = ()

    @property
    def minutes(self) -> float:
        """What it takes, covers apart."""
        return self.job.minutes


@dataclass(frozen=True, slots=True)
class Option:
    """One thing to do about the complaint, with the expected minutes to a working machine when it is done first."""

    sort: str
    "check, look or repair."
    id: str
    job: Job
    expected: float
    saves: float
    after: tuple[tuple[str, float, str], ...]
    "For each outcome: its name, its chance, and the likeliest fault after it."
    first: bool = False
    "A free look, or one of the simple checks that the tables name first."


def rank(option: Option, best: float) -> tuple[int, float, float, str]:
    """Options that cost the same are ties: the quicker one, then the one without parts, comes first."""
    ties = int((option.expected - best) / (TIE * best)) if best > 0 else 0
    return ties, option.job.minutes, option.job.parts_cost, option.id
