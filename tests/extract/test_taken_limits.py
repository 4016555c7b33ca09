"""What the book gives is told as the machine just stood; what one would like or would worry at is a limit. A boat."""

from __future__ import annotations

import pytest

from worklog_tui.extract.reader import read_session
from worklog_tui.model import Machine, Note, Reading
from worklog_tui.rulebook import Rulebook

BOAT = Machine("launch", kind="two-cylinder petrol engine", fuel="petrol", ignition="magneto", cylinders=2)


def told(book: Rulebook, *said: str, track: str = "captions") -> list[tuple[object, str, str]]:
    notes = [Note(f"n{k}", "s", words, track=track, arrival=k) for k, words in enumerate(said)]
    return [(f.value, f.role, f.condition) for f in read_session(book, BOAT, notes) if isinstance(f, Reading)]


def test_a_figure_of_the_book_is_meant_as_the_machine_was_just_said_to_stand(book: Rulebook) -> None:
    found = told(book, "Fast idle, and the battery is at twelve one. The handbook says thirteen eight.")
    assert found == [(12.1, "measured", "at fast idle"), (13.8, "specified", "at fast idle")]


def test_but_not_one_of_a_later_note(book: Rulebook) -> None:
    found = told(book, "Fast idle, and the battery is at twelve one.", "Pass me that.", "Battery should be 12.6 volts.")
    assert found[-1] == (12.6, "specified", "")


def test_nor_one_that_is_the_same_however_it_is_taken(book: Rulebook) -> None:
    found = told(book, "Compression with the throttle open. Number one, ninety. The book figure is a hundred.")
    assert found[-1][1:] == ("specified", "")


@pytest.mark.parametrize(
    ("said", "role", "how"),
    [
        ("Oil temperature, I'd worry at ninety degrees.", "specified", "maximum"),
        ("The earth strap is wanted under half an ohm.", "specified", "maximum"),
        ("I'd like to see the oil pressure over forty pounds.", "specified", "minimum"),
        ("The brush is eleven mil, bin it under six mil.", "specified", "minimum"),
        ("The oil pressure is over forty pounds.", "measured", "over"),
    ],
)
def test_what_one_would_like_and_what_one_would_worry_at_are_limits(
    book: Rulebook, said: str, role: str, how: str
) -> None:
    assert told(book, said)[-1][1:] == (role, how)


@pytest.mark.parametrize(
    ("said", "row"),
    [
        ("earth strap .7 ohm. want <.1", (0.1, "specified", "maximum")),
        ("brush 9 mm, scrap undr 6", (6.0, "specified", "minimum")),
    ],
)
def test_the_same_in_shorthand(book: Rulebook, said: str, row: tuple[float, str, str]) -> None:
    assert told(book, said, track="typed")[-1] == row
