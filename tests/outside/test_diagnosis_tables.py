"""Public fault-finding tables: each row as the only complaint of an otherwise unknown machine.

The rows are those of U.S. government publications and old textbooks, as named in each. At least 80 % of the causes that
a row lists must be in the fault files, two of the first four must be among the three likeliest where the table is
ordered, and the first step must be one of the simple checks: those of the row, and the looks that cost nothing (common
practice). Run with -s to see the shares.
"""

from __future__ import annotations

from functools import lru_cache

import pytest

from tests.diagnosis.workshop import Log
from tests.outside.handbook_rows import NOT_HELD, ROWS
from worklog_tui import places
from worklog_tui.diagnosis import advise
from worklog_tui.model import Advice
from worklog_tui.rulebook.faults import FaultBook, load_faults


@lru_cache(maxsize=1)
def faults() -> FaultBook:
    return load_faults([places.grammars()])


@lru_cache(maxsize=64)
def advice_for(row: int) -> Advice:
    part, state = ROWS[row].heard
    log = Log(ROWS[row].machine).found(part, state, state=state)
    return advise(log.history(), [], faults(), None)


SHORT: dict[int, str] = {}
"""Rows that fall short today, with what falls short: a test tells when one is cured."""


def shortfall(n: int) -> str:
    """What falls short of a row: complaint not heard, causes missing, others first, the step no simple one."""
    row, advice = ROWS[n], advice_for(n)
    if not advice.complaint or not advice.steps:
        return "the complaint is not heard"
    known = sum(c in faults().faults for c in row.causes) / len(row.causes)
    if known < 0.8:
        return f"only {known:.0%} of its causes are in the files"
    top, listed = {c.id for c in advice.causes[:3]}, set(row.causes[:4])
    if row.ordered and len(top & listed) < min(2, len(listed)):
        return f"the likeliest are {', '.join(sorted(top))}"
    first = advice.steps[0].source
    return "" if first in row.simple else f"the first step is {first}"


@pytest.mark.parametrize("n", range(len(ROWS)), ids=[f"row {r.number}: {r.source}" for r in ROWS])
def test_a_row_of_the_handbooks(n: int) -> None:
    assert bool(shortfall(n)) is (ROWS[n].number in SHORT), shortfall(n)


def test_every_row_of_the_specification_is_held_or_said_not_to_be() -> None:
    numbers = sorted({r.number for r in ROWS} | set(NOT_HELD))
    assert numbers == list(range(1, 45))
    falls = {ROWS[n].number: short for n in range(len(ROWS)) if (short := shortfall(n))}
    right = len(ROWS) - len(falls)
    print(
        f"\nhandbook rows: {right} of {len(numbers)} as the tables have it",
        *falls.items(),
        *NOT_HELD.items(),
        sep="\n  ",
    )
    assert right / len(numbers) >= 0.9
