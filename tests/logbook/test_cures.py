"""What a good look at the whole machine says about an earlier trouble."""

from __future__ import annotations

import pytest

from worklog_tui.logbook.cures import cures, is_whole
from worklog_tui.logbook.same_thing import thing


@pytest.mark.parametrize(
    ("bad", "good"),
    [
        ("won't start", "starts first pull"),
        ("dead", "runs"),
        ("dies when hot", "keeps running"),
        ("hunts", "no hunting"),
        ("hunting", "smoooth as anything"),
        ("missing on one", "runs lovely"),
    ],
)
def test_what_cures(bad: str, good: str) -> None:
    assert cures(bad, good)


@pytest.mark.parametrize(
    ("bad", "good"),
    [("smokes", "starts first pull"), ("hunts", "no oil leaks"), ("knocks", "turns over freely"), ("smokes", "runs")],
)
def test_what_does_not(bad: str, good: str) -> None:
    assert not cures(bad, good)


def test_the_machine_itself_and_a_part_of_it() -> None:
    assert is_whole(thing("engine"))
    assert is_whole(thing("the motor"))
    assert not is_whole(thing("engine oil"))
    assert not is_whole(thing("starter motor"))
