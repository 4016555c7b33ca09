"""The sums of the fault finder against open libraries and published numbers."""

from __future__ import annotations

import itertools
import math
import random
from collections.abc import Sequence

import pytest

from worklog_tui.diagnosis.noisy_or import Piece, absent, posterior, present


def noisy_or_by_pgmpy(
    priors: Sequence[float], links: Sequence[tuple[dict[int, float], float]], seen: Sequence[bool]
) -> list[float]:
    """The posteriors that pgmpy (MIT licence) gives for the same network, by variable elimination over full tables."""
    models = pytest.importorskip("pgmpy.models", reason="pgmpy is not installed")
    factors = pytest.importorskip("pgmpy.factors.discrete")
    inference = pytest.importorskip("pgmpy.inference")
    edges = [(f"d{i}", f"f{n}") for n, (causes, _) in enumerate(links) for i in causes]
    model = models.DiscreteBayesianNetwork(edges)
    for i, p in enumerate(priors):
        if f"d{i}" in model.nodes():
            model.add_cpds(factors.TabularCPD(f"d{i}", 2, [[1 - p], [p]]))
    for n, (causes, leak) in enumerate(links):
        names = list(causes)
        no = [
            (1 - leak) * math.prod(1 - causes[i] for i, on in zip(names, states, strict=True) if on)
            for states in itertools.product((0, 1), repeat=len(names))
        ]
        table = [no, [1 - x for x in no]]
        model.add_cpds(factors.TabularCPD(f"f{n}", 2, table, [f"d{i}" for i in names], [2] * len(names)))
    query = inference.VariableElimination(model)
    evidence = {f"f{n}": int(there) for n, there in enumerate(seen)}
    found = []
    for i, p in enumerate(priors):
        if f"d{i}" in model.nodes():
            found.append(float(query.query([f"d{i}"], evidence=evidence, show_progress=False).values[1]))
        else:
            found.append(p)
    return found


@pytest.mark.filterwarnings("ignore")
def test_noisy_or_networks_against_pgmpy() -> None:
    rng = random.Random(13)
    for _ in range(5):
        priors = [rng.uniform(0.02, 0.4) for _ in range(6)]
        links = [
            ({i: rng.uniform(0.1, 0.95) for i in rng.sample(range(6), 3)}, rng.uniform(0.01, 0.1)) for _ in range(4)
        ]
        seen = [rng.random() < 0.5 for _ in links]
        pieces: list[Piece] = [(present if there else absent)(*link) for link, there in zip(links, seen, strict=True)]
        assert posterior(priors, pieces).chances == pytest.approx(noisy_or_by_pgmpy(priors, links, seen), abs=1e-8)


def test_a_car_that_will_not_start() -> None:
    """Jensen and Nielsen, Bayesian Networks and Decision Graphs: structure; the numbers are from memory.

    No fuel .02, dirty plugs .04; starts with .99, with dirty plugs .01, without fuel never. Not starting: no fuel
    .293186, dirty plugs .580626. A meter at half with no fuel .001, with fuel .60: no fuel .000691, plugs .804350.
    """
    stops = Piece((
        (1.0, {}),
        (-0.99, {0: 0.0, 1: 0.01 / 0.99}),
    ))  # fmt: skip
    found = posterior([0.02, 0.04], [stops]).chances
    assert found == pytest.approx([0.293186, 0.580626], abs=1e-6)
    meter = Piece(((0.60, {0: 0.001 / 0.60}),))
    assert posterior([0.02, 0.04], [stops, meter]).chances == pytest.approx([0.000691, 0.804350], abs=2e-6)
