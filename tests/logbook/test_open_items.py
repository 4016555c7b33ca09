"""What opens an item, what closes it, and what does neither."""

from __future__ import annotations

import pytest

from tests.logbook.told import Told, bad, did, good, later, read, states, suspects
from worklog_tui.logbook.open_items import open_items
from worklog_tui.model import Comment, CommentReading


def test_a_part_that_is_needed_is_open_until_it_is_fitted() -> None:
    told = Told().say("need a new drive belt", later("new drive belt", "part needed"))
    assert states(open_items(told.history())) == {"new drive belt": "open"}
    told.session().say("new belt is on", did("fit", "drive belt"))
    (item,) = open_items(told.history())
    assert (item.state, item.closed and item.closed.session) == ("done", 2)
    assert item.closed_by is not None
    assert item.closed_by.kind == "work"


def test_the_same_thing_said_twice_is_one_item() -> None:
    told = (
        Told()
        .say("need a belt", later("belt", "part needed"))
        .quiet()
        .say("so, a drive belt", later("drive belt", "part needed"))
    )
    (item,) = open_items(told.history())
    assert len(item.anchors) == 2
    assert item.about == "drive belt"  # by the name that tells most
    assert item.raised is not None
    assert item.raised.at == "0:00"


def test_ordering_a_part_makes_it_awaited_and_not_done() -> None:
    told = Told().say("need a belt", later("drive belt", "part needed")).say("ordered it", did("order", "drive belt"))
    assert states(open_items(told.history())) == {"drive belt": "awaited"}


def test_cleaning_does_not_bring_a_part_that_is_needed() -> None:
    told = (
        Told()
        .say("need a float needle", later("float needle", "part needed"))
        .say("cleaned it", did("clean", "float needle"))
    )
    assert states(open_items(told.history())) == {"float needle": "open"}


def test_a_temporary_repair_is_not_made_good_by_itself() -> None:
    told = Told().say(
        "split hose, so tape on it for now",
        bad("air hose", "split"),
        did("repair", "air hose", "tape"),
        later("tape on the air hose", "temporary"),
    )
    told.say("wound a bit more round it", did("repair", "air hose", "tape"))
    assert states(open_items(told.history()))["tape on the air hose"] == "open"
    told.session().say("tape's off and a new hose is on", did("remove", "tape"), did("replace", "air hose", "new hose"))
    assert states(open_items(told.history()))["tape on the air hose"] == "done"


def test_work_said_before_closes_nothing() -> None:
    told = (
        Told()
        .say("fitted a belt last year", did("fit", "drive belt"))
        .quiet()
        .say("needs a belt", later("drive belt", "part needed"))
    )
    assert states(open_items(told.history())) == {"drive belt": "open"}


def test_what_is_to_do_is_done_by_that_deed_alone() -> None:
    told = Told().say("grease the shaft bearing later", later("grease the shaft bearing", "to do"))
    told.quiet().say("checked the shaft bearing", did("check", "shaft bearing"))
    assert states(open_items(told.history())) == {"grease the shaft bearing": "open"}
    told.say("greased it", did("lubricate", "shaft bearing"))
    assert states(open_items(told.history())) == {"grease the shaft bearing": "done"}


def test_a_look_that_is_to_do_is_done_by_a_reading() -> None:
    told = Told().say("check the battery cold next time", later("check battery cold", "to do"))
    told.session().say("battery at twelve six", read("voltage", 12.6, "V", "battery"))
    assert states(open_items(told.history())) == {"check battery cold": "done"}


def test_a_fallback_stays_open_when_the_trouble_is_cured() -> None:
    told = (
        Told()
        .say("else the bellows come off", later("take the bellows off", "fallback"))
        .say("it blows", good("engine", "runs"))
    )
    assert states(open_items(told.history())) == {"take the bellows off": "open"}
    told.quiet().say("bellows off", did("remove", "bellows"))
    assert states(open_items(told.history())) == {"take the bellows off": "done"}


def test_a_bad_finding_alone_is_only_noticed() -> None:
    (item,) = open_items(Told().say("the cover is cracked", bad("belt cover", "cracked")).history())
    assert item.state == "noticed"


@pytest.mark.parametrize("action", ["clean", "repair", "replace", "fit", "adjust", "free", "fill", "tighten"])
def test_a_bad_finding_is_dealt_with_by_work_on_the_part(action: str) -> None:
    told = Told().say("valve sticks", bad("relief valve", "sticks")).say("seen to", did(action, "relief valve"))
    assert states(open_items(told.history())) == {"relief valve sticks": "done"}


