"""What ends an item though another name is told for it, or none."""

from __future__ import annotations

import pytest

from tests.logbook.told import Told, bad, did, good, later, read, states
from worklog_tui.logbook.open_items import open_items


@pytest.mark.parametrize(
    ("state", "action", "done"),
    [("slack", "tighten", True), ("slack", "clean", False), ("blocked", "clean", True), ("cracked", "clean", False)],
)
def test_work_told_next_puts_right_what_it_fits(state: str, action: str, done: bool) -> None:
    """The chain is slack; the idler is tightened."""
    told = Told().say(f"the chain is {state}", bad("chain", state)).say("did the idler", did(action, "idler"))
    assert states(open_items(told.history()))[f"chain {state}"] == ("done" if done else "noticed")


def test_a_job_still_due_on_a_part_does_not_hide_what_was_put_right_on_it() -> None:
    told = Told().say("the head is hollow", bad("head", "hollow")).quiet().quiet()
    told.say("skimmed it", did("repair", "head")).say("retorque it when cold", later("retorque the head", "to do"))
    assert states(open_items(told.history())) == {"head hollow": "done", "retorque the head": "open"}


def test_a_new_whole_deals_with_the_fault_of_its_piece() -> None:
    told = Told().say("torn at the seam", bad("seam of the return filter", "torn")).quiet().quiet()
    told.say("new filter in", did("replace", "filter"))
    assert states(open_items(told.history())) == {"seam of the return filter torn": "done"}


def test_the_old_whole_put_back_does_not() -> None:
    told = Told().say("torn at the seam", bad("seam of the return filter", "torn")).quiet().quiet()
    told.say("filter back in", did("fit", "filter"))
    assert states(open_items(told.history())) == {"seam of the return filter torn": "noticed"}


def test_a_clamp_called_after_what_it_was_on_ends_that_stop_gap() -> None:
    told = Told().say("nipped off the left rear hose to move it", later("left rear hose", "temporary"))
    told.session().say("the hose clamp's off", did("remove", "hose clamp"))
    assert states(open_items(told.history())) == {"left rear hose": "done"}


def test_a_note_that_begins_with_what_was_left_tells_how_it_was_done() -> None:
    told = Told().say("plug cap's loose, I'll come back to that", later("plug cap", "fault")).quiet().quiet()
    told.say("That loose plug cap. Cut the end off the lead.", did("repair", "plug lead"))
    assert states(open_items(told.history()))["plug cap"] == "done"


def test_but_not_a_note_that_only_comes_to_speak_of_it() -> None:
    told = Told().say("plug cap's loose, I'll come back to that", later("plug cap", "fault")).quiet().quiet()
    told.say("The coil on the left is fine and cold, no need to touch the plug cap", good("coil", "fine"))
    assert states(open_items(told.history()))["plug cap"] == "open"


def test_what_was_replaced_is_an_item_that_is_done_though_nobody_said_what_was_wrong() -> None:
    told = Told().say("three amp fuse goes in", did("replace", "fuse"))
    (item,) = open_items(told.history())
    assert (item.about, item.state) == ("fuse", "done")
    assert item.raised == item.closed


@pytest.mark.parametrize(("action", "used"), [("fit", ""), ("clean", ""), ("replace", "tape")])
def test_what_was_fitted_cleaned_or_made_do_with_is_none(action: str, used: str) -> None:
    assert open_items(Told().say("and that's that", did(action, "fuse", used)).history()) == ()


def test_what_was_replaced_and_told_before_is_no_second_item() -> None:
    told = Told().say("need a fuse", later("fuse", "part needed")).quiet().quiet().session()
    told.say("new fuse in", did("replace", "fuse"))
    assert states(open_items(told.history())) == {"fuse": "done"}


def test_a_belt_told_slack_and_set_to_a_figure_is_put_right() -> None:
    told = Told().say("the fan belt's slack", bad("fan belt", "slack"))
    told.say("and that's half an inch", read("length", 0.5, "in", "belt", role="set"))
    assert states(open_items(told.history())) == {"fan belt slack": "done"}
