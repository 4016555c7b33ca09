"""What was done about a thing and yet leaves it open: put off, made do for now, only bearable. A tower clock winder."""

from __future__ import annotations

import pytest

from tests.logbook.told import Told, bad, did, good, later, read, states
from worklog_tui.logbook.open_items import open_items
from worklog_tui.model import Finding


def state(told: Told, about: str) -> str:
    return states(open_items(told.history()))[about]


@pytest.mark.parametrize(
    ("words", "kept"),
    [
        ("the drum wants a new lining but that's a winter job", True),
        ("the drum wants a new lining, I'll do that one day", True),
        ("the drum wants a new lining", False),
    ],
)
def test_what_is_put_off_is_not_dealt_with_by_a_clean_the_same_day(words: str, kept: bool) -> None:
    told = Told().say(words, later("drum", "fault")).quiet().say("wiped the drum", did("clean", "drum"))
    assert state(told, "drum") == ("open" if kept else "done")


def test_but_another_day_it_is() -> None:
    told = Told().say("the drum is a winter job", later("drum", "fault")).session()
    assert state(told.say("drum relined", did("repair", "drum")), "drum") == "done"


@pytest.mark.parametrize(
    ("words", "kept"),
    [
        ("cut a spider out of conveyor belt for the time being", True),
        ("made a spider to get us going", True),
        ("temporary spider in, till the proper one comes", True),
        ("made a spider out of polyurethane", False),
    ],
)
def test_what_is_made_do_with_puts_no_fault_right(words: str, kept: bool) -> None:
    told = Told().say("the spider has gone to crumbs", bad("spider", "gone to crumbs")).quiet()
    told.say(words, did("make", "spider"))
    assert state(told, "spider gone to crumbs") == ("noticed" if kept else "done")


@pytest.mark.parametrize(("how", "kept"), [("not terrible", True), ("legal", True), ("like new", False)])
def test_what_is_bearable_is_no_better_for_that(how: str, kept: bool) -> None:
    told = Told().say("the pin's got a ridge worn in it", bad("pin", "worn")).say(f"it's {how}", good("pin", how))
    assert state(told, "pin worn") == ("noticed" if kept else "done")


def test_of_the_left_one_it_tells_nothing_that_the_right_one_turns() -> None:
    told = Told().say("left sheave is stuck", bad("left sheave", "stuck"))
    told.say("right one turns", good("right sheave", "turns freely"))
    assert state(told, "left sheave stuck") == "noticed"


def test_the_volts_of_another_part_put_nothing_right() -> None:
    told = Told().say("battery should be twelve and a half", read("voltage", 12.5, "V", "battery", "specified"))
    told.say("it has nine", read("voltage", 9.0, "V", "battery"))
    told.say("twelve at the lamp", read("voltage", 12.5, "V", "lamp"))
    assert state(told, "battery voltage too low") == "noticed"


@pytest.mark.parametrize(
    ("words", "found", "kept"),
    [
        ("the other bearing is fine", good("other bearing", "fine", "bearing"), True),
        ("that bearing is fine now", good("bearing", "fine now", "bearing"), False),
    ],
)
def test_of_the_other_one_it_tells_nothing(words: str, found: Finding, kept: bool) -> None:
    told = Told().say("the drum bearing is rough", bad("bearing", "rough", "bearing"), later("bearing", "fault"))
    told = told.quiet().say(words, found)
    assert state(told, "bearing") == ("open" if kept else "done")
