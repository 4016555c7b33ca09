"""Whatever is said, the advice comes, keeps its limits and never sends anyone back to what was proved good."""

from __future__ import annotations

import random

import pytest

from tests.diagnosis.workshop import PUMP, Log
from worklog_tui.diagnosis import Safety, advise
from worklog_tui.model import Machine
from worklog_tui.rulebook.faults import FaultBook

MACHINES = (
    PUMP,
    Machine("Old van", "four-cylinder petrol van", "petrol", "battery", 4),
    Machine("Air set", "two-stage air compressor, single-phase motor", "none", "none"),
    Machine("Digger", "diesel digger with hydraulic arm", "diesel", "none", 3),
    Machine("Unknown"),
)
REASONS = ("temporary", "part needed", "fault", "to do", "fallback", "question")


def random_log(rng: random.Random, faults: FaultBook) -> Log:
    log = Log(rng.choice(MACHINES))
    parts = sorted({p for f in faults.faults.values() for p in f.heard.parts} | {"engine", "spark", "compression", "x"})
    states = sorted(
        {s for y in faults.symptoms.values() for s in y.heard.states} | {"", "fine", "no", "not", "maybe stuck"}
    )
    causes = sorted({c for f in faults.faults.values() for c in f.heard.causes})
    for _ in range(rng.randint(0, 60)):
        part, state = rng.choice(parts), rng.choice(states)
        match rng.randrange(7):
            case 0:
                log.did(rng.choice(("clean", "replace", "check", "start", "adjust", "disconnect")), part)
            case 1:
                log.suspected(rng.choice(causes), rng.choice(("suspected", "ruled out", "confirmed")))
            case 2:
                log.read(
                    rng.choice(("gap", "compression", "voltage")),
                    rng.random() * 100,
                    rng.choice(("in", "psi", "V")),
                    part,
                )
            case 3:
                log.later(f"{state} {part}".strip(), rng.choice(REASONS), name=rng.choice(("", part)))
            case 4:
                log.session()
            case _:
                log.found(part, state, rng.choice(("good", "bad", "noted")), name=rng.choice(("", part)), state=state)
    return log


@pytest.mark.parametrize("seed", range(40))
def test_any_log_gets_sound_advice(seed: int, faults: FaultBook) -> None:
    log = random_log(random.Random(seed), faults)
    advice = advise(log.history(), log.items(), faults, None)
    assert len(advice.steps) <= 5
    assert len({s.step for s in advice.steps}) == len(advice.steps)
    safety = Safety(faults)
    for step in advice.steps:
        assert step.step
        assert step.why
        assert safety.never(step.step) is None
        assert step.minutes is None or step.minutes > 0
    assert all(0.0 <= c.chance <= 1.0 and c.grade in ("likely", "possible", "unlikely") for c in advice.causes)
    assert all(s.standing in ("proved good", "in doubt", "bad", "not looked at") for s in advice.systems)
