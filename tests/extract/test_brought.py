"""What was set: a thing that was brought somewhere, by how much or how far; `it` is then what was measured last."""

from __future__ import annotations

import pytest

from worklog_tui.extract import CONFIDENCE_LINE, read_session
from worklog_tui.model import Machine, Note, Work
from worklog_tui.rulebook import Rulebook

SPRAYER = Machine("Orchard sprayer", kind="two-cylinder petrol engine", fuel="petrol", ignition="magneto", cylinders=2)


def work(book: Rulebook, *lines: str) -> set[tuple[str, str]]:
    """(action, part) of all that was surely done."""
    notes = [Note(f"n{i}", "s", line, track="captions") for i, line in enumerate(lines)]
    facts = [f for f in read_session(book, SPRAYER, notes) if isinstance(f, Work)]
    return {(f.action, f.part.lower()) for f in facts if f.confidence >= CONFIDENCE_LINE}


@pytest.mark.parametrize(
    ("words", "part"),
    [
        ("So I wound the regulator up till I had fifteen bar.", "regulator"),
        ("The points were wide so I've closed them up a touch.", "points"),
        ("Turned the governor screw down two clicks.", "governor screw"),
        ("Pushed the idler over, ten mil now.", "idler"),
    ],
)
def test_what_was_brought_so_far_was_adjusted(book: Rulebook, words: str, part: str) -> None:
    assert ("adjust", part) in work(book, words)


@pytest.mark.parametrize(
    "words",
    [
        "They turned the regulator up till it squealed.",
        "I wheeled the machine back a bit.",
        "I let the idler go.",
        "He closed them up a touch, the points.",
    ],
)
def test_what_others_did_or_nobody_measured_was_not(book: Rulebook, words: str) -> None:
    assert not {part for action, part in work(book, words) if action == "adjust"}


def test_what_is_set_anew_is_what_was_measured(book: Rulebook) -> None:
    lines = [
        "Timing while the lamp's on. Eight degrees before, it should be. It was twelve.",
        "Brought it back to eight.",
    ]
    assert ("adjust", "timing") in work(book, *lines)


def test_a_face_has_no_setting(book: Rulebook) -> None:
    lines = ["Points while the lid's off. The faces are clean.", "Opened up to eighteen."]
    assert ("adjust", "points") in work(book, *lines)
    assert ("adjust", "faces") not in work(book, *lines)
