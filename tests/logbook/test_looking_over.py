"""What is off the machine, how it was left, before a start, closing up, parts, compression, what does not add up."""

from __future__ import annotations

from dataclasses import replace

from tests.logbook.told import Told, bad, did, good, later, read
from worklog_tui.logbook.before_start import before_start, off_key
from worklog_tui.logbook.closing_up import closing_up
from worklog_tui.logbook.compressions import before_and_after, compression_tests
from worklog_tui.logbook.how_left import do_not_start, how_left, left_key
from worklog_tui.logbook.odd import odd
from worklog_tui.logbook.off_machine import as_found, off_machine
from worklog_tui.logbook.open_items import open_items
from worklog_tui.logbook.part_states import fits, part_states, shopping_list
from worklog_tui.logbook.starts import start_attempts
from worklog_tui.model import History, SpecifiedValue


def off(known: History) -> list[tuple[str, str]]:
    return [(one.work.part, one.how) for one in off_machine(known)]


def test_what_came_off_and_was_not_heard_refitted_is_asked_about() -> None:
    told = (
        Told()
        .say(
            "fan shroud off, four 1/4-20 screws",
            did("remove", "fan shroud", name="shroud"),
            read("thread", "1/4-20", "", "screws"),
        )
        .say("carb off", did("remove", "carburettor", name="carburettor"))
        .say("carb back on", did("fit", "carburettor", name="carburettor"))
        .say("mouse nest out of the duct", did("remove", "mouse nest"))
        .say("leads off", did("disconnect", "battery lead", name="battery lead"))
    )
    known = told.history()
    assert off(known) == [("fan shroud", "off"), ("battery lead", "disconnected")]
    (shroud, _) = off_machine(known)
    assert shroud.told == "fan shroud off, four 1/4-20 screws"
    assert [size.value for size in shroud.sizes] == ["1/4-20"]
    assert not shroud.tried
    tried = told.say("gave it a pull", did("start", "engine")).say("runs", good("engine", "runs", "engine")).history()
    assert all(one.tried for one in off_machine(tried)), "it is asked, never claimed"


def test_what_an_engine_cannot_run_without_is_back_when_it_ran() -> None:
    told = Told().say("plug out", did("remove", "plug", name="spark plug"))
    told = told.say("shroud off", did("remove", "shroud", name="shroud"))
    assert [one.work.part for one in off_machine(told.history())] == ["plug", "shroud"]
    ran = told.say("runs", good("engine", "runs", "engine")).history()
    assert [one.work.part for one in off_machine(ran)] == ["shroud"]


def test_what_only_held_it_for_now_is_not_asked_for() -> None:
    told = Told().say("twine off the tap, new washer in", did("remove", "twine", name="string"))
    told = told.say("cowl off", did("remove", "cowl", name="cowl"))
    assert off(told.history()) == [("cowl", "off")]


def test_the_figure_as_found_is_kept_from_before_the_adjustment() -> None:
    known = (
        Told()
        .say("points were at twelve", read("gap", 0.012, "in", "points"))
        .say("set them to eighteen", read("gap", 0.018, "in", "points", role="set"))
        .say("belt has an inch", read("length", 1.0, "in", "belt"))
        .say("tightened the belt", did("adjust", "belt"))
        .history()
    )
    assert [(one.reading.subject, one.reading.value) for one in as_found(known)] == [("points", 0.012), ("belt", 1.0)]


def test_a_state_that_names_its_own_thing_is_of_nothing_else_in_the_note() -> None:
    tap = Told().say("fuel tap on, line off", did("disconnect", "line", name="fuel line"))
    nuts = Told().say("head nuts only finger tight", did("fit", "head nuts", name="cylinder head nuts"))
    assert [(one.state, one.about) for one in how_left(tap.history())] == [("tap open", "")]
    assert [(one.state, one.about) for one in how_left(nuts.history())] == [("finger-tight", "head nuts")]


