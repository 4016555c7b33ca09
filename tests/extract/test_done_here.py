"""What the speaker does at this machine now, and what only sounds like it: what is bought once, laid by, still to be
done, asked.
"""

from __future__ import annotations

import pytest

from worklog_tui.extract import CONFIDENCE_LINE, read_session
from worklog_tui.model import Finding, Machine, Note, Suspect, Work
from worklog_tui.rulebook import Rulebook

PRESS = Machine("Cider press", kind="electric cider press", fuel="none")


def facts(book: Rulebook, *lines: str) -> list[object]:
    notes = [Note(f"n{i}", "s", line, track="captions") for i, line in enumerate(lines)]
    return [f for f in read_session(book, PRESS, notes) if f.confidence >= CONFIDENCE_LINE]


def done(book: Rulebook, *lines: str) -> list[tuple[str, str]]:
    """(action, part) of the work that was surely done."""
    return [(f.action, f.part) for f in facts(book, *lines) if isinstance(f, Work)]


@pytest.mark.parametrize(
    ("said", "work"),
    [
        ("That gib's loose, so adjust it.", ("adjust", "gib")),
        ("Drive chain's slack, nip it up.", ("tighten", "chain")),
    ],
)
def test_what_is_bidden_of_a_fault_told_just_now_is_done(book: Rulebook, said: str, work: tuple[str, str]) -> None:
    action, part = work
    assert [(a, part in p) for a, p in done(book, said)] == [(action, True)]


@pytest.mark.parametrize("said", ["Nip the bolt up? You nip it up and it shears.", "If the chain's slack, nip it up."])
def test_what_others_are_told_to_do_is_not(book: Rulebook, said: str) -> None:
    assert [part for action, part in done(book, said) if action == "tighten"] == []


def test_off_and_on_the_bench_is_off(book: Rulebook) -> None:
    assert done(book, "Right, the gearbox is off and on the bench.") == [("remove", "gearbox")]


def test_on_there_is_fitted(book: Rulebook) -> None:
    assert done(book, "and the drive belt's on there now") == [("fit", "drive belt")]


@pytest.mark.parametrize(
    "said",
    [
        "The clutch hasn't slipped since I bought it.",
        "The old gauge goes on the shelf with the rest.",
        "That guard went in the bin.",
        "The sump's gonna have to be drained.",
        "Should I replace the chain?",
        "should I replace the chain or not",
    ],
)
def test_what_was_bought_once_is_laid_by_to_come_or_asked_is_no_work(book: Rulebook, said: str) -> None:
    assert done(book, said) == []


def test_a_belt_goes_on_a_pulley(book: Rulebook) -> None:
    assert ("fit", "belt") in done(book, "The belt went on the pulley.")


def test_a_part_and_the_whole_machine_are_no_pair(book: Rulebook) -> None:
    found = [f.part for f in facts(book, "Switch and the motor hums.") if isinstance(f, Finding)]
    assert found == ["motor"]


def test_a_part_or_the_whole_machine_are_two_suspects(book: Rulebook) -> None:
    causes = [f.cause for f in facts(book, "It could be the screw or the motor.") if isinstance(f, Suspect)]
    assert {"screw", "motor"} <= set(causes)
