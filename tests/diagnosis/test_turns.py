"""Turns of a repair: good that turns bad, discoveries that void earlier looks, viewers' ideas, plans."""

from __future__ import annotations

from dataclasses import replace

from tests.diagnosis.workshop import Log
from worklog_tui.diagnosis import advise
from worklog_tui.diagnosis.log import Log as Read
from worklog_tui.diagnosis.network import Network
from worklog_tui.diagnosis.signs import Signs
from worklog_tui.model import Advice, Finding, Machine, OpenItem
from worklog_tui.rulebook.faults import FaultBook


def advised(log: Log, faults: FaultBook, items: list[OpenItem] | None = None) -> Advice:
    return advise(log.history(), log.items() if items is None else items, faults, None)


def test_what_was_disturbed_since_it_ran_heads_the_suspects(faults: FaultBook) -> None:
    log = Log().found("engine", "runs evenly", "good", state="runs").did("remove", "plug lead").did("fit", "plug lead")
    log.found("engine", "won't start", state="won't start")
    advice = advised(log, faults)
    assert advice.causes[0].id == "ign.plug_lead"
    assert "what was disturbed is suspected first" in advice.steps[0].why


def test_a_cover_that_was_off_brings_what_lies_behind_it_into_suspicion(faults: FaultBook) -> None:
    log = Log().found("engine", "runs evenly", "good", state="runs")
    log.did("remove", "float bowl").did("fit", "float bowl")
    log.found("engine", "won't start", state="won't start")
    advice = advised(log, faults)
    assert advice.causes[0].id == "carb.main_jet"
    assert "before the work on the float bowl" in advice.steps[0].why


def test_a_plug_that_was_out_disturbs_no_piston_ring(faults: FaultBook) -> None:
    log = Log().found("engine", "runs evenly", "good", state="runs")
    log.did("remove", "spark plug").did("fit", "spark plug")
    log.found("engine", "won't start", state="won't start")
    assert {f.partition(".")[0] for f in Signs(Read(log.history()), faults).disturbed} == {"ign"}


def test_work_before_the_proof_is_no_disturbance(faults: FaultBook) -> None:
    log = Log().did("remove", "plug lead").did("fit", "plug lead").found("engine", "runs evenly", "good", state="runs")
    log.found("engine", "won't start", state="won't start")
    assert advised(log, faults).causes[0].id != "ign.plug_lead"


LATHE = Machine("Bench lathe", "centre lathe, flat belt, single-phase motor", "none", "none")


def test_of_several_complaints_the_one_that_is_worked_on_is_in_hand(faults: FaultBook) -> None:
    van = Machine("Bakery van", "four-cylinder petrol van, hydraulic brakes", "petrol", "battery", 4)
    log = (
        Log(van).found("engine", "boils", state="boils").found("brakes", "pulls to one side", state="pulls to one side")
    )
    assert advised(log, faults).complaint == "it pulls to a side when it brakes"
    log.found("thermostat", "stuck shut", state="stuck")
    assert advised(log, faults).complaint == "it runs too hot"


def test_a_complaint_of_which_a_cause_was_found_and_put_right_recedes(faults: FaultBook) -> None:
    log = Log(LATHE).found("motor", "hums", state="hums").found("belt", "slips", state="slips")
    assert advised(log, faults).complaint == "a belt slips or squeals"
    log.found("pulley alignment", "out of line", state="out of line").did("adjust", "pulley alignment")
    assert advised(log, faults).complaint == "the motor hums and will not start, or starts slowly"


def test_a_trouble_of_one_part_is_over_when_the_part_works_again(faults: FaultBook) -> None:
    log = Log(LATHE)
    span = log.note("coolant pump just hums and won't turn")
    log.sessions[-1][1].append(
        Finding(main=span, part="coolant pump", condition="hums", verdict="bad", name="coolant pump", state="hums")
    )
    assert advised(log, faults).complaint == "the motor hums and will not start, or starts slowly"
    assert advised(log.found("coolant pump", "runs", "good", state="runs"), faults).complaint == ""


