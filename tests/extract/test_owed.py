"""What is owed, read from the build of a clause, whatever its verbs: duties, plans put off, what there is none of,
questions, what is done if it goes on.
"""

from __future__ import annotations

import pytest

from worklog_tui.extract import explain
from worklog_tui.model import FollowUp, Machine
from worklog_tui.rulebook import Rulebook

LATHE = Machine("Boring mill", kind="electric motor, machine tool", fuel="none", ignition="none")


def owed(book: Rulebook, text: str, track: str = "captions") -> list[tuple[str, str]]:
    facts = explain(book, LATHE, text, track).facts
    return [(f.topic, f.reason) for f in facts if isinstance(f, FollowUp)]


@pytest.mark.parametrize(
    ("text", "topic"),
    [
        ("Somebody should repaint the drip tray.", "repaint the drip tray"),
        ("I will count the drips of the gland when we are moving.", "drips of the gland"),
        ("We ought to shorten that drain pipe.", "shorten that drain pipe"),
        ("The gauge glass is black, it wants etching.", "etching"),
    ],
)
def test_a_deed_behind_a_word_of_duty_is_owed_whatever_its_verb(book: Rulebook, text: str, topic: str) -> None:
    found = owed(book, text)
    assert [reason for _, reason in found] == ["to do"]
    assert topic in found[0][0]


def test_a_plan_that_nothing_puts_off_is_what_comes_next(book: Rulebook) -> None:
    assert owed(book, "I'll polish the spindle.") == []


def test_what_a_figure_should_be_is_the_book(book: Rulebook) -> None:
    assert owed(book, "The spindle should be raised two millimetres.") == []


@pytest.mark.parametrize(
    ("text", "topic"),
    [
        ("They didn't have the drive belt.", "drive belt"),
        ("The brushes have not come.", "brushes"),
        ("Can't get the velvet here.", "velvet"),
        ("The core is flat. so gaiter wanted", "gaiter"),
        ("drive belt split. aint got 1", "drive belt"),
        ("no packing left. stopped there", "packing"),
    ],
)
def test_what_there_is_none_of_is_a_part_needed(book: Rulebook, text: str, topic: str) -> None:
    assert (topic, "part needed") in owed(book, text, "live")


NO_PARTS = ["They haven't got the drive belt off.", "I don't have a figure for the spindle.", "Don't buy a drive belt."]


@pytest.mark.parametrize("text", NO_PARTS)
def test_what_was_not_done_or_not_known_is_no_part(book: Rulebook, text: str) -> None:
    assert "part needed" not in [reason for _, reason in owed(book, text)]


@pytest.mark.parametrize(
    ("text", "topic"),
    [
        ("Anybody watching knows where to get these drive belts, please tell.", "where to get these drive belts"),
        ("What I couldn't tell you is how many teeth there ought to be on that pulley.", "how many teeth"),
        ("I never did figure out why there's a second oil cup on the spindle.", "second oil cup"),
    ],
)
def test_whoever_is_asked_what_is_not_known_it_is_a_question(book: Rulebook, text: str, topic: str) -> None:
    found = owed(book, text)
    assert [reason for _, reason in found] == ["question"]
    assert topic in found[0][0]


@pytest.mark.parametrize(
    ("text", "topic"),
    [
        ("If the pump is no quieter with that then it's the coupling.", "coupling"),
        ("If a new capacitor does not help, then the motor must go to the winder.", "winder"),
        ("And if it doesn't come up it's off to the rewinder's.", "rewinder"),
    ],
)
def test_what_follows_if_it_goes_on_is_a_fallback(book: Rulebook, text: str, topic: str) -> None:
    found = owed(book, text)
    assert [reason for _, reason in found] == ["fallback"]
    assert topic in found[0][0]


def test_a_good_end_is_no_fallback(book: Rulebook) -> None:
    assert owed(book, "If it doesn't leak, we're happy.") == []


def test_a_look_that_is_put_off_is_owed(book: Rulebook) -> None:
    assert ("look at spindle", "to do") in owed(book, "spindle warm. see what its like in the morning", "live")


def test_of_a_thing_that_no_vocabulary_knows_a_deed_is_owed_too(book: Rulebook) -> None:
    assert ("dowsers replacing", "to do") in owed(book, "Those dowsers want replacing.")