def test_taking_away_deals_with_what_should_not_be_there() -> None:
    told = (
        Told()
        .say("mouse nest in the trunk", bad("wind trunk", "mouse nest"))
        .say("pulled it out", did("remove", "wind trunk"))
    )
    assert states(open_items(told.history())) == {"wind trunk mouse nest": "done"}
    told = Told().say("trunk is split", bad("wind trunk", "split")).say("took it off", did("remove", "wind trunk"))
    assert states(open_items(told.history())) == {"wind trunk split": "noticed"}


def test_a_finding_is_closed_by_a_later_good_one() -> None:
    told = Told().say("no spark", bad("spark", "no spark")).quiet().say("there it is", good("spark", "fat and blue"))
    assert states(open_items(told.history())) == {"spark no spark": "done"}


def test_an_engine_that_would_not_start_and_runs_is_dealt_with_but_not_its_smoke() -> None:
    told = Told().say("won't start", bad("engine", "won't start")).say("smokes", bad("engine", "smokes"))
    told.quiet().say("and it runs", good("engine", "runs"))
    assert states(open_items(told.history())) == {"engine won't start": "done", "engine smokes": "noticed"}


def test_a_finding_mended_for_now_is_not_called_done() -> None:
    told = Told().say("lead is cracked", bad("plug lead", "cracked"), did("repair", "plug lead", "new tape"))
    told.say("it wants a new lead", later("new plug lead", "part needed"))
    assert states(open_items(told.history())) == {"new plug lead": "open"}


def test_a_piece_of_what_is_still_open_is_not_called_done() -> None:
    told = Told().say("the disc is scored", bad("relief valve disc", "scored"), did("repair", "relief valve disc"))
    told.say("it will do till a new relief valve comes", later("relief valve", "temporary"))
    assert states(open_items(told.history())) == {"relief valve": "open"}


def test_what_was_bad_in_a_place_goes_when_the_place_is_emptied() -> None:
    told = (
        Told().say("petrol in the tank stinks", bad("petrol in the tank", "stale")).say("drained", did("drain", "tank"))
    )
    assert states(open_items(told.history())) == {"petrol in the tank stale": "done"}


def test_a_later_bad_finding_opens_again_what_was_done() -> None:
    told = Told().say("needs a belt", later("drive belt", "part needed")).say("fitted", did("fit", "drive belt"))
    told.session().say("that belt has gone already, needs another", later("drive belt", "part needed"))
    (item,) = open_items(told.history())
    assert (item.state, item.closed) == ("open", None)


def test_left_and_right_are_two_items() -> None:
    told = (
        Told()
        .say("left bellows leak", later("left bellows", "fault"))
        .say("right too", later("right bellows", "fault"))
    )
    told.quiet().say("right one patched", did("repair", "right bellows"))
    assert states(open_items(told.history())) == {"left bellows": "open", "right bellows": "done"}


def test_a_reading_out_of_its_limits_is_dealt_with_when_it_is_right() -> None:
    told = Told().say("gap is thirty five, should be twenty five", read("gap", 0.035, "in", "spark plug"),
                      read("gap", 0.025, "in", "spark plug", "specified"))  # fmt: skip
    told.quiet().say("set it to twenty five", read("gap", 0.025, "in", "spark plug", "set"))
    assert states(open_items(told.history())) == {"spark plug gap too high": "done"}


def test_oil_in_the_bore_cures_no_compression() -> None:
    limit = read("compression", 60, "psi", "cylinder 1", "specified", "minimum")
    told = Told().say("forty", read("compression", 40, "psi", "cylinder 1"), limit).quiet()
    told.say("oil in, seventy", read("compression", 70, "psi", "cylinder 1", condition="wet"))
    assert states(open_items(told.history())) == {"cylinder 1 compression too low": "noticed"}
    told.quiet().say("seventy dry now", read("compression", 70, "psi", "cylinder 1", condition="dry"))
    assert states(open_items(told.history())) == {"cylinder 1 compression too low": "done"}


def test_two_halves_of_a_question_are_one_item() -> None:
    halves = later("is it the reed", "question"), later("is it the reed spring", "question")
    (item,) = open_items(Told().say("is it the reed or its spring that sings?", *halves).history())
    assert len(item.anchors) == 2


def test_a_suspicion_is_an_item_only_when_it_was_settled() -> None:
    told = Told().say("could be the governor", suspects("governor"))
    assert open_items(told.history()) == ()
    told.say("not the governor then", suspects("governor", "ruled out"))
    assert states(open_items(told.history())) == {"governor": "done"}


