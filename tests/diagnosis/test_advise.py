"""What to do next: danger, the person's own plan, what the fault files find, and the other open items."""

from __future__ import annotations

import time
from collections.abc import Sequence

import pytest

from tests.diagnosis.workshop import PUMP, Log
from worklog_tui.diagnosis import advise
from worklog_tui.model import Advice, Machine, OpenItem
from worklog_tui.rulebook.faults import FaultBook


def advised(log: Log, faults: FaultBook, items: Sequence[OpenItem] | None = None) -> Advice:
    return advise(log.history(), log.items() if items is None else items, faults, None)


def steps(log: Log, faults: FaultBook) -> list[str]:
    return [s.step for s in advised(log, faults).steps]


def test_an_empty_log_gives_no_step(faults: FaultBook) -> None:
    assert advised(Log(), faults) == Advice("")


def test_a_session_just_begun_changes_nothing(faults: FaultBook) -> None:
    log = Log().found("engine", "hunting", state="hunting").later("fan belt", "part needed")
    before = steps(log, faults)
    assert before
    assert steps(log.session(), faults) == before


def test_a_healthy_machine_gives_no_step(faults: FaultBook) -> None:
    log = (
        Log()
        .found("spark", "fat and blue", "good")
        .found("compression", "fine", "good")
        .found("engine", "runs evenly", "good")
    )
    advice = advised(log, faults)
    assert (advice.complaint, advice.steps) == ("", ())
    assert {s.system: s.standing for s in advice.systems}["Ignition"] == "proved good"


def test_no_spark_begins_with_the_stop_wire(faults: FaultBook) -> None:
    advice = advised(Log().found("spark", "no spark at all", state="no spark"), faults)
    assert advice.complaint == "there is no proper spark"
    first = advice.steps[0]
    assert "kill wire" in first.step or "spark plug" in first.step
    assert first.minutes is not None
    assert first.minutes <= 5
    assert any("magnetos bite" in c for c in first.cautions)
    assert first.outcomes


def test_what_was_found_good_is_not_looked_at_again(faults: FaultBook) -> None:
    log = Log().found("spark", "no spark", state="no spark").suspected("kill wire", "ruled out")
    log.found("contact breaker points", "clean and bright", "good").found("spark plug", "as new", "good")
    said = " ".join(steps(log, faults))
    assert said
    for done in ("kill wire", "look at the points", "known to be good"):
        assert done not in said


def test_what_was_cleaned_without_effect_is_not_cleaned_again(faults: FaultBook) -> None:
    log = Log().found("spark", "no spark", state="no spark").did("clean", "contact breaker points")
    log.found("spark", "still no spark", state="no spark")
    assert not any("clean the points" in s for s in steps(log, faults))


def test_work_since_the_complaint_is_proved_first(faults: FaultBook) -> None:
    log = Log().found("engine", "hunting", state="hunting").did("clean", "main jet")
    assert steps(log, faults)[0] == "try it again and see whether it is cured (it hunts up and down)"


def test_a_cured_complaint_is_closed(faults: FaultBook) -> None:
    log = Log().found("engine", "won't start", state="won't start").did("clean", "main jet")
    log.found("engine", "starts and runs", "good")
    advice = advised(log, faults)
    assert (advice.complaint, advice.steps) == ("", ())


def test_running_badly_ends_not_starting(faults: FaultBook) -> None:
    log = Log().found("engine", "won't start", state="won't start").found("engine", "hunting", state="hunting")
    assert advised(log, faults).complaint == "it hunts up and down"


def test_bad_spark_makes_the_fuel_less_likely(faults: FaultBook) -> None:
    dead = Log().found("engine", "won't start", state="won't start")
    chances = {c.id: c.chance for c in advised(dead, faults).causes}
    dead.found("spark", "no spark", state="no spark")
    after = advised(dead, faults)
    assert after.causes[0].system == "ignition"
    assert all(c.chance <= chances[c.id] for c in after.causes if c.system == "fuel" and c.id in chances)


def test_a_cause_shows_what_speaks_for_it(faults: FaultBook) -> None:
    log = Log().found("spark", "no spark", state="no spark").found("contact breaker points", "dirty", state="dirty")
    top = advised(log, faults).causes[0]
    assert (top.id, top.grade) == ("ign.points_dirty", "likely")
    assert top.evidence[0].words == "contact breaker points: dirty"
    assert top.evidence[0].weight > 0
    assert top.evidence[0].place is not None
    assert top.evidence[0].place.at == "1:00"