def test_a_look_before_the_disturbance_is_made_again(faults: FaultBook) -> None:
    log = Log().found("flywheel key", "perfect", "good").found("engine", "runs evenly", "good", state="runs")
    log.did("strip", "flywheel key").found("engine", "won't start", state="won't start")
    signs = Signs(Read(log.history()), faults)
    assert "ign.key" in signs.disturbed
    assert Network(signs).chance("ign.key") > 0.2


def test_a_switch_that_was_off_voids_the_looks_before_it(faults: FaultBook) -> None:
    log = Log().found("spark", "no spark", state="no spark")
    before = {c.id: c.chance for c in advised(log, faults).causes}
    log.found("kill switch", "was off", "bad", state="off")
    signs = Signs(Read(log.history()), faults)
    assert signs.symptom_signs["no_spark"].trust < 0.15
    after = {c.id: c.chance for c in advised(log, faults).causes}
    assert after["ign.points_dirty"] < before["ign.points_dirty"]


def test_a_gauge_found_wrong_voids_its_readings(faults: FaultBook) -> None:
    van = Machine("Old van", "four-cylinder petrol van", "petrol", "battery", 4)
    log = Log(van)
    for cylinder, psi in enumerate((120, 118, 60, 121), 1):
        log.read("compression", psi, "psi", f"cylinder {cylinder}")
    believed = Signs(Read(log.history()), faults).check_signs["comp.gauge"].trust
    log.found("compression tester", "reads wrong", state="reads wrong")
    assert Signs(Read(log.history()), faults).check_signs["comp.gauge"].trust < believed / 5


def test_a_viewers_idea_is_no_evidence_and_comes_behind_the_log(faults: FaultBook) -> None:
    log = Log().chat(8).later("fan belt", "part needed", "it needs a fan belt")
    idea = replace(log.items()[0], anchors=(), about="new coil", name="ignition coil", raised=None, comment=0, people=3)
    advice = advised(log, faults, [idea, *log.items()])
    assert "fan belt" in advice.steps[0].step
    assert advised(log, faults).causes == advice.causes
    coil = next(s for s in advice.steps if "coil" in s.step)
    assert "viewers put it forward" in coil.why


def test_the_own_plan_keeps_its_order_and_both_branches(faults: FaultBook) -> None:
    log = Log().chat(12)
    log.later("clean the strainer", "to do", "next time I clean the strainer")
    log.later("lap the foot valve", "fallback", "if that does not help I lap the foot valve")
    log.later("grease the bearing", "to do", "after that I grease the bearing")
    assert advised(log, faults).plan == (
        "clean the strainer", "if that does not help: lap the foot valve", "grease the bearing",
    )  # fmt: skip


def test_a_step_of_the_plan_that_was_done_leaves_it(faults: FaultBook) -> None:
    log = Log().chat(12).later("clean the strainer", "to do", "next time I clean the strainer", name="strainer")
    log.later("grease the bearing", "to do", "after that I grease the bearing").did("clean", "strainer")
    assert advised(log, faults).plan == ("grease the bearing",)


def test_a_missing_fact_that_would_change_the_first_step_is_asked_for(faults: FaultBook) -> None:
    unknown = Machine("Yard engine", "single-cylinder engine")
    asked = advised(Log(unknown).found("engine", "won't start", state="won't start"), faults).asks
    assert any(q.startswith("What does it run on?") for q in asked)
    known = replace(unknown, fuel="petrol", ignition="magneto")
    assert advised(Log(known).found("engine", "won't start", state="won't start"), faults).asks == ()


def test_an_electric_press_gets_its_own_cautions(faults: FaultBook) -> None:
    press = Machine("Trimming press", "paper guillotine with a three-phase motor", "none", "none")
    log = Log(press).found("two-hand control", "one button taped down", state="bypassed", name="two-hand control")
    log.later("two-hand control", "fault", "the two-hand control is bypassed", name="two-hand control")
    first = advised(log, faults).steps[0]
    assert first.why.startswith("Nothing keeps hands out of the stroke")
    assert any("No hand in the stroke" in c for c in first.cautions)
    assert not any("engines indoors" in c for s in advised(log, faults).steps for c in s.cautions)


