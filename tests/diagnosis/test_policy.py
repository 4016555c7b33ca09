"""What it costs to follow the advice to the end, against the best that any plan could do.

Small invented models with one fault, noisy tests and shared covers are solved completely (dynamic programming over all
beliefs that can be reached); the policy under test takes, at every moment, the step of least expected minutes by one
step of look-ahead over the exact look-and-repair order.
"""

from __future__ import annotations

import random
from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property

import pytest

from worklog_tui.diagnosis import good_order
from worklog_tui.diagnosis.good_order import minutes_of
from worklog_tui.diagnosis.order import Part
from worklog_tui.diagnosis.spread import Spread, Term

State = tuple[tuple[float, ...], int, frozenset[int], frozenset[int]]
"(belief over single faults, open covers, tests made, parts known good)."


@dataclass(frozen=True)
class Model:
    """One fault among n parts, each looked at perfectly or repaired unseen, and tests that can err."""

    priors: tuple[float, ...]
    parts: tuple[Part, ...]
    covers: tuple[float, ...]
    tests: tuple[tuple[float, tuple[float, ...]], ...]
    "(minutes, chance of a bad outcome for each fault)."

    @cached_property
    def best(self) -> float:
        """The expected minutes of the optimal plan."""
        return self._best(self.priors, 0, frozenset(), {})

    def way(self, covers: int, opened: int) -> float:
        return sum(m for k, m in enumerate(self.covers) if covers >> k & 1 and not opened >> k & 1)

    def choices(
        self, belief: tuple[float, ...], opened: int, made: frozenset[int]
    ) -> list[tuple[float, list[tuple[float, tuple[float, ...], int, frozenset[int]]]]]:
        """Every step: its minutes, and what may follow (chance, belief, covers, tests); nothing follows a cure."""
        found = []
        for i, part in enumerate(self.parts):
            if belief[i] <= 0:
                continue
            way, now = self.way(part.covers, opened), opened | part.covers
            rest = tuple(0.0 if k == i else p for k, p in enumerate(belief))
            left = sum(rest)
            after = [(left, tuple(p / left for p in rest), now, made)] if left > 1e-12 else []
            found.append((way + part.repair, after))
            if part.look is not None:
                found.append((way + part.look + belief[i] * part.repair, after))
        for t, (minutes, bad) in enumerate(self.tests):
            if t in made:
                continue
            after = []
            for shows in (bad, tuple(1 - b for b in bad)):
                joint = tuple(p * s for p, s in zip(belief, shows, strict=True))
                mass = sum(joint)
                if mass > 1e-12:
                    after.append((mass, tuple(j / mass for j in joint), opened, made | {t}))
            found.append((minutes, after))
        return found

    def _best(self, belief: tuple[float, ...], opened: int, made: frozenset[int], known: dict[object, float]) -> float:
        key = (tuple(round(p, 10) for p in belief), opened, made)
        if key not in known:
            known[key] = min(
                minutes + sum(chance * self._best(b, o, m, known) for chance, b, o, m in after)
                for minutes, after in self.choices(belief, opened, made)
            )
        return known[key]

    def followed(
        self, belief: tuple[float, ...] | None = None, opened: int = 0, made: frozenset[int] = frozenset()
    ) -> float:
        """The expected minutes when the step of least expected minutes is taken at every moment."""
        belief = self.priors if belief is None else belief
        minutes, after = min(self.choices(belief, opened, made), key=lambda c: self._rated(c))
        return minutes + sum(chance * self.followed(b, o, m) for chance, b, o, m in after)

    def _rated(self, choice: tuple[float, list[tuple[float, tuple[float, ...], int, frozenset[int]]]]) -> float:
        minutes, after = choice
        return minutes + sum(chance * self.base(b, o) for chance, b, o, _ in after)

    def base(self, belief: tuple[float, ...], opened: int) -> float:
        return minutes_of(just_one(belief), self.parts, self.covers, opened)


def just_one(chances: Sequence[float]) -> Spread:
    """The belief that exactly one fault is there: one product a fault."""
    n = len(chances)
    terms = (Term(p, tuple(float(k == i) for k in range(n)), (0.0,) * n) for i, p in enumerate(chances))
    return Spread(tuple(terms))


def random_model(rng: random.Random, n: int = 4) -> Model:
    weights = [rng.random() ** 2 + 0.02 for _ in range(n)]
    priors = tuple(w / sum(weights) for w in weights)
    parts = tuple(Part(rng.uniform(2, 15), rng.uniform(10, 60), rng.choice([0, 0, 1, 2])) for _ in range(n))
    tests = tuple((rng.uniform(2, 8), tuple(rng.choice([0.1, 0.9]) for _ in range(n))) for _ in range(3))
    return Model(priors, parts, (rng.uniform(5, 30), rng.uniform(5, 30)), tests)


def test_following_the_advice_costs_hardly_more_than_the_best_plan() -> None:
    rng = random.Random(17)
    excess = sorted(m.followed() / m.best - 1 for m in (random_model(rng) for _ in range(150)))
    mean = sum(excess) / len(excess)
    print(f"\nover the optimum: mean {mean:.2%}, 95th {excess[142]:.2%}, worst {excess[-1]:.2%}")
    assert excess[0] >= -1e-9
    assert mean <= 0.01
    assert excess[142] <= 0.03
    assert excess[-1] <= 0.10


def test_tests_pay_against_the_best_order_without_them() -> None:
    rng = random.Random(19)
    models = [random_model(rng) for _ in range(40)]
    assert sum(m.followed() for m in models) <= sum(m.base(m.priors, 0) for m in models)


def test_the_good_order_of_many_causes_is_as_good_a_base(monkeypatch: pytest.MonkeyPatch) -> None:
    """The order for more causes than can be tried out, here made to plan for a few."""
    monkeypatch.setattr(good_order, "EXACT", 0)
    rng = random.Random(17)
    excess = sorted(m.followed() / m.best - 1 for m in (random_model(rng) for _ in range(100)))
    print(f"\nover the optimum: mean {sum(excess) / 100:.2%}, 95th {excess[94]:.2%}, worst {excess[-1]:.2%}")
    assert sum(excess) / 100 <= 0.01
    assert excess[94] <= 0.03
    assert excess[-1] <= 0.10
