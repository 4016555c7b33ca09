"""A number is of what its clause begins with, where no part that it suits stands there. A mine pump and its motor."""

from __future__ import annotations

import pytest

from worklog_tui.extract.reader import read_session
from worklog_tui.model import Machine, Note, Reading
from worklog_tui.rulebook import Rulebook

PUMP = Machine("mine pump", kind="three-throw mine pump, electric motor", fuel="none", ignition="none")


def subjects(book: Rulebook, *said: str, track: str = "captions") -> list[str]:
    notes = [Note(f"n{k}", "s", words, track=track, arrival=k) for k, words in enumerate(said)]
    return [f.subject.lower() for f in read_session(book, PUMP, notes) if isinstance(f, Reading)]


@pytest.mark.parametrize(
    ("line", "subject"),
    [
        ("Delivery's at six bar.", "delivery"),
        ("Relief should lift at eleven bar.", "relief"),
        ("Spring pressure is eleven grams.", "spring pressure"),
        ("Oil level's down ten mil since Monday.", "oil level"),
    ],
)
def test_the_opening_name_wins_over_an_older_part(book: Rulebook, line: str, subject: str) -> None:
    assert subjects(book, "The foot valve is clean.", line) == [subject]


def test_a_quantity_alone_is_of_what_was_talked_of(book: Rulebook) -> None:
    assert subjects(book, "Now the coupling.", "The gap is two mil.") == ["coupling"]


def test_who_said_it_is_no_name(book: Rulebook) -> None:
    assert "sent" not in subjects(book, "Look at the bore.", "But what they sent is a one inch.")
