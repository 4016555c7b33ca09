"""What eye, ear and hand tell: where a noise comes from, what stands for a part, what lies all over it, what will not
go into its gap; and words that look like a state and are none.
"""

from __future__ import annotations

import pytest

from worklog_tui.extract import CONFIDENCE_LINE, read_session
from worklog_tui.model import Finding, Machine, Note
from worklog_tui.rulebook import Rulebook

SAW = Machine("Estate saw", kind="two-cylinder petrol engine", fuel="petrol", ignition="magneto", cylinders=2)


def found(book: Rulebook, *lines: str) -> set[tuple[str, str]]:
    """(part, verdict) of all that was surely found."""
    facts = read_session(book, SAW, [Note(f"n{i}", "s", line, track="captions") for i, line in enumerate(lines)])
    return {(f.part.lower(), f.verdict) for f in facts if isinstance(f, Finding) and f.confidence >= CONFIDENCE_LINE}


@pytest.mark.parametrize(
    ("words", "fact"),
    [
        ("I can hear a tick from the gearbox", ("gearbox", "bad")),
        ("there's a bent nail where the clevis pin should be", ("clevis pin", "bad")),
        ("the flywheel has grease all over it", ("flywheel", "bad")),
        ("that throttle cable is hanging on by one strand", ("throttle cable", "bad")),
        ("the idlers every one of them turns", ("idlers", "good")),
        ("the bracket itself isn't bent", ("bracket", "good")),
        ("the needle has got a groove worn round the tip", ("needle", "bad")),
        ("looks like somebody's been at this bracket with a hammer", ("bracket", "bad")),
        ("the brushes are down to the nubs", ("brushes", "bad")),
        ("the relief valve drops back nicely", ("relief valve", "good")),
        ("it ran ten seconds and died", ("engine", "bad")),
        ("the brake pedal's rock hard now", ("brake pedal", "good")),
    ],
)
def test_what_a_look_tells_in_set_builds(book: Rulebook, words: str, fact: tuple[str, str]) -> None:
    assert fact in found(book, words)


def test_what_will_not_go_into_the_gap_of_an_exhaust_is_its_valve(book: Rulebook) -> None:
    assert ("exhaust valve", "bad") in found(book, "Tappets. Exhaust. I can't get a feeler in there.")


@pytest.mark.parametrize("words", ["Throttle wide and swing it over.", "set the jam nut at eight and snug it down"])
def test_how_a_control_stands_and_what_is_to_be_done_are_no_findings(book: Rulebook, words: str) -> None:
    assert not found(book, words)


def test_a_name_does_not_go_on_over_the_end_of_a_line(book: Rulebook) -> None:
    assert ("fan shaft", "good") in found(book, "no play at all in the fan shaft", "fuel pump next")
