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


def test_each_cause_found_good_leaves_less_for_the_deeper_search_than_it_took_away(faults: FaultBook) -> None:
    """What is none of the listed causes grows as they lose, and does not take over their first chances."""
    before = engine(faults, "overheats")
    cleared = ("cool.radiator", "cool.air", "cool.belt", "cool.low")
    after = engine(faults, "overheats", cleared)
    lost = sum(before.spread.chances[before.causes.index(f)] for f in cleared)
    rest = sum(c for f, c in zip(after.causes, after.spread.chances, strict=False) if f not in cleared)
    assert lost > 0.5
    assert after.spread.chances[-1] < rest


def test_a_check_says_what_is_likeliest_after_each_of_its_outcomes(faults: FaultBook) -> None:
    spark = next(o for o in engine(faults, "no_start").options() if o.id == "ign.spark_test")
    after = {outcome: fault for outcome, _, fault in spark.after}
    assert after["good"].startswith(("fuel.", "carb."))
    assert after["none"].startswith("ign.")
    assert sum(chance for _, chance, _ in spark.after) == pytest.approx(1, abs=0.01)