def test_the_plan_keeps_its_order_and_its_fallback_comes_after(faults: FaultBook) -> None:
    log = Log().chat(12)
    log.later("clean the strainer", "to do", "next time I clean the strainer")
    log.later("lap the foot valve", "fallback", "and if that does not help I lap the foot valve")
    log.later("new gauge", "part needed", "oh and a new gauge")
    said = steps(log, faults)
    assert said[:2] == ["clean the strainer", "lap the foot valve"]
    assert "new gauge" in said[2]


def test_danger_comes_before_the_plan(faults: FaultBook) -> None:
    log = Log().later("stop wire", "temporary", "the stop wire is unhooked for now").chat(12)
    log.later("clean the strainer", "to do", "next time I clean the strainer")
    advice = advised(log, faults)
    assert [s.step for s in advice.steps] == ["reconnect the stop wire", "clean the strainer"]
    assert advice.steps[0].why.startswith("There is no sure way to stop it")
    assert advice.steps[0].cautions


def test_a_complaint_comes_after_the_plan_and_before_other_items(faults: FaultBook) -> None:
    log = Log().later("seat cover", "part needed", "it needs a seat cover one day").chat(14)
    log.found("engine", "hunting", state="hunting").later(
        "clean the strainer", "to do", "tomorrow I clean the strainer"
    )
    said = steps(log, faults)
    assert said[0] == "clean the strainer"
    assert said[1] in (
        "close the choke half way while it hunts, and see whether it smooths out",
        "hold the throttle still by hand and see whether it still hunts",
    )
    assert not any("seat cover" in s for s in said[:3])


@pytest.mark.parametrize(
    "forbidden",
    [
        "plug the relief valve",
        "weld the air tank",
        "raise the governed speed",
        "spray ether in the intake",
        "run it without a guard",
    ],
)
def test_what_is_never_safe_is_never_advised(forbidden: str, faults: FaultBook) -> None:
    assert steps(Log().later(forbidden, "to do"), faults) == []


@pytest.mark.parametrize("talk", ["that's why", "and I'm out of pocket", "which"])
def test_talk_that_names_no_job_is_no_step(talk: str, faults: FaultBook) -> None:
    assert steps(Log().later(talk, "fallback"), faults) == []


def test_a_question_is_no_step(faults: FaultBook) -> None:
    assert steps(Log().later("which hole the spring goes in", "question"), faults) == []


def test_at_most_five_steps_and_no_doubles(faults: FaultBook) -> None:
    log = Log()
    for part in ("fan belt", "oil seal", "drain cock", "throttle cable", "float needle", "fuel cap", "fan belt"):
        log.later(part, "part needed")
    said = steps(log, faults)
    assert len(said) == 5
    assert len(set(said)) == 5


def test_what_made_no_difference_is_not_done_again(faults: FaultBook) -> None:
    log = Log().later("turn the mixture screw", "to do", name="pilot screw")
    log.found("pilot screw", "makes no difference either way", "noted")
    assert steps(log, faults) == []


def test_an_item_dealt_with_since_sinks(faults: FaultBook) -> None:
    log = Log().later("fan belt", "part needed", name="fan belt").did("replace", "fan belt")
    assert steps(log, faults) == []


@pytest.mark.parametrize(
    ("topic", "reason", "words", "step"),
    [
        ("float needle", "part needed", "I need a float needle", "order and fit a new float needle"),
        ("float needle", "part needed", "the float needle is on order", "fit the new float needle"),
        ("tape on the suction hose", "temporary", "tape on the suction hose for now", "fit a proper new suction hose"),
        ("home-made sump gasket", "temporary", "a home-made sump gasket", "fit a proper new sump gasket"),
        ("strainer cleaned", "to do", "I want the strainer cleaned", "clean the strainer"),
        ("valve timing", "to do", "the valve timing another time", "do the valve timing"),
        ("drive belt", "fault", "the drive belt", "replace the drive belt with a new one"),
        ("rattle", "fault", "that rattle", "find the cause of the rattle"),
        ("head off", "to do", "head off", "take the head off"),
        ("we'll have to swap the coils", "fallback", "then we'll have to swap the coils", "swap the coils"),
        ("gonna be looking at the foot valve", "fallback", "gonna be looking at it", "look at the foot valve"),
    ],
)
def test_wording(topic: str, reason: str, words: str, step: str, faults: FaultBook) -> None:
    assert steps(Log().later(topic, reason, words), faults) == [step]


