"""The calm line: one plain sentence for what is understood, and for what became of the note."""

from __future__ import annotations

from worklog_tui.model import FollowUp, Span
from worklog_tui.widgets.understood import Understood, told


def needed(topic: str) -> FollowUp:
    return FollowUp(main=Span("n", 0, 1), topic=topic, reason="part needed", quote=f"need {topic}")


def test_a_few_facts_are_said_and_the_rest_are_counted() -> None:
    assert told([needed("a belt")]) == "to come back to: a belt, part needed"
    assert told([needed(f"part {n}") for n in range(9)]).endswith("part 3, part needed; and 5 more")
    assert told([needed("a belt"), needed("a belt")]) == "to come back to: a belt, part needed"


def test_what_is_said_of_typing_goes_with_the_typing_and_kept_stays() -> None:
    line = Understood()
    line.hear("we need a belt", [needed("a belt")])
    assert line.said == "Understood: to come back to: a belt, part needed."
    line.hear("", [])
    assert line.said == ""
    line.kept("14:05", [])
    line.hear("", [])
    assert line.said == "Kept 14:05."


def test_doubt_delay_and_a_reader_that_failed_are_said() -> None:
    line = Understood()
    line.kept("14:05", [], unsure=[needed("a belt")])
    assert line.said == "Kept 14:05. Not sure of: to come back to: a belt, part needed."
    line.kept("14:05", [], spooled=True)
    assert line.said == "Kept beside the logbook, taken in soon."
    line.kept("14:05", [], unread="a rule is broken")
    assert line.said == "Kept 14:05. It could not be read yet: a rule is broken."
