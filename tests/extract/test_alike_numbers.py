"""Two of a kind in one breath: each bears a number of its own, told by the end that it sits at."""

from __future__ import annotations

import pytest

from worklog_tui.extract import explain
from worklog_tui.model import Machine, Number
from worklog_tui.rulebook import Rulebook

BLOWER = Machine("Pottery kiln", kind="kiln with a blower")


@pytest.mark.parametrize(
    ("words", "told"),
    [
        ("the front bearing's a 6202 and the back one's a 6303", {"front bearing": "6202", "back bearing": "6303"}),
        ("drive end bearing 6202, non drive end 6303", {"drive end bearing": "6202", "non drive end bearing": "6303"}),
        ("top bearing is a 6001 and the bottom one is a 6002", {"top bearing": "6001", "bottom bearing": "6002"}),
        ("DE bearing 6306 2RS, NDE 6305 ZZ", {"DE bearing": "6306 2RS", "NDE bearing": "6305 ZZ"}),
        ("upper bearing 6001, lower 6002 and far end NU205",
         {"upper bearing": "6001", "lower bearing": "6002", "far end bearing": "NU205"}),
        ("front tyres are 4.00-8, back 5.00-10", {"front tyre": "4.00-8", "back tyre": "5.00-10"}),
        ("the fan belt's an A42 and the other one's an A45", {"belt": "A42", "other belt": "A45"}),
        ("the left bearing is a 6204, the right one's noisy", {"left bearing": "6204"}),
    ],
)  # fmt: skip
def test_each_of_two_has_its_own_number(book: Rulebook, words: str, told: dict[str, str]) -> None:
    found = [f for f in explain(book, BLOWER, words).facts if isinstance(f, Number)]
    assert {f.of: f.number for f in found} == told
    assert len(found) == len(told)
