"""How sure the reader is, beside how often it is right: on all labelled cases, each judged by the others.

A fact is right here when a labelled fact of its kind agrees with it in the core (judge.py). For each case left out the
share of right facts by band of confidence is taken from the other cases; the error printed is the mean difference
between that share and what the left-out case shows. `pytest tests/cases/test_confidence.py -s` prints the table; with
WORKLOG_CASES naming another folder of labelled cases, of those.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Mapping
from typing import Any

import pytest

from tests.cases.conftest import CASES, gold_of, lines_of
from tests.cases.judge import KINDS, NEAR, apart, same
from worklog_tui.extract import CONFIDENCE_LINE

BANDS = (0.0, CONFIDENCE_LINE, 0.6, 0.7, 0.8)
Judged = tuple[str, str, float, bool]
"Case, kind, confidence, whether it is right."


@pytest.fixture(scope="module")
def judged(read: dict[str, dict[str, Any]]) -> list[Judged]:
    rows: list[Judged] = []
    for case in CASES:
        gold, lines = gold_of(case)["facts"], lines_of(case)
        for fact in (*read[case.name]["facts"], *read[case.name]["questions"]):
            if fact["kind"] in KINDS:
                agrees = any(_agrees(fact, g, lines) for g in gold)
                rows.append((case.name, fact["kind"], fact["confidence"], agrees))
    return rows


def _agrees(fact: Mapping[str, Any], gold: Mapping[str, Any], lines: Mapping[tuple[int, str], int]) -> bool:
    return fact["kind"] == gold["kind"] and apart(fact, gold, lines) <= NEAR and same(fact, gold)


def _band(confidence: float) -> float:
    return max(b for b in BANDS if confidence >= b)


def _shares(rows: Iterable[Judged]) -> dict[float, tuple[int, int]]:
    right: dict[float, int] = defaultdict(int)
    said: dict[float, int] = defaultdict(int)
    for _, _, confidence, agrees in rows:
        right[_band(confidence)] += agrees
        said[_band(confidence)] += 1
    return {b: (right[b], said[b]) for b in said}


def _share(rows: Iterable[Judged]) -> float:
    right, said = map(sum, zip(*_shares(rows).values(), strict=True))
    return right / said


def test_the_surer_facts_are_more_often_right(judged: list[Judged]) -> None:
    print()
    for kind in KINDS:
        shares = sorted(_shares(r for r in judged if r[1] == kind).items())
        print(f"{kind:9}", "   ".join(f"from {b:.1f}: {k:3} of {n:3} {k / n:4.0%}" for b, (k, n) in shares))
    asked = _share(r for r in judged if r[2] < CONFIDENCE_LINE)
    unsure = _share(r for r in judged if CONFIDENCE_LINE <= r[2] < 0.7)
    sure = _share(r for r in judged if r[2] >= 0.7)
    print(f"asked about {asked:.0%}, facts below 0.7 {unsure:.0%}, from 0.7 {sure:.0%}")
    assert asked < unsure < sure
    assert asked < 0.5


def test_what_other_cases_tell_of_a_band_holds_for_a_case_left_out(judged: list[Judged]) -> None:
    off, counted = 0.0, 0
    for case in CASES:
        elsewhere = _shares(r for r in judged if r[0] != case.name)
        for band, (right, said) in _shares(r for r in judged if r[0] == case.name).items():
            expected = elsewhere[band][0] / elsewhere[band][1]
            off, counted = off + abs(expected - right / said) * said, counted + said
    print(f"\nmean difference from what the other cases tell: {off / counted:.3f}, over {counted} facts")
    assert off / counted < 0.15


SURE = 0.75
"Share of right facts from which the other cases call a band of a kind a sure one (judgement)."


def test_what_the_other_cases_call_sure_is_right(judged: list[Judged]) -> None:
    """Each case left out: of its facts in the bands that are sure elsewhere, so many are right; of the rest fewer."""
    print()
    told: dict[bool, list[int]] = {True: [0, 0], False: [0, 0]}
    for kind in KINDS:
        mine = [row for row in judged if row[1] == kind]
        found: dict[bool, list[int]] = {True: [0, 0], False: [0, 0]}
        for case in {row[0] for row in mine}:
            elsewhere = _shares(row for row in mine if row[0] != case)
            for band, (right, said) in _shares(row for row in mine if row[0] == case).items():
                there = elsewhere.get(band, (0, 1))
                sure = there[0] / there[1] >= SURE
                found[sure] = [found[sure][0] + right, found[sure][1] + said]
        told = {sure: [a + b for a, b in zip(told[sure], found[sure], strict=True)] for sure in told}
        rows = (f"{'sure' if s else 'unsure'} {k:4} of {n:4} {k / n:4.0%}" for s, (k, n) in found.items() if n)
        print(f"{kind:9}", "   ".join(rows))
    right, said = told[True]
    print(f"sure elsewhere, right where left out: {right} of {said}, {right / said:.0%}")
    assert right / said >= SURE
    assert told[False][0] / told[False][1] < right / said - 0.1
