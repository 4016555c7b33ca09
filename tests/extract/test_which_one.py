"""Which one of several: `the left-hand one`, `number two`, `on the right-hand side` tell it, and the next words go on
with that one.
"""

from __future__ import annotations

import pytest

from worklog_tui.extract import CONFIDENCE_LINE, read_session
from worklog_tui.model import Finding, Machine, Note, Reading
from worklog_tui.rulebook import Rulebook

CHAIR = Machine("Ski lift chair", kind="two-seat chair lift with a diesel engine", fuel="diesel", cylinders=3)


def found(book: Rulebook, *lines: str) -> list[tuple[str, str]]:
    """(part in small letters, verdict) of what was surely found, the lines said one after another."""
    notes = [Note(f"n{i}", "s", line, track="captions", arrival=i) for i, line in enumerate(lines)]
    facts = [f for f in read_session(book, CHAIR, notes) if isinstance(f, Finding)]
    return [(f.part.lower(), f.verdict) for f in facts if f.confidence >= CONFIDENCE_LINE]


@pytest.mark.parametrize(
    ("line", "facts"),
    [
        ("The hose on the right-hand side is perished.", [("right hose", "bad")]),
        ("The flange on number two is cracked.", [("flange 2", "bad")]),
        ("Bush on the left front is worn.", [("left front bush", "bad")]),
        ("The lining's on the bench.", []),
    ],
)
def test_which_one_is_told_behind_the_thing_too(book: Rulebook, line: str, facts: list[tuple[str, str]]) -> None:
    assert found(book, line) == facts


@pytest.mark.parametrize(
    ("lines", "facts"),
    [
        (("Front hose is perished. Left-hand one's good.",), [("front hose", "bad"), ("left front hose", "good")]),
        (
            ("Top bearing is fine.", "Bottom one. Oh yes. It's rough."),
            [("top bearing", "good"), ("bottom bearing", "bad")],
        ),
        (
            ("The left-hand gripper is cracked. The right one is fine.",),
            [("left-hand gripper", "bad"), ("right gripper", "good")],
        ),
    ],
)
def test_one_is_another_of_what_was_named_last(
    book: Rulebook, lines: tuple[str, ...], facts: list[tuple[str, str]]
) -> None:
    assert found(book, *lines) == facts


def test_what_has_a_number_is_what_the_next_words_are_of(book: Rulebook) -> None:
    read = found(book, "Now the injectors.", "Number two. Seventeen hundred, but it's dribbling.")
    assert read == [("injectors 2", "bad")]


@pytest.mark.parametrize(
    ("words", "name"),
    [("front hose", "left front hose"), ("right hose", "left hose"), ("rear left lamp", "left rear lamp")],
)
def test_another_side_gives_way_and_another_end_stays(words: str, name: str) -> None:
    from worklog_tui.extract.things.subjects import with_which

    assert with_which(words, "left") in (name, words)


def test_another_one_has_another_name(book: Rulebook) -> None:
    """The step to come speaks of it by that name: nobody is to change the good bearing."""
    notes = [
        Note("n0", "s", "Top bearing. Spins smooth.", track="captions"),
        Note("n1", "s", "Bottom one. Oh yes. It is brinelled.", track="captions", arrival=1),
    ]
    bad = [f for f in read_session(book, CHAIR, notes) if isinstance(f, Finding) and f.verdict == "bad"]
    assert [(f.part.lower(), f.name) for f in bad] == [("bottom bearing", "bottom bearing")]


@pytest.mark.parametrize(
    ("lines", "subjects"),
    [
        (("Valve clearances. Number three inlet ten thou, exhaust twelve thou.",),
         ["cylinder 3 inlet valve", "cylinder 3 exhaust valve"]),
        (("Valve clearances. Number three inlet ten thou, exhausts twelve thou.",),
         ["cylinder 3 inlet valve", "exhaust valves"]),
        (("Compression test. Number two is a hundred and ten psi. Book says one fifty.",
          "A drop of oil down it. A hundred and forty psi."), ["cylinder 2", "all cylinders", "cylinder 2"]),
        (("Compression test. Number two is a hundred and ten psi.", "The others are all a hundred and fifty psi."),
         ["cylinder 2", "all cylinders"]),
    ],
)  # fmt: skip
def test_the_cylinder_stays_until_another_is_told(book: Rulebook, lines: tuple[str, ...], subjects: list[str]) -> None:
    notes = [Note(f"n{i}", "s", line, track="captions", arrival=i) for i, line in enumerate(lines)]
    assert [f.subject for f in read_session(book, CHAIR, notes) if isinstance(f, Reading)] == subjects


@pytest.mark.parametrize(
    ("judged", "facts"),
    [
        ("So three is way down.", [("cylinder 3", "bad")]),
        ("So two and three are way down.", [("cylinders 2 and 3", "bad")]),
        ("But the third's down.", [("cylinder 3", "bad")]),
        ("Number one is fine.", [("cylinder 1", "good")]),
        ("The other two are fine.", [("other two cylinders", "good")]),
        ("The lift cylinder is down.", []),
        ("Three is eighty.", []),
    ],
)
def test_in_a_test_of_all_cylinders_a_number_tells_which(
    book: Rulebook, judged: str, facts: list[tuple[str, str]]
) -> None:
    assert found(book, "Compression test. One, one-twenty. Two, one-fifteen. Three, sixty.", judged) == facts


def test_without_such_a_test_a_bare_number_is_no_cylinder(book: Rulebook) -> None:
    assert found(book, "Volts across the battery. Three is way down.") == []
