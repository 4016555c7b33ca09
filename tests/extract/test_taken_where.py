"""Where on a thing it was measured and over how much of it: along a bar, over a length, a foot. A shaper."""

from __future__ import annotations

import pytest

from worklog_tui.extract.reader import read_session
from worklog_tui.model import Machine, Note, Reading
from worklog_tui.rulebook import Rulebook

SHAPER = Machine("shaper", kind="shaping machine with an electric motor", fuel="none", ignition="none")


def told(book: Rulebook, *said: str, track: str = "captions") -> list[tuple[object, str]]:
    notes = [Note(f"n{k}", "s", words, track=track, arrival=k) for k, words in enumerate(said)]
    facts = read_session(book, SHAPER, notes)
    return [(f.value, f.condition) for f in facts if isinstance(f, Reading)]


@pytest.mark.parametrize(
    ("said", "value", "how"),
    [
        ("The vice is out of square by five thou over seven inches.", 0.005, "over seven inches"),
        ("The sheet allows no more than three thou on a mandrel at eight inches.", 0.003, "maximum, at eight inches"),
        ("The bed is hollow by four thou per foot.", 0.004, "per foot"),
        ("The chain has thirty mil of slack at the tight spot.", 30.0, "at the tight spot"),
        ("Ram shake is four thou at the bearing end.", 0.004, "at the bearing end"),
        ("Belt gives 12 mm midway.", 12.0, "midway"),
    ],
)
def test_where_and_over_how_much_it_was_measured(book: Rulebook, said: str, value: float, how: str) -> None:
    assert (value, how) in told(book, said)


@pytest.mark.parametrize(
    ("said", "row"), [("bed level 3 thou/ft", (0.003, "per foot")), ("bar runout .0004 in 6", (0.0004, "in 6 in"))]
)
def test_shorthand_tells_it_with_few_signs(book: Rulebook, said: str, row: tuple[float, str]) -> None:
    assert row in told(book, said, track="typed")


def test_how_far_along_the_clock_was_put_is_told_of_what_it_reads_there(book: Rulebook) -> None:
    found = told(book, "Run-out of the mandrel. Clock five inches down. Nine thou.")
    assert found[-1] == (0.009, "at five inches")


def test_a_price_or_a_speed_behind_at_is_no_place(book: Rulebook) -> None:
    assert all("at" not in how for _, how in told(book, "The belt has half an inch of give, pump at 782."))
