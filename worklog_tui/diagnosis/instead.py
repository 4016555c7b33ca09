"""The runner-up among the checks of a complaint, and what would put it first."""

from __future__ import annotations

from collections.abc import Sequence

from worklog_tui.diagnosis.engine import Engine
from worklog_tui.diagnosis.option import Option


def instead(options: Sequence[Option], engine: Engine) -> str:
    """What comes second and by how little: a cover that is off, or minutes that turn out other than thought."""
    if len(options) < 2:
        return ""
    first = options[0]
    second = next((o for o in options[1:] if o.id != first.id), None)
    if second is None:
        return ""
    behind = max(0.0, second.expected - first.expected)
    said = f"Runner-up: {second.job.say}"
    shut = [engine.book.access[a] for a in second.job.access if a not in engine.opened]
    if shut and behind < sum(a.minutes for a in shut):
        return f"{said}. It would come first if {' and '.join(a.says for a in shut)} were off already."
    if second.first and not first.first:
        return f"{said}."
    if behind < 1:
        return f"{said}. There is nothing between the two: take the one that is nearer to hand."
    if second.job.minutes > behind + 1:
        least = round(second.job.minutes - behind)
        return (
            f"{said}. It would come first if it took you less than {least} minutes instead of {second.job.minutes:g}."
        )
    most = round(first.job.minutes + behind)
    return f"{said}. It would come first if the first took you more than {most} minutes."
