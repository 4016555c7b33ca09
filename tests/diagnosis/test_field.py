"""What is planned over: all causes of a complaint at once, and what was seen good is no cause that must be dug for."""

from __future__ import annotations

import pytest

from tests.diagnosis.measure_repairs import fresh_signs
from worklog_tui.diagnosis.engine import Engine
from worklog_tui.diagnosis.network import Network
from worklog_tui.diagnosis.sign import Sign
from worklog_tui.rulebook.faults import FaultBook


def engine(book: FaultBook, complaint: str, good: tuple[str, ...] = ()) -> Engine:
    """The advice on a complaint after looks that found some causes good."""
    signs = fresh_signs(book, complaint)
    event = signs.symptom_signs[complaint].event
    signs.look_signs |= {f: Sign("look", f, "good", event, 0.95) for f in good}
    return Engine(book, signs, Network(signs), signs.symptoms[complaint], frozenset())


def test_every_listed_cause_of_a_dead_engine_is_planned_over(faults: FaultBook) -> None:
    made = engine(faults, "no_start")
    assert len(made.causes) > 30
    assert made.spread.mass == pytest.approx(1)


def test_what_was_found_good_adds_nothing_to_what_is_unlisted(faults: FaultBook) -> None:
    """However many causes are cleared, the one that is left stands to something unlisted as it did at first."""
    before = engine(faults, "overheats")
    after = engine(faults, "overheats", tuple(f for f in before.causes if f != "cool.pump"))
    assert _unlisted_to(after, "cool.pump") == pytest.approx(_unlisted_to(before, "cool.pump"), rel=0.05)


def _unlisted_to(made: Engine, cause: str) -> float:
    return made.spread.chances[-1] / made.spread.chances[made.causes.index(cause)]


def test_a_check_says_what_is_likeliest_after_each_of_its_outcomes(faults: FaultBook) -> None:
    spark = next(o for o in engine(faults, "no_start").options() if o.id == "ign.spark_test")
    after = {outcome: fault for outcome, _, fault in spark.after}
    assert after["good"].startswith(("fuel.", "carb."))
    assert after["none"].startswith("ign.")
    assert sum(chance for _, chance, _ in spark.after) == pytest.approx(1, abs=0.01)
