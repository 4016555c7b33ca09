"""What the log says for and against a fault: findings, readings, work, suspicions, and how far each is trusted."""

from __future__ import annotations

from dataclasses import replace

import pytest

from tests.diagnosis.workshop import PUMP
from tests.diagnosis.workshop import Log as Told
from worklog_tui.diagnosis.log import Log
from worklog_tui.diagnosis.network import Network
from worklog_tui.diagnosis.sign import Sign
from worklog_tui.diagnosis.signs import Signs
from worklog_tui.diagnosis.standing import standing_signs
from worklog_tui.model import Machine, SpecifiedValue
from worklog_tui.rulebook.faults import FaultBook

CARD = replace(
    PUMP,
    specified=(
        SpecifiedValue("gap", "points gap", "0.020 in", nominal=0.020, unit="in"),
        SpecifiedValue("compression", "compression", "8 bar", nominal=8.0, unit="bar"),
    ),
)


LIFT = Machine("Sack lift", "sack lift, electric motor, belt driven", "none", "none")
FOUR = Machine("Tide pump", "four-cylinder petrol pump", "petrol", "battery", 4)
MOWER = Machine("Verge mower", "rotary mower, single-cylinder petrol engine", "petrol", "magneto", 1)


def signs(told: Told, faults: FaultBook) -> Signs:
    return Signs(Log(told.history()), faults)


def look(told: Told, faults: FaultBook, fault: str) -> Sign | None:
    return signs(told, faults).look_signs.get(fault)


@pytest.mark.parametrize(("gap", "shows"), [(0.012, "bad"), (0.021, "good"), (0.030, "bad")])
def test_a_reading_is_held_against_the_card(gap: float, shows: str, faults: FaultBook) -> None:
    sign = look(Told(CARD).read("gap", gap, "in", "contact breaker points"), faults, "ign.points_gap")
    assert sign is not None
    assert sign.shows == shows


def test_units_of_card_and_reading_may_differ(faults: FaultBook) -> None:
    sign = look(Told(CARD).read("gap", 0.5, "mm", "contact breaker points"), faults, "ign.points_gap")
    assert sign is not None
    assert sign.shows == "good"
    low = signs(Told(CARD).read("compression", 60, "psi", "cylinder 1"), faults).check_signs["comp.gauge"]
    assert low.shows == "low"


def test_without_a_card_the_cylinders_are_held_against_each_other(faults: FaultBook) -> None:
    told = Told().read("compression", 110, "psi", "cylinder 1").read("compression", 60, "psi", "cylinder 2")
    assert signs(told, faults).check_signs["comp.gauge"].shows == "low"
    alone = Told().read("compression", 60, "psi", "cylinder 1")
    assert "comp.gauge" not in signs(alone, faults).check_signs


def test_a_value_that_was_set_counts_as_good_and_a_planned_one_not_at_all(faults: FaultBook) -> None:
    told = Told(CARD).read("gap", 0.012, "in", "contact breaker points")
    told.read("gap", 0.020, "in", "contact breaker points", role="set")
    sign = look(told, faults, "ign.points_gap")
    assert sign is not None
    assert sign.shows == "good"
    planned = Told(CARD).read("gap", 0.030, "in", "contact breaker points", role="planned")
    assert look(planned, faults, "ign.points_gap") is None


def test_a_doubtful_reading_is_trusted_less(faults: FaultBook) -> None:
    sure = look(Told(CARD).read("gap", 0.012, "in", "contact breaker points"), faults, "ign.points_gap")
    unsure = look(
        Told(CARD).read("gap", 0.012, "in", "contact breaker points", doubtful=True), faults, "ign.points_gap"
    )
    assert sure is not None
    assert unsure is not None
    assert unsure.trust < sure.trust


def test_a_denied_condition_is_not_heard(faults: FaultBook) -> None:
    assert "misfire" not in signs(Told().found("engine", "not a pop"), faults).symptom_signs


def test_another_part_with_the_same_word_is_not_meant(faults: FaultBook) -> None:
    assert look(Told().found("oil pump", "worn", state="worn"), faults, "cool.pump") is None


def test_a_complaint_said_twice_is_trusted_more(faults: FaultBook) -> None:
    once = signs(Told().found("engine", "hunting", state="hunting"), faults).symptom_signs["hunting"]
    twice = Told().found("engine", "hunting", state="hunting").found("engine", "hunting", state="hunting")
    assert signs(twice, faults).symptom_signs["hunting"].trust > once.trust


def test_old_evidence_speaks_of_the_fault_before_it_was_mended(faults: FaultBook) -> None:
    told = Told().found("contact breaker points", "dirty", state="dirty")
    dirty = Network(signs(told, faults)).chance("ign.points_dirty")
    mended = Network(signs(told.did("clean", "contact breaker points"), faults))
    assert dirty > 0.5
    assert mended.chance("ign.points_dirty") < 0.1
    assert mended.result.chances[mended.index["ign.points_dirty/before"]] == pytest.approx(dirty)


def test_a_suspicion_raises_a_fault_until_it_is_settled(faults: FaultBook) -> None:
    plain = Network(signs(Told(), faults)).chance("ign.condenser")
    told = Told().suspected("condenser")
    assert Network(signs(told, faults)).chance("ign.condenser") > plain
    settled = Network(signs(told.suspected("condenser", "ruled out"), faults))
    assert settled.chance("ign.condenser") < plain
    assert not settled.signs.hunch_signs


def test_what_each_sign_adds_is_told(faults: FaultBook) -> None:
    told = Told().found("spark", "no spark", state="no spark").suspected("condenser", "ruled out")
    network = Network(signs(told, faults))
    weights = {(s.sort, s.of): w["ign.condenser"] for s, w in network.weights(["ign.condenser"])}
    assert weights["symptom", "no_spark"] > 0
    assert weights["look", "ign.condenser"] < 0


def test_a_bearing_that_was_greased_is_worn_no_more_than_before(faults: FaultBook) -> None:
    noisy = Told(LIFT).found("bearing", "rumbling", state="rumbling")
    assert Network(signs(noisy, faults)).chance("brg.worn") > 0.5
    greased = noisy.did("lubricate", "bearing").found("bearing", "quiet", "good")
    assert Network(signs(greased, faults)).chance("brg.worn") < 0.1


def test_a_measurement_raises_the_trouble_that_nobody_put_in_words(faults: FaultBook) -> None:
    told = Told(FOUR)
    for n, psi in enumerate((95, 92, 40, 94), 1):
        told.read("compression", psi, "psi", f"cylinder {n}")
    assert [s.of for s in standing_signs(signs(told, faults))] == ["low_compression"]
    assert standing_signs(signs(told.read("compression", 93, "psi", "cylinder 3"), faults)) == []


@pytest.mark.parametrize(("words", "first"), [("now it shakes, never did it before", True), ("it shakes", False)])
def test_what_was_worked_on_just_before_heads_the_suspects(words: str, first: bool, faults: FaultBook) -> None:
    told = Told(MOWER).did("repair", "mower blade").did("fit", "mower blade").found("engine", words, state="shakes")
    assert ("hab.unbalance" in signs(told, faults).disturbed) is first
