"""The person's own plan, laid beside the advice: what he would do in which order, and what if that does not help."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from worklog_tui.diagnosis.candidate import Candidate, Tier, best

NEAR = 2.5
"A way on said at most so many notes after a step belongs to it (judgement)."


def with_its_plan(candidates: Sequence[Candidate]) -> list[Candidate]:
    """The candidates, with a way on for when something does not help behind all others, unless that is planned too."""
    first = min((c.order for c in candidates if c.tier is Tier.PLAN), default=float("inf"))
    return [
        replace(c, tier=Tier.FALLBACK) if c.tier is Tier.PLAN_FALLBACK and first > c.order else c for c in candidates
    ]


def plan_of(candidates: Sequence[Candidate]) -> tuple[str, ...]:
    """The plan as lines: each step, and under the last one before it what comes if it does not help."""
    planned = best([c for c in candidates if c.tier is Tier.PLAN], len(candidates))
    ways = [c for c in candidates if c.tier in (Tier.PLAN_FALLBACK, Tier.FALLBACK)]
    lines = []
    for n, step in enumerate(planned):
        later = planned[n + 1].order if n + 1 < len(planned) else float("inf")
        lines.append(step.step.step)
        lines += [_otherwise(w) for w in ways if step.order <= w.order < min(later, step.order + NEAR)]
    alone = [w for w in ways if _otherwise(w) not in lines]
    return (*lines, *(_otherwise(w) for w in sorted(alone, key=lambda w: w.order)))


def _otherwise(way: Candidate) -> str:
    return f"if that does not help: {way.step.step}"
