"""What was planned at the end of a day stands when the next has only just begun; what was mended waits for proof."""

from __future__ import annotations

import pytest

from tests.diagnosis.workshop import Log
from worklog_tui.diagnosis import advise
from worklog_tui.diagnosis.makeup import makeup
from worklog_tui.model import Advice, Machine
from worklog_tui.rulebook.faults import FaultBook


def advised(log: Log, faults: FaultBook) -> Advice:
    return advise(log.history(), log.items(), faults, None)


@pytest.mark.parametrize(
    "plan",
    [
        "Next time I'll check the float level first.", "Next time first thing I check the float level.",
        "Tomorrow I check the float level.", "Next job is the float level.",
    ],
)  # fmt: skip
def test_the_plan_of_the_last_day_is_first_when_a_new_one_begins(plan: str, faults: FaultBook) -> None:
    log = Log().later("gasket", "fault", "the exhaust gasket is blowing", name="exhaust gasket").chat(8)
    log.found("float level", "odd", "noted")
    log.note(plan)
    before = advised(log, faults).steps[0].step
    assert "float level" in before
    log.session().note("right, back again, it's raining")
    assert advised(log, faults).steps[0].step == before


def test_it_stands_no_longer_once_the_new_day_is_well_under_way(faults: FaultBook) -> None:
    log = Log().found("float level", "odd", "noted").chat(8)
    log.note("Next time I'll check the float level first.")
    log.session().chat(4)
    assert all("float level" not in s.step for s in advised(log, faults).steps)


def test_a_cause_that_was_put_right_is_named_until_it_is_proved(faults: FaultBook) -> None:
    log = Log().found("spark", "no spark", state="no spark").found("contact breaker points", "dirty", state="dirty")
    log.did("clean", "contact breaker points")
    top = advised(log, faults).causes[0]
    assert top.id == "ign.points_dirty"
    assert top.evidence[0].words == "put right since, and not proved yet: clean contact breaker points"
    log.found("spark", "no spark", state="no spark")  # it was not that
    assert all(c.id != "ign.points_dirty" for c in advised(log, faults).causes[:3])


def test_what_was_just_found_bad_is_named_beside_an_older_trouble_that_it_does_not_explain(faults: FaultBook) -> None:
    log = Log().found("engine", "hunts", name="engine", state="hunting").found("drive belt", "cracked")
    assert "drive belt: cracked" in [c.name for c in advised(log, faults).causes[:3]]


@pytest.mark.parametrize(
    ("kind", "pumps"),
    [
        ("single-cylinder petrol water pump", True), ("four-cylinder petrol pump", True),
        ("single-cylinder diesel driving a piston bilge pump by flat belt", True),
        ("two-stage air compressor, two-cylinder pump", False),
        ("towed hydraulic log splitter, petrol engine, two-stage pump", False),
        ("tracked mini excavator, three-cylinder diesel, two variable pumps", False),
        ("rotary vane vacuum pump of a dairy, belt-driven by a three-phase motor", False),
    ],
)  # fmt: skip
def test_only_a_pump_of_water_is_primed(kind: str, pumps: bool, faults: FaultBook) -> None:
    made = makeup(Machine("M", kind), faults.has.values(), ("impeller",) if not pumps else ())
    assert ("water pump set" in made.has) == pumps
