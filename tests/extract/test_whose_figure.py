"""Whose figure it is that says what a number should be: this machine's own book, or a borrowed one. A quarry pump."""

from __future__ import annotations

import pytest

from worklog_tui.extract import explain
from worklog_tui.model import Machine, Reading
from worklog_tui.rulebook import Rulebook

PUMP = Machine("Quarry pump", kind="diaphragm pump with a single-cylinder petrol engine", fuel="petrol", cylinders=1)


@pytest.mark.parametrize(
    ("words", "source"),
    [
        ("the book says the points want fifteen thou", ""),
        ("points should be fifteen thou", ""),
        ("the plate says the belt wants ten millimetres", ""),
        ("the book for the later model says the points want fifteen thou", "handbook of a similar machine"),
        ("the sister machine's handbook wants two millimetres end float", "handbook of a similar machine"),
        ("nearest book I've got says the exhaust valve should be twelve thou", "handbook of a similar machine"),
        ("from memory the plug should be twenty-five thou", "memory"),
        ("the plug gap should be twenty-five thou from memory", "memory"),
        ("old boy reckons the valve clearance should be eight thou", "person"),
        ("somebody told me the tyre should be thirty psi", "person"),
    ],
)
def test_a_borrowed_figure_says_whose_it_is(book: Rulebook, words: str, source: str) -> None:
    found = [f for f in explain(book, PUMP, words).facts if isinstance(f, Reading) and f.role == "specified"]
    assert [f.source for f in found] == [source]


def test_what_was_measured_is_nobodys_figure(book: Rulebook) -> None:
    found = explain(book, PUMP, "from memory I set it at twenty, anyway the plug gap is thirty thou").facts
    assert {f.source for f in found if isinstance(f, Reading) and f.role != "specified"} <= {""}
