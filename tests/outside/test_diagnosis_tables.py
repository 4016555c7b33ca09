"""Public fault-finding tables: each row as the only complaint of an otherwise unknown machine.

The rows are those of U.S. government publications and old textbooks, as named in each. At least 80 % of the causes that
a row lists must be in the fault files, two of the first four must be among the three likeliest where the table is
ordered, and the first step must be one of the simple checks: those of the row, and the looks that cost nothing (common
practice): at most FREE minutes with nothing to take off. How many rows hold with their own checks alone is printed and
has a floor of its own. Run with -s to see the shares.
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


FREE = 1.0
"Minutes of a look that costs nothing."
SHORT: dict[int, str] = {}
"""Rows that fall short today, with what falls short: a test tells when one is cured."""


def costs_nothing(step: str) -> bool:
    """Whether a check or look takes no time to speak of, and nothing must come off for it."""
    check, fault = faults().checks.get(step), faults().faults.get(step)
    job = check.job if check else fault.look if fault else None
    return job is not None and job.minutes <= FREE and not job.access


def shortfall(n: int, own_alone: bool = False) -> str:
    """What falls short of a row: complaint not heard, causes missing, others first, the step no simple one.

    `own_alone`: a free look that the row does not name counts as none.
    """
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
    simple = first in row.simple or (not own_alone and costs_nothing(first))
    return "" if simple else f"the first step is {first}"


@pytest.mark.parametrize("n", range(len(ROWS)), ids=[f"row {r.number}: {r.source}" for r in ROWS])
def test_a_row_of_the_handbooks(n: int) -> None:
    assert bool(shortfall(n)) is (ROWS[n].number in SHORT), shortfall(n)


def test_every_row_of_the_specification_is_held_or_said_not_to_be() -> None:
    numbers = sorted({r.number for r in ROWS} | set(NOT_HELD))
    assert numbers == list(range(1, 45))
    falls = {ROWS[n].number: short for n in range(len(ROWS)) if (short := shortfall(n))}
    right = len(ROWS) - len(falls)
    own = sum(not shortfall(n, own_alone=True) for n in range(len(ROWS)))
    print(
        f"\nhandbook rows: {right} of {len(numbers)} as the tables have it",
        *falls.items(),
        *NOT_HELD.items(),
        f"by the rows' own checks alone: {own} of {len(numbers)}",
        sep="\n  ",
    )
    assert own / len(numbers) >= 0.9
    assert right / len(numbers) >= 0.9