# what must not matter


def facts_of(advice: Advice) -> list[tuple[str, float]]:
    return [(c.id, round(c.chance, 9)) for c in advice.causes]


def test_a_disowned_reading_counts_for_little_and_a_planned_one_for_nothing(faults: FaultBook) -> None:
    bare = Log().found("spark", "no spark", state="no spark")
    planned = (
        Log().found("spark", "no spark", state="no spark").read("compression", 20, "psi", "compression", role="planned")
    )
    assert facts_of(advised(bare, faults)) == facts_of(advised(planned, faults))
    assert steps(bare, faults) == steps(planned, faults)


def test_the_order_of_independent_findings_does_not_matter(faults: FaultBook) -> None:
    one = (
        Log()
        .found("condenser", "fine", "good")
        .found("spark plug", "new", "good")
        .found("spark", "no spark", state="no spark")
    )
    other = (
        Log()
        .found("spark plug", "new", "good")
        .found("condenser", "fine", "good")
        .found("spark", "no spark", state="no spark")
    )
    assert facts_of(advised(one, faults)) == facts_of(advised(other, faults))


def test_two_short_sessions_say_the_same_as_one(faults: FaultBook) -> None:
    one = Log().found("spark", "no spark", state="no spark").found("condenser", "fine", "good")
    two = Log().found("spark", "no spark", state="no spark").session().found("condenser", "fine", "good")
    assert facts_of(advised(one, faults)) == facts_of(advised(two, faults))


def test_faults_of_other_kinds_of_machine_stay_out(faults: FaultBook) -> None:
    diesel = Machine("Cable winch", "three-cylinder diesel winch", "diesel", "none", 3)
    advice = advised(Log(diesel).found("engine", "won't start", state="won't start"), faults)
    assert {c.system for c in advice.causes} <= {"diesel", "compression", "starting"}
    drill = Machine("Bench drill", "pillar drill", "none", "none")
    advice = advised(Log(drill).found("spindle", "noisy", state="noisy"), faults)
    assert {c.system for c in advice.causes} <= {"workshop", "electric motor"}
    assert advice.causes


def test_unknown_trouble_is_said_not_to_be_explained(faults: FaultBook) -> None:
    log = Log().found("engine", "hunting", state="hunting")
    assert "does not explain" not in advised(log, faults).remark
    for cause in ("idle passage", "main jet", "intake gasket", "throttle shaft", "lean mixture", "float level",
                  "fuel filter", "governor link", "governor spring", "water in the fuel"):  # fmt: skip
        log.suspected(cause, "ruled out")
    log.found("engine", "still hunting", state="hunting")
    assert "does not explain" in advised(log, faults).remark


def test_what_may_be_is_no_danger_yet(faults: FaultBook) -> None:
    def first(words: str) -> str:
        log = Log()
        log.note(words)
        return next((s.step for s in advised(log, faults).steps), "")

    assert "stop the fuel leak" in first("Petrol is running out of the tap and on to the floor.")
    assert "stop the fuel leak" not in first("Either petrol is running out of the tap, or it's the float.")


def test_the_same_words_give_the_same_advice(faults: FaultBook) -> None:
    log = Log().found("engine", "hunting", state="hunting").suspected("lean mixture")
    assert advised(log, faults) == advised(log, faults)


def test_ten_thousand_facts_take_ten_times_a_thousand_at_most(faults: FaultBook) -> None:
    """Seconds depend on the machine and are printed; that the time grows no faster than the log does not."""

    def seconds(facts: int) -> float:
        log = Log(PUMP)
        parts = ("spark plug", "main jet", "fuel hose", "governor link", "valve", "bolt", "cover", "shroud")
        for n in range(facts - 10):
            good = n % 3 != 0
            log.found(parts[n % 8], "fine" if good else "worn", "good" if good else "bad", state="" if good else "worn")
        log.found("engine", "hunting", state="hunting").later("fan belt", "part needed").later("strainer", "to do")
        history, items, took = log.history(), log.items(), []
        for _ in range(3):
            began = time.process_time()
            advise(history, items, faults, None)
            took.append(time.process_time() - began)
        return min(took)

    many, few = seconds(10_000), seconds(1_000)
    print(f"  {few:.3f} s for a thousand, {many:.3f} s for ten thousand")
    assert many <= 10 * few
