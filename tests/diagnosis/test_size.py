"""The next step with far more faults and checks than are shipped, for one complaint."""

from __future__ import annotations

import time
from dataclasses import replace

from tests.diagnosis.workshop import PUMP, Log
from worklog_tui.diagnosis import advise
from worklog_tui.diagnosis.makeup import makeup
from worklog_tui.rulebook.faults import FaultBook

FAULTS, CHECKS = 200, 120


def swollen(book: FaultBook) -> FaultBook:
    """The book with copies of faults and checks that fit a petrol pump, all of them causes of its not starting."""
    pump = makeup(PUMP, book.has.values())
    faults = [f for f in book.faults.values() if pump.fits(f.applies)]
    checks = [c for c in book.checks.values() if pump.fits(c.applies)]
    symptom = book.symptoms["no_start"]
    more = {f"{faults[n % len(faults)].id}#{n}": faults[n % len(faults)] for n in range(FAULTS)}
    tests = {f"{checks[n % len(checks)].id}#{n}": (checks[n % len(checks)], n) for n in range(CHECKS)}
    names = list(more)
    copies = {
        i: replace(c, id=i, only_for=(), answers="", likelihood={names[(7 * n + k) % FAULTS]: row
                   for k, row in enumerate(c.likelihood.values())})
        for i, (c, n) in tests.items()
    }  # fmt: skip
    return replace(
        book, faults={i: replace(f, id=i) for i, f in more.items()}, checks=copies,
        symptoms={"no_start": replace(symptom, first=(), causes=dict.fromkeys(more, 0.4))},
    )  # fmt: skip


def test_200_faults_and_120_checks_take_half_a_second(faults: FaultBook) -> None:
    log = Log().found("spark plug", "fine", "good").found("fuel filter", "clean", "good").did("clean", "main jet")
    log.found("engine", "won't start", state="won't start").later("fan belt", "part needed")
    book, history, items = swollen(faults), log.history(), log.items()
    took = []
    for _ in range(3):
        began = time.process_time()
        advice = advise(history, items, book, None)
        took.append(time.process_time() - began)
    print(f"\n{len(book.faults)} faults and {len(book.checks)} checks: {min(took):.2f} s of processor time")
    assert len(advice.steps) >= 3
    assert min(took) <= 0.5
