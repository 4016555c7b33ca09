"""What is said of a figure alone, of a place on a part, of a machine without an engine, and what lies astray."""

from __future__ import annotations

import pytest

from worklog_tui.extract import CONFIDENCE_LINE, read_session
from worklog_tui.model import Finding, Machine, Note
from worklog_tui.rulebook import Rulebook

PRESS = Machine("Loft press", kind="hand-fed platen press, driven by an electric motor", fuel="none", ignition="none")
ENGINE = Machine("Quarry pump", kind="four-cylinder petrol engine", fuel="petrol", ignition="magneto", cylinders=4)


def found(book: Rulebook, *lines: str, machine: Machine = PRESS) -> list[tuple[str, str]]:
    """(part, verdict) of all that was surely found."""
    notes = [Note(f"n{i}", "s", line, track="captions") for i, line in enumerate(lines)]
    facts = read_session(book, machine, notes)
    return [(f.part.lower(), f.verdict) for f in facts if isinstance(f, Finding) and f.confidence >= CONFIDENCE_LINE]


@pytest.mark.parametrize(
    ("lines", "fact"),
    [
        (["Windings to frame, twenty megohms. Excellent for its age."], ("windings to frame", "good")),
        (["Earth pin to frame, nought point one ohms.", "I'll accept that."], ("earth pin to frame", "good")),
        (["Oil pressure, eight psi.", "That's not what I had hoped for."], ("oil pressure", "bad")),
        (["Oil pressure, forty psi. That's how I like it"], ("oil pressure", "good")),
        (["Thermostat opens at 82. Book says 80 to 84. Near enough."], ("thermostat", "good")),
    ],
)  # fmt: skip
def test_what_is_said_of_a_figure_alone_is_of_what_was_read(
    book: Rulebook, lines: list[str], fact: tuple[str, str]
) -> None:
    assert fact in found(book, *lines)


@pytest.mark.parametrize(
    "lines",
    [
        ["Oil pressure, forty psi.", "Lovely day for it."],
        ["Oil pressure, forty psi.", "Well, there we are."],
        ["The belt is off.", "I'll accept that."],
        ["Oil pressure, forty psi.", "That will take two of us."],
    ],
)
def test_what_is_said_of_no_figure_is_no_judgement(book: Rulebook, lines: list[str]) -> None:
    assert found(book, *lines) == []


@pytest.mark.parametrize(
    ("words", "part"),
    [
        ("Points out. The faces are burnt.", "faces of the points"),
        ("Return filter out. The seam is torn.", "seam of the return filter"),
        ("Belt off, edge frayed.", "edge of the belt"),
    ],
)
def test_a_place_on_a_part_is_told_with_the_part(book: Rulebook, words: str, part: str) -> None:
    assert found(book, words, machine=ENGINE) == [(part, "bad")]


def test_what_a_machine_without_an_engine_does_is_of_the_machine_in_a_complaint(book: Rulebook) -> None:
    assert found(book, "The owner says it runs rough.") == [("press", "bad")]
    assert found(book, "Evening.", "Tea first.", "Now then.", "There, up and down.") == []
    assert found(book, "It runs rough.", machine=ENGINE) == [("engine", "bad")]


def test_a_state_amid_other_words_is_of_what_this_note_has_named(book: Rulebook) -> None:
    assert found(book, "Now the latch.", "Sat here all afternoon, cracked a joke or two.") == []
    assert found(book, "the carrier bearing", "dry as a bone") == [("carrier bearing", "bad")]
    assert found(book, "The carrier bearing. Well now, what have we here, cracked.") == [("carrier bearing", "bad")]


def test_a_word_that_tells_how_a_look_is_taken_is_no_finding(book: Rulebook) -> None:
    assert found(book, "Running.", machine=ENGINE) == []
    assert found(book, "It's running.", machine=ENGINE) == [("engine", "good")]


@pytest.mark.parametrize(
    ("words", "part"),
    [
        ("Points. There's a film of oil on them.", "points"),
        ("There's half a pint of water in the filter bowl.", "filter bowl"),
        ("Between the blades there was a blanket of dust.", "blades"),
        ("Sump off. There's half an inch of sludge in the bottom.", "sump"),
    ],
)
def test_what_lies_where_it_has_no_business(book: Rulebook, words: str, part: str) -> None:
    assert (part, "bad") in found(book, words, machine=ENGINE)


@pytest.mark.parametrize(
    "words",
    [
        "I put a smear of oil on the points.",
        "Had sixty litres of muck out of the tank.",
        "There's a bit of carbon from the old brushes.",
        "There's a nice film of oil on the cams.",
        "There's no film of oil on them.",
    ],
)
def test_what_was_put_there_or_taken_out_is_no_finding(book: Rulebook, words: str) -> None:
    assert ("points", "bad") not in found(book, "Points.", words, machine=ENGINE)
    assert not {f for f in found(book, words, machine=ENGINE) if f[1] == "bad"}
