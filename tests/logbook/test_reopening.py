"""What opens an item again that was dealt with, and what is told of it: an ice-cream van's generator."""

from __future__ import annotations

import pytest

from tests.logbook.told import Told, bad, did, good, later, read, states
from worklog_tui.logbook.matters import anchor_text
from worklog_tui.logbook.open_items import open_items
from worklog_tui.model import Act, Again, Instant, OpenItem, Place


def cured() -> Told:
    """The exhaust flange was cracked and welded up; nobody said before that it was to be come back to."""
    told = Told().say("the flange is cracked", bad("exhaust flange", "cracked")).quiet().quiet()
    return told.say("welded the flange", did("repair", "exhaust flange"))


def mended() -> Told:
    """The fuel tap was on the list, and was mended."""
    told = Told().say("the tap leaks, that wants seeing to", later("fuel tap", "fault")).quiet()
    return told.say("new cork in the tap", did("replace", "fuel tap", "new cork"))


def only(told: Told) -> OpenItem:
    (item,) = open_items(told.history())
    return item


def why(told: Told) -> Again:
    item = only(told)
    assert item.state == "open"
    assert (item.closed, item.closed_by) == (None, None)
    assert item.again is not None
    return item.again


def test_a_cured_fault_that_is_found_again_another_day_is_open_again_and_says_why() -> None:
    told = cured().session().say("the flange is cracked right through", bad("exhaust flange", "cracked right through"))
    found, was = Place(2, "s2n0", "0:00", 10), Place(1, "s1n9", "9:00", 9)
    assert why(told) == Again("found again", found, "cracked right through", was)


def test_the_same_day_it_is_where_it_is_said_to_be_there_again() -> None:
    told = cured().quiet().say("cracked again", bad("exhaust flange", "cracked again"))
    assert why(told).what == "cracked again"


def test_another_fault_of_the_same_part_is_a_matter_of_its_own() -> None:
    told = cured().session().say("the flange is loose", bad("exhaust flange", "loose"))
    assert states(open_items(told.history())) == {"exhaust flange cracked": "done", "exhaust flange loose": "noticed"}


def test_another_trouble_of_the_machine_is_none_of_the_same() -> None:
    told = Told().say("the engine stalls", bad("engine", "stalls")).quiet().quiet()
    told.say("runs sweet", good("engine", "runs sweet")).session()
    told.say("now the engine smokes again", bad("engine", "smokes"))
    assert states(open_items(told.history())) == {"engine stalls": "done", "engine smokes": "noticed"}


@pytest.mark.parametrize(("action", "how"), [("remove", "off again"), ("strip", "apart again")])
def test_a_part_that_was_on_the_list_and_is_off_again_another_day_is_open_again(action: str, how: str) -> None:
    told = mended().session().say("the tap had to come off", did(action, "fuel tap"))
    assert (why(told).how, why(told).place) == (how, Place(2, "s2n0", "0:00", 6))


def test_the_same_day_it_is_where_that_is_said_to_be_once_more() -> None:
    assert why(mended().quiet().say("so the tap is off again", did("remove", "fuel tap"))).how == "off again"
    assert only(mended().quiet().say("took the tap off to see past it", did("remove", "fuel tap"))).state == "done"


def test_what_was_off_again_is_dealt_with_when_it_is_back() -> None:
    told = mended().session().say("the tap off again", did("remove", "fuel tap")).quiet()
    told.say("and the tap's back on", did("fit", "fuel tap"))
    item = only(told)
    assert (item.state, item.again) == ("done", None)


def test_another_of_the_same_kind_that_comes_off_opens_nothing() -> None:
    told = Told().say("left tap leaks", later("left fuel tap", "fault")).quiet()
    told.say("new left tap", did("replace", "left fuel tap", "new tap")).session()
    told.say("right tap off", did("remove", "right fuel tap"))
    assert only(told).state == "done"


def test_a_figure_that_is_out_again_says_so_and_stays_noticed() -> None:
    low = read("pressure", 4.0, "psi", "oil", condition="hot")
    told = Told().say("oil pressure four hot, book says thirty", low, read("pressure", 30.0, "psi", "oil", "specified"))
    told.quiet().say("thirty now", read("pressure", 30.0, "psi", "oil")).session()
    told.say("four again", low)
    (item,) = [one for one in open_items(told.history()) if one.name != "x"]
    assert item.state == "noticed"
    assert item.again is not None
    assert item.again.how == "measured again"


def test_a_person_who_opens_it_is_named_as_the_reason() -> None:
    told = mended()
    item = only(told)
    act = Act("a1", "bench", 1, Instant("2031-05-01T10:00:00Z"), "reopen item", anchor_text(item.anchors[0]))
    (opened,) = open_items(told.history([act]))
    assert opened.again == Again("opened by hand", None, "", item.closed)
