"""The best of all plans for the smallest networks: no way does with less on average, and the advice is near it."""

from __future__ import annotations

import random

from tests.diagnosis import measure_optimum
from tests.diagnosis.measure_optimum import Best, cut_down
from tests.diagnosis.measure_repairs import Repair, by_advice, drawn, fresh_signs
from worklog_tui.rulebook.faults import FaultBook

REPAIRS = 60
NEAR = 1.12
"The advice takes no more than this share of the best plan, on the same machines."


def test_no_way_does_with_less_than_the_best_plan(faults: FaultBook) -> None:
    spent = measure_optimum.beside_the_best(faults, "hyd_weak", REPAIRS)
    assert spent["the best plan"] <= 1.02 * min(spent.values())
    assert spent["advice"] <= NEAR * spent["the best plan"]


def test_what_the_best_plan_expects_is_what_it_takes(faults: FaultBook) -> None:
    small = cut_down(faults, "hyd_weak")
    best = Best(small, fresh_signs(small, "hyd_weak"), "hyd_weak")
    rng, spent = random.Random(5), 0.0
    for number in range(400):
        signs = fresh_signs(small, "hyd_weak")
        repair = Repair(small, signs, "hyd_weak", drawn(signs, "hyd_weak", rng), random.Random(number))
        best.followed(repair)
        spent += repair.minutes / 400
    assert abs(spent / best.minutes(best.start) - 1) < 0.06


def test_the_small_network_holds_the_shipped_numbers(faults: FaultBook) -> None:
    small = cut_down(faults, "hyd_weak")
    assert len(small.faults) == measure_optimum.CAUSES
    assert all(small.faults[f] is faults.faults[f] for f in small.faults)
    repair = Repair(small, fresh_signs(small, "hyd_weak"), "hyd_weak",
                    drawn(fresh_signs(small, "hyd_weak"), "hyd_weak", random.Random(1)), random.Random(1))  # fmt: skip
    by_advice(repair, small, [])
    assert repair.cured
