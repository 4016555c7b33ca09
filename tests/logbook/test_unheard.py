"""What was announced and not heard done is asked about at the end, and nothing else is (C39)."""

from __future__ import annotations

import pytest

from tests.logbook.told import Told, did, good, later
from worklog_tui.logbook.unheard import unheard
from worklog_tui.model import Machine


def band_saw() -> Told:
    return Told(Machine("Band saw", kind="band saw", fuel="none"))


def asked(told: Told) -> list[tuple[str, str]]:
    return [(job.action, job.part) for job in unheard(told.history(), 1)]


@pytest.mark.parametrize(
    ("said", "job"),
    [
        ("now I'm going to grease the lower bearing", ("lubricate", "lower bearing")),
        ("I'll fit the new drive belt in a minute", ("fit", "new drive belt")),
        ("let me just clean the guide blocks before anything else", ("clean", "guide blocks")),
        ("right, we're going to drain the gearbox", ("drain", "gearbox")),
        ("I'm gonna tighten up the motor bolts, then tea", ("tighten", "motor bolts")),
    ],
)
def test_a_promise_of_which_nothing_is_heard_is_asked_about(said: str, job: tuple[str, str]) -> None:
    assert asked(band_saw().say(said).say("tea")) == [job]


def test_what_is_heard_done_or_found_afterwards_is_not_asked_about() -> None:
    told = band_saw().say("I'm going to grease the lower bearing").say("there", did("lubricate", "lower bearing"))
    assert asked(told) == []
    told = band_saw().say("let me check the guide").say("no play in it", good("guide", "no play"))
    assert asked(told) == []


def test_what_is_put_off_is_an_open_item_and_no_question() -> None:
    told = band_saw().say("I'll replace the tyre", later("tyre", "to do"))
    assert asked(told) == []


@pytest.mark.parametrize(
    "said",
    [
        "I'll have a cup of tea", "let me tell you a story", "if it squeals I'll grease the lower bearing",
        "tomorrow I'll fit the belt", "I'm going to the shop", "we'll see", "I'll do the two that are out",
    ],
)  # fmt: skip
def test_other_talk_of_what_is_to_come_is_no_promise(said: str) -> None:
    assert asked(band_saw().say(said)) == []
