"""The order of looks and repairs: against every order tried, and against numbers that can be checked by hand."""

from __future__ import annotations

import itertools
import random
from collections.abc import Sequence

import pytest

from tests.diagnosis.test_policy import just_one
from worklog_tui.diagnosis import good_order
from worklog_tui.diagnosis.good_order import minutes_of
from worklog_tui.diagnosis.noisy_or import Piece, present
from worklog_tui.diagnosis.order import Part, best_order, cover_bits, subset_sums
from worklog_tui.diagnosis.spread import Spread, Term


def single(chances: Sequence[float]) -> list[float]:
    """The belief that exactly one fault is there."""
    belief = [0.0] * (1 << len(chances))
    for i, p in enumerate(chances):
        belief[1 << i] = p
    return belief


def tried_out(belief: Sequence[float], parts: Sequence[Part], covers: Sequence[float]) -> float:
    """The cheapest of all orders with all choices of look or repair, each played through for every set of faults."""
    n, best = len(parts), float("inf")
    for order in itertools.permutations(range(n)):
        for looks in itertools.product((True, False), repeat=n):
            if any(
                (look and parts[i].look is None) or (not look and not parts[i].blind) for i, look in enumerate(looks)
            ):
                continue
            cost = sum(b * played(bits, order, looks, parts, covers) for bits, b in enumerate(belief) if b)
            best = min(best, cost)
    return best


def played(
    bits: int, order: Sequence[int], looks: Sequence[bool], parts: Sequence[Part], covers: Sequence[float]
) -> float:
    cost, opened, left = 0.0, 0, bits
    for i in order:
        if not left:
            break
        cost += sum(m for k, m in enumerate(covers) if parts[i].covers >> k & 1 and not opened >> k & 1)
        opened |= parts[i].covers
        look = parts[i].look
        if looks[i] and look is not None:
            cost += look + (parts[i].repair if left >> i & 1 else 0)
        else:
            cost += parts[i].repair
        left &= ~(1 << i)
    return cost


def test_look_then_repair_by_hand() -> None:
    """p .40 .25 .20 .10 .05, look 20 5 12 3 1.25, repair 30 10 60 5 40: order 2 5 4 1 3, cost 51.4375."""
    chances, looks, repairs = [0.40, 0.25, 0.20, 0.10, 0.05], [20, 5, 12, 3, 1.25], [30, 10, 60, 5, 40]
    parts = [Part(look, repair, blind=False) for look, repair in zip(looks, repairs, strict=True)]
    plan = best_order(single(chances), parts, [])
    assert plan.cost == pytest.approx(51.4375)
    assert [i + 1 for i, _ in plan.steps] == [2, 5, 4, 1, 3]


def test_covers_opened_once_by_hand() -> None:
    """p .25 .05 outside, .25 .25 .20 under a cover of 20; cost 20 5 3 3 3: order 3 4 5 1 2, cost 33."""
    parts = [Part(None, 20), Part(None, 5), Part(None, 3, 1), Part(None, 3, 1), Part(None, 3, 1)]
    plan = best_order(single([0.25, 0.05, 0.25, 0.25, 0.20]), parts, [20])
    assert plan.cost == pytest.approx(33.0)
    assert [i + 1 for i, _ in plan.steps] == [3, 4, 5, 1, 2]


def test_one_fault_is_ordered_by_chance_over_looking_cost() -> None:
    rng = random.Random(1)
    for _ in range(300):
        n = rng.randint(2, 5)
        weights = [rng.random() for _ in range(n)]
        chances = [w / sum(weights) for w in weights]
        parts = [Part(rng.uniform(1, 20), rng.uniform(1, 60), blind=False) for _ in range(n)]
        plan = best_order(single(chances), parts, [])
        rule = sorted(range(n), key=lambda i: -chances[i] / (parts[i].look or 1))
        left, cost = 1.0, 0.0
        for i in rule:
            cost += left * (parts[i].look or 0) + chances[i] * parts[i].repair
            left -= chances[i]
        assert plan.cost == pytest.approx(cost)


def test_several_faults_with_shared_covers_against_all_orders() -> None:
    rng = random.Random(2)
    for _ in range(60):
        n = rng.randint(2, 4)
        raw = [rng.random() for _ in range(1 << n)]
        belief = [r / sum(raw) for r in raw]
        covers = [rng.uniform(2, 30), rng.uniform(2, 30)]
        parts = [Part(rng.choice([None, rng.uniform(1, 9)]), rng.uniform(3, 60), rng.randrange(4)) for _ in range(n)]
        assert best_order(belief, parts, covers).cost == pytest.approx(tried_out(belief, parts, covers))


