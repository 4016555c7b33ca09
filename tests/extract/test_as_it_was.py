"""A figure of an old part was measured, whatever was set before; how a machine stood is told with it. A loom."""

from __future__ import annotations

import pytest

from worklog_tui.extract.reader import read_session
from worklog_tui.model import Machine, Note, Reading
from worklog_tui.rulebook import Rulebook

LOOM = Machine("loom", kind="loom, electric motor", fuel="none", ignition="none")


def readings(book: Rulebook, *said: str, track: str = "typed") -> list[Reading]:
    notes = [Note(f"n{k}", "s", words, track=track, arrival=k) for k, words in enumerate(said)]
    return [f for f in read_session(book, LOOM, notes) if isinstance(f, Reading)]


@pytest.mark.parametrize(
    ("line", "role"),
    [
        ("stick buffer 3/8 worn", "measured"),
        ("brake lining worn down to 2 mm", "measured"),
        ("chain tension set 12 mm", "set"),
    ],
)
def test_a_worn_part_was_measured_and_not_set(book: Rulebook, line: str, role: str) -> None:
    assert [f.role for f in readings(book, "back stop set 1/8", line)][-1] == role


def test_what_is_taken_off_load_stands_on_no_plate(book: Rulebook) -> None:
    found = readings(book, "motor plate 230 V 4.2 A 1420 rpm", "motor 1.9 A off load")
    assert [f.role for f in found][-1] == "measured"
    assert {f.role for f in found[:-1]} == {"rated"}


@pytest.mark.parametrize(
    ("line", "condition"),
    [
        ("motor draws 3.1 A with the belt off", "belt off"),
        ("motor draws 5.2 A with the clutch in", "clutch in"),
        ("return spring 88 mm uncompressed", "free"),
        ("The relief valve lifts at nine bar.", "lifts"),
        ("oil temperature should be 50 degrees or under", "maximum"),
    ],
)
def test_how_it_stood_is_told_with_the_figure(book: Rulebook, line: str, condition: str) -> None:
    assert condition in [f.condition for f in readings(book, line)]
