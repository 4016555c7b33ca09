"""The next step as text: three steps, each caution once, the standing sentence at the end."""

from __future__ import annotations

from worklog_tui.model import Advice, Step
from worklog_tui.reports.plain_steps import steps_text

HOT = "Don't open a hot cap."
GUARD = "Guards on."


def test_a_caution_is_told_once_and_with_the_first_step_that_needs_it() -> None:
    steps = (
        Step("press the belt", "It is slack.", 3, (HOT, GUARD)),
        Step("look into the radiator", "It may be blocked.", 5, (HOT,), ("bad: flush it",), ("the fan guard",)),
        Step("draw the thermostat", "It may be stuck.", 15, (HOT,)),
        Step("fit a new pump", "It may be worn.", 90, (HOT,)),
    )
    text = steps_text(Advice("it runs too hot", steps=steps, instead="Runner-up: the cap.", standing="Reminders."), 80)
    assert text.count(HOT) == 1
    assert text.index(HOT) < text.index("2. ")
    assert "Comes off first: the fan guard" in text
    assert "bad: flush it" in text
    assert "4. " not in text
    assert text.rstrip().endswith("Reminders.")


def test_the_own_plan_stands_beside_it() -> None:
    plan = ("clean the strainer", "if that does not help: lap the valve")
    advice = Advice("", steps=(Step("clean the strainer", "You said so."),), plan=plan)
    assert "Your own plan:\n  - clean the strainer\n  - if that does not help: lap the valve" in steps_text(advice, 80)