def test_an_open_cover_never_makes_it_dearer() -> None:
    rng = random.Random(4)
    for _ in range(50):
        raw = [rng.random() for _ in range(16)]
        belief = [r / sum(raw) for r in raw]
        parts = [Part(rng.uniform(1, 9), rng.uniform(3, 60), rng.randrange(4)) for _ in range(4)]
        shut = best_order(belief, parts, [10, 20]).cost
        assert best_order(belief, parts, [10, 20], opened=1).cost <= shut + 1e-9
        assert (
            best_order(belief, parts, [10, 20], opened=3).cost
            <= best_order(belief, parts, [10, 20], opened=1).cost + 1e-9
        )


@pytest.mark.parametrize(("accuracy", "cost"), [(1.0, 70.0), (0.8, 82.0)])
def test_what_a_test_is_worth_by_hand(accuracy: float, cost: float) -> None:
    """Two equal suspects, each replaced for 60, a test for 10: without it 90, with a perfect one 70, at .8 it is 82."""
    belief, parts = just_one([0.5, 0.5]), [Part(None, 60), Part(None, 60)]
    assert minutes_of(belief, parts, []) == pytest.approx(90)
    ratio = accuracy / (1 - accuracy) if accuracy < 1 else 1e12
    bad = belief.given(Piece(((1 - accuracy if accuracy < 1 else 1e-12, {0: ratio}),)))
    good = belief.given(Piece(((accuracy, {0: 1 / ratio}),)))
    assert 10 + minutes_of(bad, parts, []) + minutes_of(good, parts, []) == pytest.approx(cost)


def test_a_repair_clears_its_fault_and_a_sure_belief_needs_no_more() -> None:
    """Two faults that are there with a half each, one of them at least: by thirds the first, the second, or both."""
    either = Spread((Term(0.25, (1.0, 1.0), (0.0, 0.0)),)).scaled()
    assert either.table() == pytest.approx([0, 1 / 3, 1 / 3, 1 / 3])
    assert either.mended(0).table()[1:] == pytest.approx([0, 2 / 3, 0])  # and none with what is left over
    assert either.found(0).table() == pytest.approx([1 / 3, 0, 1 / 3, 0])
    assert either.cleared(0).table() == pytest.approx([0, 0, 1 / 3, 0])
    assert best_order([1.0, 0.0], [Part(1, 5)], []).cost == 0
    assert subset_sums([1, 2, 3, 4]) == [1, 3, 4, 10]


def random_spread(rng: random.Random, n: int) -> Spread:
    """A belief over n causes after a finding that one of some faults explains."""
    start = Spread((Term(1.0, tuple(rng.uniform(0.02, 0.6) for _ in range(n)), (0.1,) * n),))
    finding = present({i: rng.uniform(0.3, 0.95) for i in rng.sample(range(n), n // 2)}, 0.05)
    return start.given(finding).scaled()


def test_the_good_order_is_never_better_than_the_best_one_and_seldom_much_worse(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    monkeypatch.setattr(good_order, "EXACT", 0)
    rng, over = random.Random(41), []
    for _ in range(60):
        belief = random_spread(rng, 6)
        parts = [Part(rng.uniform(1, 9), rng.uniform(3, 60), rng.randrange(4)) for _ in range(6)]
        best = best_order(belief.table(), parts, [10, 20]).cost
        over.append(minutes_of(belief, parts, [10, 20]) / best - 1)
    print(f"\nover the best order: mean {sum(over) / len(over):.1%}, worst {max(over):.1%}")
    assert min(over) >= -1e-9
    assert sum(over) / len(over) <= 0.05


def test_the_minutes_of_the_specification_by_the_good_order(monkeypatch: pytest.MonkeyPatch) -> None:
    """Its own examples: 51.4375 minutes for looks in the open, 33.0 with a cover of 20 that is opened once."""
    monkeypatch.setattr(good_order, "EXACT", 0)
    looks, repairs = [20, 5, 12, 3, 1.25], [30, 10, 60, 5, 40]
    parts = [Part(look, repair, blind=False) for look, repair in zip(looks, repairs, strict=True)]
    assert minutes_of(just_one([0.40, 0.25, 0.20, 0.10, 0.05]), parts, []) == pytest.approx(51.4375)
    parts = [Part(None, 20), Part(None, 5), Part(None, 3, 1), Part(None, 3, 1), Part(None, 3, 1)]
    assert minutes_of(just_one([0.25, 0.05, 0.25, 0.25, 0.20]), parts, [20]) == pytest.approx(33.0)


def test_covers_over_covers_are_counted() -> None:
    order = ["flywheel", "shroud"]
    assert cover_bits(["flywheel"], {"flywheel": ["shroud"]}, order) == 3
    assert cover_bits(["shroud"], {"flywheel": ["shroud"]}, order) == 2
