"""The next step: the trouble, what to do and why, what would change the order, and the person's own plan."""

from __future__ import annotations

from worklog_tui.model import Advice, Step
from worklog_tui.widgets.next_step import step_rows


def test_a_stranger_reads_where_it_stands_and_why_this_is_next() -> None:
    advice = Advice(
        "turns over, no spark",
        steps=(Step("look at the points", "quick, and often it", 5, outcomes=("dirty: clean them",)), Step("coil", "")),
        instead="A new condenser would put the coil first.",
        asks=("Does the spark come back when it is cold?",),
        plan=("try the other coil", "if it does not help: send the magneto off"),
        standing="The handbook and local rules come first.",
    )
    said = [row.words for row in step_rows(advice)]
    assert said[:2] == ["Next: look at the points", "What you may see, and what it means"]
    for title, first in (
        ("Your own plan", "try the other coil"),
        ("What would change the order", "A new condenser would put the coil first."),
        ("Worth saying: it may change what comes first", "Does the spark come back when it is cold?"),
    ):
        assert said[said.index(title) + 1] == first
    assert said[-1] == "The handbook and local rules come first."


def test_nothing_is_headed_that_is_not_known() -> None:
    assert [row.words for row in step_rows(Advice("no spark"))] == ["The trouble: no spark"]
