"""`Fourteen thou on one, nine on two`: figure after figure, each on one of several. The slippers of a mine pump."""

from __future__ import annotations

import pytest

from worklog_tui.extract import explain
from worklog_tui.model import Machine, Reading
from worklog_tui.rulebook import Rulebook

PUMP = Machine("mine pump", kind="three-throw mine pump, electric motor", fuel="none", ignition="none")


@pytest.mark.parametrize(
    ("words", "found"),
    [
        (
            "Slipper clearance eleven thou on one, eight on two, ten on three.",
            [("slipper clearance 1", 0.011), ("slipper clearance 2", 0.008), ("slipper clearance 3", 0.01)],
        ),
        (
            "Plug gaps, thirty thou on one and twenty-six on two.",
            [("plug 1", 0.03), ("plug 2", 0.026)],
        ),
        (
            "Compression, ninety on one, eighty-five on two.",
            [("cylinder 1", 90.0), ("cylinder 2", 85.0)],
        ),
    ],
)
def test_each_figure_is_of_the_one_told_behind_it(book: Rulebook, words: str, found: list[tuple[str, float]]) -> None:
    facts = [f for f in explain(book, PUMP, words).facts if isinstance(f, Reading)]
    assert [(f.subject.lower(), f.value) for f in facts] == found
