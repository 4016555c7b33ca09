"""Whose a number is where the words name it late or not at all: asked again, told with it, or of all of several."""

from __future__ import annotations

import pytest

from tests.extract.test_whose_number import COMPRESSOR, PETROL
from worklog_tui.extract.reader import read_session
from worklog_tui.model import Machine, Note, Reading
from worklog_tui.rulebook import Rulebook


@pytest.mark.parametrize(
    ("machine", "track", "lines", "quantity", "subjects"),
    [
        (PETROL, "captions", ["Wheel nuts, because one was loose. Seventy on all five."], "torque", ["wheel nuts"]),
        (PETROL, "captions", ["New copper washers, forty foot pounds."], "torque", [""]),
        (PETROL, "captions", ["Oil pressure, fifty psi, cold.", "Nine minutes now."], "duration", ["engine"]),
        (COMPRESSOR, "captions", ["Filling from 60 to 90 took 40 seconds."], "duration", ["filling from 60 to 90"]),
        (PETROL, "typed", ["pressure on gearcase 9 -> 5 in 3 min."], "duration", ["gearcase"]),
        (PETROL, "typed", ["5 psi on case"], "pressure", ["case"]),
        (PETROL, "typed", ["screws M4, new"], "thread", ["screws"]),
        (PETROL, "captions", ["Compression. Ninety on the first one, eighty-eight on two."], "compression",
         ["cylinder 1", "cylinder 2"]),
        (PETROL, "captions", ["Left rear lining, three-sixteenths. Right rear is, oh, it's an eighth."], "length",
         ["left rear lining", "right rear lining"]),
    ],
)  # fmt: skip
def test_a_number_is_given_to_what_it_can_be_of(
    book: Rulebook, machine: Machine, track: str, lines: list[str], quantity: str, subjects: list[str]
) -> None:
    notes = [Note(f"n{i}", "s", line, track=track, arrival=i) for i, line in enumerate(lines)]
    facts = read_session(book, machine, notes)
    assert [f.subject for f in facts if isinstance(f, Reading) and f.quantity == quantity] == subjects
