"""The next step as plain text: what, why, how long, what must come off, and the cautions."""

from __future__ import annotations

from worklog_tui.model import Advice, Step
from worklog_tui.reports.lines import heading, wrapped


def steps_text(advice: Advice, width: int) -> str:
    """The steps, best first; the trouble that is open above them."""
    rows = heading("Next step")
    if advice.complaint:
        rows += wrapped(f"Trouble: {advice.complaint}", width)
    if advice.remark:
        rows += wrapped(advice.remark, width)
    if not advice.steps:
        return "\n".join([*rows, "Nothing to advise."])
    for number, step in enumerate(advice.steps, 1):
        rows += ["", *_step(number, step, width)]
    return "\n".join(rows)


def _step(number: int, step: Step, width: int) -> list[str]:
    time = f" (about {step.minutes} min)" if step.minutes else ""
    rows = wrapped(f"{step.step}{time}", width, f"{number}. ", "   ")
    rows += wrapped(f"Why: {step.why}", width, "   ", "   ") if step.why else []
    rows += wrapped("Comes off first: " + ", ".join(step.access), width, "   ", "   ") if step.access else []
    for outcome in step.outcomes:
        rows += wrapped(outcome, width, "   - ", "     ")
    for caution in step.cautions:
        rows += wrapped(f"Caution: {caution}", width, "   ", "   ")
    return rows