def test_the_list_at_the_end_leads_also_as_bare_names(faults: FaultBook) -> None:
    log = Log().found("drive belt", "cracked", state="cracked").found("oil seal", "weeping", state="weeping")
    log.found("fuel gauge", "dead", state="dead").chat(6)
    log.note("Right. Belt, seal, gauge. See you.")
    steps = [s.step for s in advised(log, faults).steps[:3]]
    assert [next(w for w in ("belt", "seal", "gauge") if w in s) for s in steps] == ["belt", "seal", "gauge"]


def test_a_bare_part_is_called_by_what_was_spoken_of(faults: FaultBook) -> None:
    log = Log().chat(4)
    log.note("All of the brakes are dry, except the handbrake.")
    log.later("cable", "part needed", "Cable is stranded, so it needs a new cable", name="cable")
    assert "handbrake cable" in advised(log, faults).steps[0].step
    kit = Log().chat(4).later("kit", "part needed", "still waiting for the load check kit", name="kit")
    assert "load check kit" in advised(kit, faults).steps[0].step


def test_a_borrowed_tool_is_no_stop_gap_of_the_machine(faults: FaultBook) -> None:
    log = Log().later("tachometer", "temporary", "the tachometer is borrowed", name="tachometer")
    assert advised(log, faults).steps == ()


def test_a_part_that_a_diesel_has_none_of_is_no_step(faults: FaultBook) -> None:
    diesel = Machine("Cable winch", "three-cylinder diesel winch", "diesel", "none", 3)
    log = Log(diesel).later("plug", "part needed", "it needs a plug", name="spark plug")
    assert advised(log, faults).steps == ()


def test_a_found_cause_is_mended_before_more_is_checked(faults: FaultBook) -> None:
    van = Machine("Old van", "four-cylinder petrol van", "petrol", "battery", 4)
    log = Log(van).found("engine", "overheating", state="overheating")
    log.later("water pump", "part needed", "it drips, it needs a water pump", name="water pump")
    advice = advised(log, faults)
    assert "water pump" in advice.steps[0].step
    assert "It can be the cause" in advice.steps[0].why


def test_a_pop_before_it_ran_is_no_trouble(faults: FaultBook) -> None:
    log = Log()
    span = log.note("three pulls, a pop, then it runs")
    first = Finding(main=span._replace(start=13, end=16), part="engine", condition="pop", verdict="bad",
                    name="engine", state="pop", quote="a pop")  # fmt: skip
    ran = Finding(main=span._replace(start=23, end=27), part="engine", condition="runs", verdict="good",
                  name="engine", state="runs", quote="runs")  # fmt: skip
    log.sessions[-1][1].extend((first, ran))
    assert advised(log, faults).complaint == ""


def test_a_danger_told_long_ago_is_told_until_it_was_made_safe(faults: FaultBook) -> None:
    log = Log()
    log.note("Petrol drips from the tap onto the hot exhaust.")
    log.session().later("drive belt", "part needed", "it wants a drive belt").chat(3)
    said = "Fuel that can get out near heat"
    first = advised(log, faults).steps[0]
    assert any(c.startswith(said) and "session 1" in c for c in first.cautions)
    log.note("New tap fitted, the drip has stopped.")
    assert not any(c.startswith(said) for s in advised(log, faults).steps for c in s.cautions)


def test_a_guard_left_off_in_an_earlier_session_is_remembered(faults: FaultBook) -> None:
    log = Log().did("remove", "belt guard").session().later("drive belt", "part needed", "it wants a drive belt")
    assert any("belt guard was taken off" in c for c in advised(log, faults).steps[0].cautions)
    back = log.did("fit", "belt guard")
    assert not any("was taken off" in c for s in advised(back, faults).steps for c in s.cautions)
