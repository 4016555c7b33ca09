"""Days as people answer when asked when something was filmed."""

from __future__ import annotations

from datetime import date

import pytest

from worklog_tui.notes.day_said import day_said

TODAY = date(2031, 4, 12)
"A Saturday."


@pytest.mark.parametrize(
    ("said", "day"),
    [
        ("today", TODAY),
        ("Yesterday", date(2031, 4, 11)),
        ("last Saturday", date(2031, 4, 5)),
        ("Tuesday", date(2031, 4, 8)),
        ("on thursday", date(2031, 4, 10)),
        ("3 days ago", date(2031, 4, 9)),
        ("two weeks ago", date(2031, 3, 29)),
        ("last week", date(2031, 4, 5)),
        ("a week ago", date(2031, 4, 5)),
        ("1 April", date(2031, 4, 1)),
        ("April 1st, 2031", date(2031, 4, 1)),
        ("the 3rd", None),
        ("20 dec", date(2030, 12, 20)),
        ("2nd of March 2030", date(2030, 3, 2)),
        ("3 to 5 March", date(2031, 3, 3)),
        ("from 3-5 march 2031", date(2031, 3, 3)),
        ("31 June", None),
        ("1 May 2031", None),
        ("tomorrow", None),
        ("in the shed", None),
        ("99999999999999 weeks ago", None),
    ],
)
def test_a_day_is_understood_as_it_is_said(said: str, day: date | None) -> None:
    assert day_said(said, TODAY) == day