def test_how_it_was_left_outlives_the_session_until_it_is_heard_ended() -> None:
    told = (
        Told()
        .say("head bolts are only finger tight", did("fit", "head bolts"))
        .say("she is up on blocks")
        .session()
        .say("sat on the bench")
    )
    assert [(one.state, one.about, one.stops) for one in how_left(told.history())] == [
        ("finger-tight", "head bolts", True), ("on stands", "", True),
    ]  # fmt: skip
    one = how_left(told.history())[0]
    assert [left.state for left in how_left(told.history(), frozenset({left_key(one)}))] == ["on stands"]
    ended = told.say("torqued the head bolts", did("tighten", "head bolts")).say("off the blocks now").history()
    assert how_left(ended) == ()


def test_a_mark_that_forbids_a_start_stands_until_the_machine_ran() -> None:
    told = Told().say("do not start it, there is no oil in the sump")
    assert [one.told for one in do_not_start(told.history())] == ["do not start it, there is no oil in the sump"]
    assert do_not_start(told.say("runs well", good("engine", "runs well", "engine")).history()) == ()


def test_before_a_start() -> None:
    told = (
        Told()
        .say("oil is up to the mark", good("engine oil", "up to the mark", "engine oil"))
        .say("gave it three pulls", did("start", "engine"))
        .say("not a sign", bad("engine", "no sign of life", "engine"))
        .say("silencer off", did("remove", "silencer", name="silencer"))
    )
    known = told.history()
    seen = before_start(known, open_items(known))
    assert [(one.name, one.place is not None) for one in seen.fluids] == [("engine oil", True), ("fuel", False)]
    assert seen.stops_with == (), "nothing was said of what stops it: that is asked"
    assert [(one.ran, one.outcome.condition if one.outcome else "") for one in seen.attempts] == [
        (False, "no sign of life")
    ]
    (silencer,) = seen.off
    assert before_start(known, (), frozenset({off_key(silencer)})).off == ()
    assert before_start(told.say("the kill switch works").history(), ()).stops_with != ()


def test_attempts_told_twice_are_one() -> None:
    told = Told().say("tried it", did("start", "engine")).say("pulled again", did("start", "engine"))
    assert len(start_attempts(told.history())) == 1


def test_closing_up_asks_about_checks_without_a_result_and_work_that_was_announced() -> None:
    told = (
        Told()
        .say("looked at the belt", did("check", "belt"))
        .say("meter on the coil", did("test", "coil"))
        .say("coil is fine", good("coil", "fine"))
        .say("must grease the bearings", later("grease the bearings", "to do"))
        .say("the duct is dented", bad("duct", "dented"))
    )
    known = told.history()
    asked = closing_up(known, open_items(known)).questions
    assert [(one.kind, one.answers[0]) for one in asked] == [
        ("check", "good"), ("noticed", "come back to it"), ("announced", "done"),
    ]  # fmt: skip
    assert "belt" in asked[0].asks
    assert closing_up(known, open_items(known), frozenset(one.key for one in asked)).questions == ()
    assert closing_up(known, open_items(known), most=1).more == 2
    assert closing_up(History(known.machine), ()).questions == ()


def test_what_was_put_to_next_time_is_not_asked_about_the_same_evening() -> None:
    known = Told().say("next time: grease the bearings", later("grease the bearings", "to do")).history()
    assert closing_up(known, open_items(known)).questions == ()


def test_parts_in_their_states() -> None:
    told = (
        Told()
        .say("needs a new belt", later("drive belt", "part needed"))
        .say(
            "stud snapped coming out",
            did("remove", "exhaust stud", name="stud"),
            bad("exhaust stud", "snapped", "stud"),
        )
        .say("belt has come but it is the wrong one")
        .say("fitted the coil off the scrapped blower", did("replace", "coil", "coil off the scrapped blower"))
        .say("new gasket in", did("fit", "gasket", "new gasket"))
        .say("cut a washer from a tin instead of brass", did("fit", "washer", "tin"))
        .say("drain is 3/8-16", read("thread", "3/8-16", "", "drain plug"))
    )
    known = told.history()
    items = open_items(known)
    assert [(one.part, one.state) for one in part_states(known, items)] == [
        ("drive belt", "needed"), ("exhaust stud", "destroyed"), ("drive belt", "came wrong"), ("coil", "from a donor"),
        ("gasket", "fitted"), ("washer", "substituted"),
    ]  # fmt: skip
    assert [one.about for one in shopping_list(items)] == ["drive belt"]
    assert [(one.what, one.of) for one in fits(known)] == [("3/8-16", "drain plug")]


