"""Readings that contradict each other, or that nobody trusts, are taken again before anything is taken apart."""

from __future__ import annotations

from tests.diagnosis.workshop import Log
from worklog_tui.diagnosis import advise
from worklog_tui.model import Advice
from worklog_tui.rulebook.faults import FaultBook


def advised(log: Log, faults: FaultBook) -> Advice:
    return advise(log.history(), log.items(), faults, None)


def complaint() -> Log:
    return Log().found("engine", "no power", state="no power").found("spark plug", "fine", "good")


def test_two_compressions_of_one_cylinder_that_cannot_both_be_right(faults: FaultBook) -> None:
    """Sixty, then ninety-five, and nothing done between: neither is worth a head gasket."""
    log = complaint().read("compression", 60, "psi", "cylinder 1").chat(2)
    first = advised(log.read("compression", 95, "psi", "cylinder 1"), faults).steps[0]
    assert first.step.startswith("measure the compression of cylinder 1 again, properly: all plugs out, throttle")
    assert "60 psi at 2:00 and" in first.why
    assert "95 psi" in first.why
    assert "nothing was done to it between" in first.why


def test_work_between_them_explains_the_difference(faults: FaultBook) -> None:
    log = complaint().read("compression", 60, "psi", "cylinder 1").did("adjust", "tappet")
    steps = advised(log.read("compression", 95, "psi", "cylinder 1"), faults).steps
    assert not any("again, properly" in s.step for s in steps)


def test_a_third_reading_settles_it(faults: FaultBook) -> None:
    log = complaint().read("compression", 60, "psi", "cylinder 1").read("compression", 95, "psi", "cylinder 1")
    steps = advised(log.chat().read("compression", 94, "psi", "cylinder 1"), faults).steps
    assert not any("again, properly" in s.step for s in steps)


def test_readings_of_two_cylinders_are_no_contradiction(faults: FaultBook) -> None:
    log = complaint().read("compression", 60, "psi", "cylinder 1").read("compression", 95, "psi", "cylinder 2")
    assert not any("again, properly" in s.step for s in advised(log, faults).steps)


def test_a_reading_that_was_not_trusted_is_taken_again_where_all_hangs_on_it(faults: FaultBook) -> None:
    log = complaint().read("compression", 40, "psi", "cylinder 1", doubtful=True)
    step = next(s for s in advised(log, faults).steps if "again, properly" in s.step)
    assert "you did not trust it yourself" in step.why


def test_a_reading_that_has_nothing_to_do_with_the_trouble_is_left_alone(faults: FaultBook) -> None:
    log = Log().found("clutch", "slips", state="slips").read("compression", 40, "psi", "cylinder 1", doubtful=True)
    assert not any("again, properly" in s.step for s in advised(log, faults).steps)
