"""The next step of the labelled cases: the first is one that a mechanic would take, and none of three is a wrong one.

The labels were written before anybody saw what the program advises. A step is one of the labelled ones when it has all
words of one of its wordings. Floors may only rise.
"""

from __future__ import annotations

import json
import re
from pathlib import Path
from typing import Any

import pytest

from tests.cases.conftest import CASES, UNLOOKED_AT

RIGHT_AT_LEAST = 25
"So many first steps are good ones, of thirty-four."


def words(text: str) -> frozenset[str]:
    return frozenset(w.rstrip("s") for w in re.findall(r"[a-z]+", text.lower()) if w not in ("the", "a", "with", "of"))


def steps_of(case: Path, read: dict[str, dict[str, Any]]) -> list[str]:
    """The first three steps of a case."""
    return [step["step"] for step in read[case.name]["next_steps"][:3]]


def is_one_of(step: str, case: Path, sort: str) -> bool:
    labels = json.loads((case / "gold.json").read_text(encoding="utf-8"))["next_steps"][sort]
    return any(words(w) <= words(step) for wordings in labels for w in wordings)


def test_the_first_step_is_a_good_one(read: dict[str, dict[str, Any]]) -> None:
    right = {c.name: is_one_of(steps_of(c, read)[0], c, "good") for c in CASES}
    shown = [c for c in CASES if c.parent.name not in UNLOOKED_AT]  # what is missed there is never looked at
    print("", *((c.name, right[c.name], steps_of(c, read)[0]) for c in shown), sep="\n  ")
    assert sum(right.values()) >= RIGHT_AT_LEAST


@pytest.mark.parametrize("case", CASES, ids=lambda case: case.name)
def test_no_step_among_three_is_a_wrong_one(case: Path, read: dict[str, dict[str, Any]]) -> None:
    assert not [s for s in steps_of(case, read) if is_one_of(s, case, "bad")]
