"""A fault told a moment ago is put right by what is told next, though that names another part or none."""

from __future__ import annotations

import pytest

from tests.logbook.told import Told, bad, did, good, later, read
from worklog_tui.logbook.near_cure import opposite
from worklog_tui.logbook.open_items import open_items
from worklog_tui.model import History, OpenItem


def only(history: History, about: str) -> OpenItem:
    return next(item for item in open_items(history) if about in item.about)


@pytest.mark.parametrize(
    ("fault", "cure"),
    [
        ("won't turn", "spins"),
        ("stuck", "moves"),
        ("weeping", "dry now"),
        ("blocked solid", "daylight through it"),
        ("won't prime", "pulling, good strong stream"),
        ("out of line", "dead straight"),
        ("rattles", "no rattle"),
    ],
)
def test_what_is_said_when_a_fault_is_gone(fault: str, cure: str) -> None:
    assert opposite(fault, cure)


@pytest.mark.parametrize(("fault", "other"), [("weeping", "spins"), ("cracked", "clean"), ("stuck", "dry")])
def test_what_is_said_of_something_else(fault: str, other: str) -> None:
    assert not opposite(fault, other)


def test_it_spins_is_said_of_the_roller_that_would_not_turn() -> None:
    told = Told().say("one of the rollers won't turn", bad("roller", "won't turn"))
    told.say("a squirt of oil and it spins", good("penetrating oil", "spins"))
    assert only(told.history(), "roller").state == "done"


def test_what_is_told_much_later_of_another_part_says_nothing_of_it() -> None:
    told = Told().say("one of the rollers won't turn", bad("roller", "won't turn"))
    for line in ("right", "tea", "where was I"):
        told.say(line)
    told.say("the fan spins", good("fan", "spins"))
    assert only(told.history(), "roller").state == "noticed"


def test_the_figure_as_it_should_be_right_after_the_one_that_was_off() -> None:
    told = Told().say("float 4, should be 1", read("gap", 0.004, "in", "end float"))
    told.say("should be one", read("gap", 0.001, "in", "end float", role="specified"))
    told.say("collar round an eighth, one", read("gap", 0.001, "in", "collar", role="set"))
    assert only(told.history(), "end float").state == "done"


def test_what_was_set_for_now_is_done_when_it_is_set_again_another_day() -> None:
    told = Told().say("tappets cold for now", later("tappets", "temporary")).session()
    told.say("tappets, hot: opened them up", did("adjust", "tappets"))
    assert only(told.history(), "tappets").state == "done"
