"""What deals with an item though nobody says so of it: the part that came, the cause proved, the new seal."""

from __future__ import annotations

import pytest

from tests.logbook.told import Told, bad, did, good, later, read, suspects
from worklog_tui.logbook.open_items import open_items
from worklog_tui.model import Fact, History, OpenItem


def only(history: History, about: str) -> OpenItem:
    return next(item for item in open_items(history) if about in item.about)


@pytest.mark.parametrize(
    "heard",
    [
        did("clean", "wind trunk hose"),
        good("wind trunk hose", "holds"),
        read("length", 900, "mm", "wind trunk hose"),
    ],
)
def test_a_part_that_was_wanted_has_come_when_it_is_in_hand_another_day(heard: Fact) -> None:
    told = Told().say("the wind trunk wants a new hose", later("wind trunk hose", "part needed"))
    told.say("that one has had it", good("bellows", "fine"))
    assert only(told.history(), "hose").state == "open"
    told.session().say("the hose", heard)
    assert only(told.history(), "hose").state == "done"


def test_it_may_be_called_by_its_last_word_when_it_is_fitted() -> None:
    told = Told().say("the delivery side hose is to be bought", later("delivery side hose", "part needed")).session()
    told.say("air hose on", did("fit", "air hose"))
    assert only(told.history(), "hose").state == "done"


def test_an_old_one_that_measures_short_has_not_come() -> None:
    told = Told().say("brushes wanted", later("brushes", "part needed")).session()
    told.say("they should be fifteen", read("length", 15, "mm", "brushes", role="specified"))
    told.say("and they are four", read("length", 4, "mm", "brushes"))
    assert only(told.history(), "brushes").state == "open"


def test_a_nut_that_is_measured_need_not_be_the_nut_that_was_wanted() -> None:
    told = Told().say("a nut to get", later("nut", "part needed")).session()
    told.say("that nut is three eighths", read("length", 0.375, "in", "nut"))
    assert only(told.history(), "nut").state == "open"


def test_so_it_was_the_belt_is_said_when_the_belt_was_seen_to() -> None:
    told = Told().say("new belt on", did("replace", "drive belt"))
    for line in ("tea", "the sexton came in", "went up and listened"):
        told.say(line)
    told.say("so it was the belt all along", suspects("drive belt", "confirmed"))
    assert only(told.history(), "belt").state == "done"


def test_so_it_was_the_damp_is_said_right_after_all_is_well() -> None:
    told = Told().say("and it starts", good("motor", "starts"))
    told.say("so damp it was", suspects("damp", "confirmed"))
    assert only(told.history(), "damp").state == "done"


def test_there_is_your_trouble_is_no_cure() -> None:
    told = Told().say("look at that, there's your trouble", suspects("drive belt", "confirmed"))
    assert not [item for item in open_items(told.history()) if item.state == "done"]


def test_a_suspicion_is_settled_when_the_thing_is_set() -> None:
    told = Told().say("could be the valve clearance", suspects("valve clearance"))
    told.say("set it to eight thou", read("gap", 0.008, "in", "valve clearance", role="set"))
    assert only(told.history(), "clearance").state == "done"


@pytest.mark.parametrize("said", ["sorted", "job done", "fixed", "cured"])
def test_that_is_that_sorted_is_said_of_the_fault_in_hand(said: str) -> None:
    told = Told().say("the lid rattles", bad("lid", "rattles"))
    told.say("a bit of felt under it", did("fit", "felt"))
    told.say(f"that's that {said}", good("felt", said))
    assert only(told.history(), "lid").state == "done"


def test_a_leak_is_put_right_by_what_seals_it() -> None:
    told = Told().say("the pump weeps at the back", bad("oil pump", "weeps, leaking"))
    told.say("new gasket", did("replace", "gasket", "new gasket"))
    assert only(told.history(), "pump").state == "done"


def test_a_noise_is_not() -> None:
    told = Told().say("the pump growls", bad("oil pump", "growls"))
    told.say("new gasket", did("replace", "gasket", "new gasket"))
    assert only(told.history(), "pump").state == "noticed"


def test_there_is_your_rumble_behind_a_sound_part_only_says_where_it_is() -> None:
    told = Told().say("top bearing is smooth", good("top bearing", "smooth"))
    told.say("bottom one, there's your rumble", suspects("bottom bearing", "confirmed"))
    assert not [item for item in open_items(told.history()) if item.state == "done"]


def test_it_was_the_strap_behind_a_good_outcome_is_a_cure() -> None:
    told = Told().say("the wind holds now", good("reservoir", "holds"))
    told.say("so it was the strap", suspects("strap", "confirmed"))
    assert only(told.history(), "strap").state == "done"


def test_filling_up_stops_no_leak_and_draining_takes_no_rust_away() -> None:
    told = Told().say("the sump drips", bad("sump", "drips"), bad("fuel tank", "rusty"))
    told.quiet().say("topped up the sump, drained the tank", did("fill", "sump"), did("drain", "fuel tank"))
    assert {item.state for item in open_items(told.history())} == {"noticed"}


def test_a_way_that_was_gone_through_is_no_good_value() -> None:
    told = Told().say("it should show 99", read("temperature", 99, "C", "thermometer", "specified"))
    told.say("it shows fifty", read("temperature", 50, "C", "thermometer")).quiet()
    told.say("from twenty to a hundred and eighty in ten minutes", read("temperature", (20, 180), "C", "thermometer"))
    assert only(told.history(), "thermometer").state == "noticed"


def test_cleaning_alters_no_measured_value() -> None:
    told = Told().say("points should be fifteen", read("gap", 0.015, "in", "points", "specified"))
    told.say("nine thou", read("gap", 0.009, "in", "points")).quiet().say("washed them", did("clean", "points"))
    assert only(told.history(), "points").state == "noticed"
    told.say("fifteen now", read("gap", 0.015, "in", "points", "set"))
    assert only(told.history(), "points").state == "done"
