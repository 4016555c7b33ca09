"""The next step: what to do, why it and why now, and what each outcome would mean."""

from __future__ import annotations

from typing import TYPE_CHECKING

from worklog_tui.widgets.row import Row
from worklog_tui.widgets.rows import Rows
from worklog_tui.widgets.sections import section

if TYPE_CHECKING:
    from worklog_tui.model import Advice, Step


class NextStep(Rows):
    """The best step in full, the runners-up in short."""

    def __init__(self) -> None:
        super().__init__("Nothing to suggest yet. Say what the machine does, or does not do.")

    def show_advice(self, advice: Advice) -> None:
        """Show what to do next."""
        self.show(step_rows(advice))


def step_rows(advice: Advice) -> list[Row]:
    """The best step in full with what each outcome would mean, the runners-up, and what would change the order."""
    rows = _full(advice.steps[0]) if advice.steps else trouble(advice)
    if advice.steps[1:]:
        rows.append(Row.of("Or else", heading=True))
        rows += [Row.of(step.step, below=step.why) for step in advice.steps[1:3]]
    if advice.instead:
        rows += section("What would change the order", [Row.of(advice.instead)])
    rows += asked(advice)
    rows += section("Your own plan", map(Row.of, advice.plan))
    if advice.remark:
        rows.append(Row.of(advice.remark))
    if advice.standing:
        rows.append(Row.of(advice.standing))
    return rows


def _full(step: Step) -> list[Row]:
    told = [f"Why: {step.why.rstrip('.')}."] if step.why else []
    if step.minutes is not None:
        told.append("About a minute." if step.minutes == 1 else f"About {step.minutes} minutes.")
    if step.access:
        told.append(f"First off: {', '.join(step.access)}.")
    rows = [Row.of(f"Next: {step.step}", below=" ".join(told), heading=True)]
    rows += section("How", [Row.of(step.how)] if step.how else [])
    return rows + section("Take care", map(_caution, step.cautions)) + outcomes(step)


def trouble(advice: Advice) -> list[Row]:
    """What is wrong, in the person's words."""
    return [Row.of(f"The trouble: {advice.complaint}", heading=True)] if advice.complaint else []


def outcomes(step: Step) -> list[Row]:
    """What each outcome of a step would mean."""
    return section("What you may see, and what it means", map(Row.of, step.outcomes))


def asked(advice: Advice) -> list[Row]:
    """What the person may know and has not said."""
    return section("Worth saying: it may change what comes first", map(Row.of, advice.asks))


def _caution(says: str) -> Row:
    """The source of a caution stands below it."""
    words, _, source = says.partition(" (Source: ")
    return Row.of(words, below=f"Source: {source.removesuffix(')')}" if source else "")
