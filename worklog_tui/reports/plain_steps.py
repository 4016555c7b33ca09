"""The next step as plain text: what, why, how long, what must come off, and the cautions."""

from __future__ import annotations

from worklog_tui.model import Advice, Step
from worklog_tui.reports.lines import heading, wrapped

SHOWN = 3
"How many steps a person is told."


def steps_text(advice: Advice, width: int) -> str:
    """The steps, best first; the trouble that is open above them."""
    rows = heading("Next step")
    if advice.complaint:
        rows += wrapped(f"Trouble: {advice.complaint}", width)
    if advice.remark:
        rows += wrapped(advice.remark, width)
    if not advice.steps:
        return "\n".join([*rows, "Nothing to advise."])
    told: set[str] = set()
    for number, step in enumerate(advice.steps[:SHOWN], 1):
        rows += ["", *_step(number, step, width, told)]
    rows += [""] if advice.instead or advice.asks else []
    rows += wrapped(advice.instead, width) if advice.instead else []
    for question in advice.asks:
        rows += wrapped(f"Asked: {question}", width)
    rows += _plan(advice, width)
    rows += ["", *wrapped(advice.standing, width)] if advice.standing else []
    return "\n".join(rows)


def _plan(advice: Advice, width: int) -> list[str]:
    """The person's own plan beside it."""
    rows = ["", "Your own plan:"] if advice.plan else []
    for line in advice.plan:
        rows += wrapped(line, width, "  - ", "    ")
    return rows


def _step(number: int, step: Step, width: int, told: set[str]) -> list[str]:
    """One step; a caution that was told with an earlier one is not told again."""
    time = f" (about {step.minutes} min)" if step.minutes else ""
    rows = wrapped(f"{step.step}{time}", width, f"{number}. ", "   ")
    rows += wrapped(f"Why: {step.why}", width, "   ", "   ") if step.why else []
    rows += wrapped(f"How: {step.how}", width, "   ", "   ") if step.how else []
    rows += wrapped("Comes off first: " + ", ".join(step.access), width, "   ", "   ") if step.access else []
    for outcome in step.outcomes:
        rows += wrapped(outcome, width, "   - ", "     ")
    for caution in step.cautions:
        if caution not in told:
            rows += wrapped(f"Caution: {caution}", width, "   ", "   ")
    told.update(step.cautions)
    return rows
