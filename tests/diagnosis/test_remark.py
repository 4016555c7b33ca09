"""What is said of the causes as a whole: two that are likely at once are planned for together."""

from __future__ import annotations

from types import SimpleNamespace
from typing import Any

import pytest

from worklog_tui.diagnosis.advise import _remark


def engine(**chances: float) -> Any:
    """The little of an engine that a remark looks at: suspects with their chances, and a list that explains enough."""
    return SimpleNamespace(
        symptom=SimpleNamespace(id="runs hot"),
        suspects=list(chances), top=max(chances.values()),
        signs=SimpleNamespace(look_signs={}, faults={n: SimpleNamespace(name=n) for n in chances}),
        network=SimpleNamespace(
            chance=lambda name: chances.get(name, 0.0), result=SimpleNamespace(left_out=())
        ),
    )  # fmt: skip


def test_two_that_are_likely_at_once_are_planned_for_together() -> None:
    assert _remark(engine(thermostat=0.8, pump=0.6, radiator=0.1)) == (
        "More than one thing is likely wrong at once (thermostat; pump): plan for all of it while it is open."
    )


@pytest.mark.parametrize("chances", [{"thermostat": 0.8, "pump": 0.3}, {"thermostat": 0.4}])
def test_one_alone_needs_no_remark(chances: dict[str, float]) -> None:
    assert _remark(engine(**chances)) == ""
