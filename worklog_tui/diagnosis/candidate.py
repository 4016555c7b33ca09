"""A step that could be taken, with what it is worth before another: tier first, then its order within the tier."""

from __future__ import annotations

from dataclasses import dataclass
from enum import IntEnum

from worklog_tui.diagnosis.words import SIDES, tokens
from worklog_tui.model import Step


class Tier(IntEnum):
    """What comes before what."""

    DANGER = 0
    PLAN = 1
    "What the person said would come next, in his order."
    PLAN_FALLBACK = 2
    "What he said would come if that does not help."
    COMPLAINT = 3
    "What the engine finds worth doing about an unexplained trouble."
    LISTED = 4
    "What he summed up at the end as still to do."
    HOLDS_UP = 5
    "Jobs and faults before the next start."
    STOP_GAP = 6
    PART = 7
    OWN_CAUSE = 8
    "What the person took for the cause, and nothing settled."
    GENERAL = 9
    "What is tried on any machine with such a trouble, or about a trouble told long before with nothing else to do."
    NOTICED = 10
    "A fault of the last session that nobody said to come back to, and nothing dealt with."
    FALLBACK = 11
    "A way on for when something else, that was not heard tried, does not help."
    OLD_COMPLAINT = 12
    "What the engine would do about a trouble that was not heard of for long."
    WAITS = 13
    "What hangs on something else, or is due only later."
    DOUBTFUL = 14
    "What seems dealt with, and was not said to be."


@dataclass(frozen=True, slots=True)
class Candidate:
    """A step with its rank; `thing` is what it works on."""

    tier: Tier
    order: float
    step: Step
    name: str = ""
    thing: str = ""
    notes: frozenset[str] = frozenset()
    "The notes that an open item was told in."
    alone: bool = False
    "Whether its thing was spoken of in one note only: misheard more often than what was told twice."
    reason: str = ""
    "Why the open item is open that it stands for."

    @property
    def rank(self) -> tuple[int, bool, float, str]:
        """What it is sorted by: tier, what was told twice, order within it, and the words to break ties."""
        return self.tier, self.alone, self.order, self.step.step


_ACTS = frozenset({
    "fit", "order", "get", "make", "replace", "clean", "check", "see", "put", "right", "find", "cause", "do",
    "reconnect", "take", "new", "proper", "good", "test", "swap", "change", "adjust",
})  # fmt: skip


def same_step(a: Candidate, b: Candidate) -> bool:
    """Whether two candidates ask for the same work: the same thing, whatever the verb."""
    mine, theirs = _core(a.step.step), _core(b.step.step)
    if mine == theirs:
        return True
    sides_a, sides_b = mine & SIDES, theirs & SIDES
    if sides_a and sides_b and not sides_a & sides_b:
        return False
    if a.name and a.name == b.name and set(tokens(a.name)) <= mine & theirs:
        return True
    mine, theirs = mine - SIDES, theirs - SIDES
    return bool(mine) and bool(theirs) and (mine <= theirs or theirs <= mine)


def _core(step: str) -> frozenset[str]:
    said = frozenset(tokens(step))
    return said - _ACTS or said


def best(candidates: list[Candidate], most: int) -> list[Candidate]:
    """The best candidates in order, each work once."""
    kept: list[Candidate] = []
    for candidate in sorted(candidates, key=lambda c: c.rank):
        if len(kept) == most:
            break
        if not any(same_step(candidate, k) for k in kept):
            kept.append(candidate)
    return kept