def test_who_or_what_arrived_is_no_part_unless_it_was_wrong() -> None:
    known = Told().say("the choir arrived").say("it turned up and is the wrong size").history()
    assert [(one.part, one.state) for one in part_states(known, open_items(known))] == [("a part", "came wrong")]


def blower(known: History, **specified: tuple[float, str]) -> History:
    values = tuple(
        SpecifiedValue("compression" if key == "compression" else "length", key, f"{v} {u}", nominal=v, unit=u)
        for key, (v, u) in specified.items()
    )
    return replace(known, machine=replace(known.machine, specified=values, cylinders=4))


def test_cylinders_beside_one_another_and_dry_beside_wet() -> None:
    told = Told()
    for number, psi in enumerate((120, 118, 70, 116), 1):
        told = told.say("", read("compression", float(psi), "psi", f"cylinder {number}", condition="dry"))
    told = told.say("squirt of oil in each", did("lubricate", "bores", "oil"))
    known = told.say("number three ninety", read("compression", 90.0, "psi", "cylinder 3")).history()
    (test,) = compression_tests(known)
    assert test.lowest_share == 70 / 120
    third = test.cylinders[2]
    assert (third.dry, third.wet, third.wet_says) == (70, 90, "rings or bore")
    assert third.verdict
    assert third.verdict.grade == "bad"
    assert test.cylinders[0].wet_says == ""
    ran = told.say("runs", good("engine", "runs", "engine"))
    after = ran.say("number three again", read("compression", 88.0, "psi", "cylinder 3")).history()
    assert compression_tests(after)[0].cylinders[2].dry == 88, "what is taken after it has run is dry again"


def test_the_cards_figure_is_corrected_for_altitude() -> None:
    known = Told().say("hundred", read("compression", 100.0, "psi", "cylinder 1")).history()
    (low,) = compression_tests(blower(known, compression=(120.0, "psi")))
    (high,) = compression_tests(blower(known, compression=(120.0, "psi"), altitude=(1500.0, "m")))
    assert low.should_be == 120
    assert high.should_be
    assert 99 < high.should_be < 101, "the standard atmosphere has 83.4 % of its pressure left at 1,500 m (ISO 2533)"
    assert low.cylinders[0].verdict
    assert high.cylinders[0].verdict
    assert low.cylinders[0].verdict.share < high.cylinders[0].verdict.share


def test_before_beside_after_a_repair() -> None:
    known = (
        Told()
        .say("battery eleven", read("voltage", 11.0, "V", "battery"))
        .say("charged it", did("charge", "battery"))
        .say("battery twelve six", read("voltage", 12.6, "V", "battery"))
        .history()
    )
    (pair,) = before_and_after(known)
    assert (pair.before.value, pair.after.value, pair.work.action) == (11.0, 12.6, "charge")


def test_what_does_not_add_up() -> None:
    told = (
        Told()
        .say("gap is fifteen", read("gap", 0.015, "in", "points"))
        .say("gap is thirty", read("gap", 0.030, "in", "points"))
        .say("seal has no leak", good("seal", "no leak", "seal"))
        .say("seal leaks", bad("seal", "leaks", "seal"))
        .say("cylinder 6 is low", bad("cylinder 6", "low"))
        .say("cleaned the injector", did("clean", "injector", name="injector"))
    )
    known = blower(told.history(), compression=(120.0, "psi"))
    assert [one.kind for one in odd(known)] == ["figures", "findings", "cylinder"]
    diesel = replace(known, machine=replace(known.machine, fuel="diesel"))
    assert [one.kind for one in odd(diesel, {"diesel": ["injector"]})][-1] == "part"
    worked = (
        Told()
        .say("gap is fifteen", read("gap", 0.015, "in", "points"))
        .say("set it", did("adjust", "points"))
        .say("gap is thirty", read("gap", 0.030, "in", "points"))
    )
    assert odd(worked.history()) == ()
