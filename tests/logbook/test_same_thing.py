"""Two tellings are one thing when their words agree; numbers and sides must agree exactly."""

from __future__ import annotations

import pytest

from worklog_tui.logbook.same_thing import same, speaks_of, thing


@pytest.mark.parametrize(
    ("one", "other"),
    [
        ("drive belt", "new drive belt"),
        ("belt", "drive belt"),
        ("carb float", "carburettor float"),
        ("plug gap of number two", "number two plug gap"),
        ("gasket", "gasket for the gear case"),
        ("left-hand bellows", "bellows, left"),
        ("impeler", "impeller"),
        ("retorque the head", "head"),
    ],
)
def test_one_thing_said_in_two_ways(one: str, other: str) -> None:
    assert same(thing(one), thing(other))
    assert same(thing(other), thing(one))


@pytest.mark.parametrize(
    ("one", "other"),
    [
        ("left bellows", "right bellows"),
        ("cylinder 2", "cylinder 3"),
        ("radiator cap", "radiator"),
        ("intake gasket", "bowl gasket"),
        ("bush", "brush"),
        ("magnet", "magneto"),
        ("check valve", "exhaust valve"),
        ("inlet valve", "exhaust valve"),
        ("", "belt"),
    ],
)
def test_things_that_only_sound_alike(one: str, other: str) -> None:
    assert not same(thing(one), thing(other))
    assert not same(thing(other), thing(one))


def test_the_name_in_the_vocabulary_decides() -> None:
    assert same(thing("the rag joint", "shaft coupling"), thing("coupling", "shaft coupling"))
    assert not same(thing("left coupling", "shaft coupling"), thing("right coupling", "shaft coupling"))


def test_bolts_of_a_thing_are_tightened_for_the_thing() -> None:
    assert speaks_of(thing("head bolts"), thing("retorque the head"))
    assert not speaks_of(thing("head bolts"), thing("head off"))
