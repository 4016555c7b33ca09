"""How a part was put, told in a clause of its own, is told of the figures that follow in its note. A press."""

from __future__ import annotations

import pytest

from worklog_tui.extract.reader import read_session
from worklog_tui.model import Machine, Note, Reading
from worklog_tui.rulebook import Rulebook

PRESS = Machine("press", kind="hydraulic press with an electric motor", fuel="none", ignition="none")


def told(book: Rulebook, *said: str) -> list[str]:
    notes = [Note(f"n{k}", "s", words, track="captions", arrival=k) for k, words in enumerate(said)]
    return [f.condition for f in read_session(book, PRESS, notes) if isinstance(f, Reading)]


@pytest.mark.parametrize(
    ("said", "how"),
    [
        ("Piston fully home, the pump pressure is 190 bar.", "piston fully home"),
        ("Plunger right up, and I've got seven thou of shake.", "plunger right up"),
        ("Piston fully out. The pump pressure is 180 bar.", "piston fully out"),
    ],
)
def test_how_a_part_was_put_is_told_with_the_figure_behind(book: Rulebook, said: str, how: str) -> None:
    assert told(book, said) == [how]


def test_a_part_put_otherwise_takes_its_place(book: Rulebook) -> None:
    assert told(book, "Plunger right up, seven thou of shake. Plunger down, two thou of shake.") == [
        "plunger right up",
        "plunger down",
    ]


@pytest.mark.parametrize(
    "said",
    [
        "Guard up. The belt is nine millimetres wide.",
        "Spindle up and down, and the end float is three thou.",
        "The ram is out. The seal is twelve millimetres wide.",
    ],
)
def test_what_was_only_moved_or_is_of_no_matter_is_not_told(book: Rulebook, said: str) -> None:
    assert all(how in ("", "wide") for how in told(book, said))


def test_it_is_told_no_more_in_the_next_note(book: Rulebook) -> None:
    assert told(book, "Ram hard against the stop, pump pressure is 190 bar.", "Pump pressure is 20 bar.")[-1] == ""
