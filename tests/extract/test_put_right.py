"""A figure that is put right, at once, a sentence later or some minutes on, is one reading; hearsay is none."""

from __future__ import annotations

import pytest

from worklog_tui import places
from worklog_tui.extract import read_session
from worklog_tui.model import Machine, Note, Reading
from worklog_tui.rulebook import load

BOOK = load([places.grammars()], places.cache())
LIFT = Machine("Dumb waiter", kind="goods lift with an electric motor")


def values(*lines: str) -> list[object]:
    notes = [Note(f"n{n}", "s", line, track="captions", arrival=n) for n, line in enumerate(lines)]
    return [f.value for f in read_session(BOOK, LIFT, notes) if isinstance(f, Reading)]


@pytest.mark.parametrize(
    ("lines", "left"),
    [
        (["Four amps on the lift motor. Correction, five amps."], [5.0]),
        (["Rope guide gap's 7 mm? No. 5 mm."], [5.0]),
        (["three turns out. no, two and a half turns out."], [2.5]),
        (["the guide clearance is ten thou", "scrub that, it's twelve thou."], [0.012]),
        (["The lift motor draws 4 amps.", "Brushes look fine.", "Earlier I said four amps, it's six amps."], [6.0]),
        (["The governor runs at 400 rpm.", "Not 400 rpm, 500 rpm."], [500.0]),
        (["That gap's 20 thou. No, hang on. It's 18 thou."], [0.018]),
        (["Front is 10 thou. Rear is 12 thou."], [0.010, 0.012]),
        (["Number one is ninety psi. No, number two is ninety five psi."], [90.0, 95.0]),
    ],
)
def test_what_was_put_right_is_one_reading(lines: list[str], left: list[float]) -> None:
    assert values(*lines) == pytest.approx(left)


@pytest.mark.parametrize(
    "words",
    [
        "A viewer says his runs at forty psi.",
        "The previous owner told me he had six amps.",
        "I once had one that pulled nine amps.",
        "I wish it made sixty psi.",
        "Is it ten thou?",
    ],
)
def test_what_others_told_or_what_is_asked_is_no_reading(words: str) -> None:
    assert not values(words)