def test_what_viewers_ask_and_nothing_answers_is_open_with_a_count() -> None:
    one, two = Comment(0, "how loud is it?"), Comment(3, "is it loud")
    asked = [CommentReading(one, "question", "how loud"), CommentReading(two, "question", "how loud")]
    (item,) = open_items(Told().say("hello").history(), asked)
    assert (item.state, item.raised, item.comment, item.people) == ("open", None, 0, 2)


def test_viewers_add_to_an_item_that_stands() -> None:
    told = Told().say("needs a belt", later("drive belt", "part needed"))
    asked = [CommentReading(Comment(2, "get a new drive belt"), "suggestion", "drive belt")]
    (item,) = open_items(told.history(), asked)
    assert (item.people, item.comment) == (1, 2)


def test_a_fault_that_comes_back_is_open_again() -> None:
    told = Told().say("hose leaks, not today", bad("air hose", "leaks"), later("air hose", "fault")).quiet()
    told.say("patched it", did("repair", "air hose"))
    assert states(open_items(told.history())) == {"air hose": "done"}
    told.session().say("hose is leaking again", bad("air hose", "leaking again"))
    assert states(open_items(told.history())) == {"air hose": "open"}


def test_the_end_of_a_stop_gap_is_no_new_one() -> None:
    told = Told().say("clamp on the hose for now", later("hose clamp", "temporary")).session()
    told.say("clamp's off, so that's that bodge gone", did("remove", "hose clamp"), later("hose clamp", "temporary"))
    assert states(open_items(told.history())) == {"hose clamp": "done"}


@pytest.mark.parametrize(("action", "state"), [("clean", "noticed"), ("tighten", "noticed"), ("replace", "done")])
def test_what_is_broken_is_not_cleaned_whole(action: str, state: str) -> None:
    told = Told().say("lever is snapped", bad("trunk lever", "snapped")).say("seen to", did(action, "trunk lever"))
    assert states(open_items(told.history())) == {"trunk lever snapped": state}


def test_a_tired_battery_is_not_cured_by_charging_but_a_flat_one_is() -> None:
    told = Told().say("battery is tired", bad("battery", "tired")).say("on charge", did("charge", "battery"))
    assert states(open_items(told.history())) == {"battery tired": "noticed"}
    told = Told().say("battery is flat", bad("battery", "flat")).say("on charge", did("charge", "battery"))
    assert states(open_items(told.history())) == {"battery flat": "done"}


def test_a_new_one_ends_a_stop_gap_though_it_is_told_in_the_next_line() -> None:
    told = Told().say("tape on the air hose for now", later("air hose", "temporary"))
    told.say("tape off, new air hose on", did("replace", "air hose", "new air hose"))
    assert states(open_items(told.history())) == {"air hose": "done"}


def test_what_was_to_be_drilled_out_is_done_when_it_is_out() -> None:
    told = Told().say("that will have to be drilled out", later("bolt drilled out", "to do")).session()
    told.say("drilled out that tine bolt", did("remove", "tine bolt")).say("new bolt in", did("replace", "bolt"))
    assert states(open_items(told.history())) == {"bolt drilled out": "done"}


def test_what_is_out_of_set_is_put_right_by_its_screw() -> None:
    told = Told().say("the regulator is too high", bad("regulator", "too high"))
    told.say("turned its screw down", did("adjust", "screw of the regulator"))
    assert states(open_items(told.history()))["regulator too high"] == "done"


def test_a_suspect_that_is_found_good_later_is_cleared() -> None:
    told = Told().say("could be the breaker", suspects("breaker")).session().say("it held", good("breaker", "has held"))
    assert states(open_items(told.history())) == {"breaker": "done"}


def test_what_is_ordered_is_awaited_though_nobody_said_that_it_is_needed() -> None:
    told = Told().say("discs grooved, ordered a tension assembly", did("order", "tension assembly"))
    assert states(open_items(told.history())) == {"tension assembly": "awaited"}
    told.session().say("tension assembly on", did("fit", "tension assembly"))
    assert states(open_items(told.history())) == {"tension assembly": "done"}


def test_what_is_ordered_beside_what_is_asked_for_is_no_second_item() -> None:
    told = Told().say("needs new seals, ordered the kit", later("new seals", "part needed"), did("order", "seal kit"))
    assert [item.about for item in open_items(told.history())] == ["new seals"]


def test_which_one_it_is_may_be_told_later() -> None:
    told = Told().say("leave the gasket", later("gasket", "fault")).quiet()
    told.say("what's left is the exhaust gasket", later("exhaust gasket", "to do"))
    assert [item.about for item in open_items(told.history())] == ["exhaust gasket"]
