"""What is owed, told by the way: what is short, who has it, what holds for now, what was never looked at."""

from __future__ import annotations

import pytest

from worklog_tui.extract import CONFIDENCE_LINE, explain
from worklog_tui.model import FollowUp, Machine
from worklog_tui.rulebook import Rulebook

MIXER = Machine("Plaster mixer", kind="single-cylinder diesel engine", cylinders=1, fuel="diesel", ignition="none")


def owed(book: Rulebook, text: str) -> list[tuple[str, str]]:
    """(topic, reason) of all that must be come back to."""
    facts = explain(book, MIXER, text, "captions").facts
    return [(f.topic, f.reason) for f in facts if isinstance(f, FollowUp) and f.confidence >= CONFIDENCE_LINE]


@pytest.mark.parametrize(
    ("text", "topic", "reason"),
    [
        ("The drive belt has had it. I'll stick one on the list.", "drive belt", "part needed"),
        ("We're down two pushrods.", "pushrods", "part needed"),
        ("The new drum roller should be here Friday.", "drum roller", "part needed"),
        ("The throttle cable is frayed and I couldn't get one anywhere.", "throttle cable", "part needed"),
        ("It wants a stiffer throttle spring.", "throttle spring", "part needed"),
        ("The crankshaft is away at the grinder's.", "crankshaft", "to do"),
        ("The hour meter was never checked, so go easy with that.", "hour meter", "to do"),
        ("I'll leave the injector to soak overnight.", "injector", "to do"),
        ("We plugged the breather with a wine cork.", "breather", "temporary"),
        ("The fuel gauge is dead, goodness knows why.", "fuel gauge", "fault"),
    ],
)  # fmt: skip
def test_it_is_kept_with_its_thing_and_why(book: Rulebook, text: str, topic: str, reason: str) -> None:
    assert (topic, reason) in owed(book, text)


@pytest.mark.parametrize(
    "text",
    [
        "He put it on the bench.",
        "The pushrods went down their tubes.",
        "The bushes came back from the grinder's on Friday.",
        "The relief valve was checked.",
        "I taped the hose with proper hose tape.",
        "It ran until it was fixed.",
    ],
)
def test_what_was_done_or_came_is_not_owed(book: Rulebook, text: str) -> None:
    assert owed(book, text) == []


@pytest.mark.parametrize(
    ("text", "topic"),
    [
        ("The hopper's gonna have to be cleaned before the show.", "hopper cleaned"),
        ("A new chute liner has to be welded.", "new chute liner welded"),
        ("The chute wants welding.", "chute wants welding"),
    ],
)
def test_a_job_is_called_by_its_thing_and_deed_without_a_long_word_of_duty(
    book: Rulebook, text: str, topic: str
) -> None:
    assert topic in [about for about, _ in owed(book, text)]
