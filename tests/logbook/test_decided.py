"""A person's act wins over what was read, and undoing it gives back what was there."""

from __future__ import annotations

from tests.logbook.told import Told, did, later, states
from worklog_tui.logbook.matters import anchor_text
from worklog_tui.logbook.open_items import open_items
from worklog_tui.model import Act, History, Instant

NOW = Instant("2031-05-01T10:00:00Z")


def needs_a_belt() -> tuple[History, str]:
    known = Told().say("needs a belt", later("drive belt", "part needed")).history()
    return known, anchor_text(known.facts()[0].key)


def with_acts(known: History, *acts: Act) -> History:
    return History(known.machine, known.sessions, acts)


def test_closing_and_undoing() -> None:
    known, belt = needs_a_belt()
    close = Act("a1", "bench", 1, NOW, "close item", belt)
    assert states(open_items(with_acts(known, close))) == {"drive belt": "done"}
    undo = Act("a2", "bench", 2, NOW, "undo", "a1")
    assert states(open_items(with_acts(known, close, undo))) == {"drive belt": "open"}
    again = Act("a3", "bench", 3, NOW, "undo", "a2")
    assert states(open_items(with_acts(known, close, undo, again))) == {"drive belt": "done"}


def test_left_so_on_purpose() -> None:
    known, belt = needs_a_belt()
    act = Act("a1", "bench", 1, NOW, "close item", belt, (), {"state": "left so"})
    assert states(open_items(with_acts(known, act))) == {"drive belt": "left so"}


def test_a_reopened_item_is_not_closed_by_what_was_read_before() -> None:
    known = Told().say("needs a belt", later("drive belt", "part needed")).say("on", did("fit", "drive belt")).history()
    act = Act("a1", "bench", 1, NOW, "reopen item", anchor_text(known.facts()[0].key))
    assert states(open_items(with_acts(known, act))) == {"drive belt": "open"}


def test_two_items_made_one() -> None:
    known = (
        Told()
        .say("needs a belt", later("drive belt", "part needed"))
        .say("a vee", later("rubber vee", "part needed"))
        .history()
    )
    belt, vee = (anchor_text(fact.key) for fact in known.facts())
    act = Act("a1", "bench", 1, NOW, "merge items", belt, (), {"with": vee})
    (item,) = open_items(with_acts(known, act))
    assert (item.about, len(item.anchors)) == ("drive belt", 2)


def test_an_item_made_by_hand_stands() -> None:
    act = Act("a1", "bench", 1, NOW, "set item", "by hand 1", (), {"about": "oil the trunk hinges", "reason": "to do"})
    assert states(open_items(with_acts(Told().say("hello").history(), act))) == {"oil the trunk hinges": "open"}


def test_what_is_said_after_an_act_opens_the_matter_anew() -> None:
    told = Told().say("needs a belt", later("drive belt", "part needed")).session().session()
    belt = anchor_text(told.history().facts()[0].key)
    close = Act("a1", "bench", 1, Instant("2031-04-02T12:00:00Z"), "close item", belt)
    known = told.say("needs a belt again", later("drive belt", "part needed")).history()
    assert [i.state for i in open_items(with_acts(known, close))] == ["done", "open"]
    named = Act("a1", "bench", 1, NOW, "close item", belt, (), {"after": "s1n0"})
    assert [i.state for i in open_items(with_acts(known, named))] == ["done", "open"]
