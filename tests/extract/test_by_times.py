"""Sizes with a times sign: what a part is bought by, in the unit that it is sold by; not how many of them."""

from __future__ import annotations

import pytest

from worklog_tui.extract.reader import CONFIDENCE_LINE, read_session
from worklog_tui.model import Machine, Note, Reading
from worklog_tui.rulebook import Rulebook

LIFT = Machine("Hay elevator", kind="single-cylinder petrol engine", fuel="petrol", cylinders=1)


def sizes(book: Rulebook, line: str) -> list[tuple[str, object, str, str]]:
    facts = read_session(book, LIFT, [Note("n", "s", line, track="typed", arrival=0)])
    found = [f for f in facts if isinstance(f, Reading) and f.confidence >= CONFIDENCE_LINE]
    return [(f.subject, f.value, f.unit, f.role) for f in found if f.quantity == "length"]


@pytest.mark.parametrize(
    ("line", "part", "first", "second"),
    [
        ("v belt 10 x 940 cracked", "v belt", (10, "mm"), (940, "mm")),
        ("fuel hose 5/16 x 600mm", "fuel hose", (0.3125, "in"), (600, "mm")),
        ("need hose 1/2 x 3 m", "hose", (0.5, "in"), (3, "m")),
        ("fitted new 13 x 1250 belt", "belt", (13, "mm"), (1250, "mm")),
        ("tyre 13 x 5 perished", "tyre", (13, "in"), (5, "in")),
        ("cotter 3/32 x 1 1/4", "cotter", (0.09375, "in"), (1.25, "in")),
    ],
)
def test_what_stands_right_by_a_part_is_its_size(
    book: Rulebook, line: str, part: str, first: tuple[float, str], second: tuple[float, str]
) -> None:
    assert sizes(book, line) == [(part, *first, "rated"), (part, *second, "rated")]


def test_a_screw_has_its_length_behind_the_thread(book: Rulebook) -> None:
    assert sizes(book, "stud M10 x 55 sheared") == [("stud", 55, "mm", "rated")]


@pytest.mark.parametrize(
    "line",
    [
        "brg 6004 x 2",
        "spindle brg 6203 x 2 rumbly",
        "seals x 2",
        "screws M6 x 4",
        "4 x M8 screws out",
        "chain x 62 links",
        "dent 20 x 3 in the guard",
    ],
)
def test_a_count_is_no_size_and_neither_is_a_flaw(book: Rulebook, line: str) -> None:
    assert sizes(book, line) == []
