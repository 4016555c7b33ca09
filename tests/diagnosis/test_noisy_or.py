"""The chance of each fault: against every set of faults counted out, and against numbers checkable by hand."""

from __future__ import annotations

import math
import random
import time
from collections.abc import Sequence

import pytest

from worklog_tui.diagnosis.noisy_or import Piece, absent, outcome, posterior, present

PRIORS = [0.10, 0.05, 0.20]
F1 = ({0: 0.9, 1: 0.3}, 0.01)
F2 = ({1: 0.8, 2: 0.5}, 0.02)


def counted_out(priors: Sequence[float], pieces: Sequence[Piece]) -> tuple[list[float], float]:
    """The same by going through all 2^n sets."""
    n, whole = len(priors), 0.0
    shares = [0.0] * n
    for bits in range(1 << n):
        faults = [i for i in range(n) if bits >> i & 1]
        weight = math.prod(priors[i] if bits >> i & 1 else 1 - priors[i] for i in range(n))
        weight *= math.prod(piece.likelihood(faults) for piece in pieces)
        whole += weight
        for i in faults:
            shares[i] += weight
    return [s / whole for s in shares], whole


@pytest.mark.parametrize(
    ("pieces", "evidence", "chances"),
    [
        ([present(*F1)], 0.1126135, [0.801400, 0.163999, 0.200000]),
        ([present(*F1), absent(*F2)], 0.08629373, [0.884371, 0.037753, 0.111111]),
        ([present(*F1), present(*F2)], 0.02631977, [0.529368, 0.577918, 0.491437]),
    ],
)
def test_numbers_checkable_by_hand(pieces: list[Piece], evidence: float, chances: list[float]) -> None:
    found = posterior(PRIORS, pieces)
    assert found.evidence == pytest.approx(evidence, abs=1e-8)
    assert found.chances == pytest.approx(chances, abs=1e-6)


def random_pieces(rng: random.Random, n: int, most: int) -> list[Piece]:
    pieces = []
    for _ in range(rng.randint(1, most)):
        links = {i: rng.uniform(0.05, 0.99) for i in rng.sample(range(n), rng.randint(1, n))}
        trust, leak, rate = rng.choice([1.0, 0.8, 0.5]), rng.uniform(0.001, 0.1), rng.random()
        if rng.random() < 0.3:
            base = [0.7, 0.2, 0.1]
            rows = {i: [0.1, 0.3, 0.6] for i in links}
            pieces.append(outcome(rows, base, rng.randrange(3), trust, rate))
        else:
            pieces.append(rng.choice([present, absent])(links, leak, trust, rate))
    return pieces


def test_200_random_models_against_all_sets() -> None:
    rng, worst = random.Random(7), 0.0
    for _ in range(200):
        n = rng.randint(2, 9)
        priors = [rng.uniform(0.01, 0.5) for _ in range(n)]
        pieces = random_pieces(rng, n, 7)
        shares, whole = counted_out(priors, pieces)
        found = posterior(priors, pieces)
        worst = max(worst, *(abs(a - b) for a, b in zip(shares, found.chances, strict=True)))
        assert found.evidence == pytest.approx(whole, rel=1e-9)
    assert worst <= 1e-9


def test_hardly_possible_evidence_keeps_its_digits() -> None:
    """An alternating sum near 1e-12 of its terms is done again with sixty digits."""
    priors = [1e-4] * 6
    pieces = [present({i: 0.9, (i + 1) % 6: 0.5}, 1e-6) for i in range(6)]
    shares, whole = counted_out(priors, pieces)
    found = posterior(priors, pieces)
    assert found.chances == pytest.approx(shares, abs=1e-9)
    assert found.evidence == pytest.approx(whole, rel=1e-6)


@pytest.mark.parametrize(
    ("base", "wanted"),
    [(0.5, {1.0: 0.692308, 0.5: 0.368421, 0.0: 0.2}), (0.26, {1.0: 0.692308, 0.5: 0.446154, 0.0: 0.2})],
)
def test_trust_is_a_mixture(base: float, wanted: dict[float, float]) -> None:
    """Prior .2, sensitivity .9, false positive .1. With the base rate .26 it is w posterior + (1 - w) prior exactly."""
    for trust, chance in wanted.items():
        with_fault, without = (trust * x + (1 - trust) * base for x in (0.9, 0.1))
        found = posterior([0.2], [Piece(((without, {0: with_fault / without}),))])
        assert found.chances[0] == pytest.approx(chance, abs=1e-6)


def test_the_order_of_evidence_does_not_matter() -> None:
    rng = random.Random(3)
    priors = [0.1, 0.2, 0.3, 0.05]
    pieces = random_pieces(rng, 4, 6)
    one = posterior(priors, pieces)
    other = posterior(priors, pieces[::-1])
    assert one.chances == pytest.approx(other.chances, abs=1e-12)


def test_a_missing_finding_never_raises_a_fault() -> None:
    rng = random.Random(5)
    for _ in range(100):
        n = rng.randint(1, 6)
        priors = [rng.uniform(0.01, 0.5) for _ in range(n)]
        links = {i: rng.random() for i in range(n)}
        found = posterior(priors, [absent(links, 0.02)])
        assert all(after <= before + 1e-12 for after, before in zip(found.chances, priors, strict=True))


def test_evidence_of_trust_nothing_changes_nothing() -> None:
    found = posterior(PRIORS, [present(*F1, trust=0.0, base=0.3), absent(*F2, trust=0.0, base=0.3)])
    assert found.chances == pytest.approx(PRIORS)


def test_contradicting_evidence_is_told() -> None:
    with pytest.raises(ValueError, match="contradicts"):
        posterior([0.5], [present({}, 0.0)])


def test_beyond_twelve_joint_findings_the_weakest_are_left_out_and_named() -> None:
    rng = random.Random(11)
    priors = [0.05] * 40
    pieces = [present(dict.fromkeys(rng.sample(range(40), 10), 0.5), 0.02, 0.9) for _ in range(14)]
    began = time.process_time()
    found = posterior(priors, pieces)
    assert len(found.left_out) == 2
    assert time.process_time() - began < 1.5


def test_a_fault_that_a_check_does_not_tell_from_none_is_no_stumbling_block() -> None:
    """The likelihood of one outcome with it is that without it, in every term."""
    pieces = [outcome({0: (0.1, 0.9), 1: (0.9, 0.1)}, (0.9, 0.1), 1, 1.0, 0.2), present(*F1)]
    wanted, mass = counted_out(PRIORS, pieces)
    found = posterior(PRIORS, pieces)
    assert found.chances == pytest.approx(wanted)
    assert found.evidence == pytest.approx(mass)
