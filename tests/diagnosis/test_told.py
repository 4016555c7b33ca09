"""What the bare words of a note say of the machine, and what they do not."""

from __future__ import annotations

from collections.abc import Sequence

import pytest

from tests.diagnosis.workshop import PUMP, Log
from worklog_tui.diagnosis import advise
from worklog_tui.diagnosis.log import Log as Read
from worklog_tui.diagnosis.told import heard_in, sentences
from worklog_tui.model import Advice, Machine, OpenItem
from worklog_tui.rulebook.faults import FaultBook

SAW = Machine("Bench saw", "circular saw bench, petrol engine", "petrol", "magneto", 1)
DRILL = Machine("Bench drill", "single-phase pillar drill", "none", "none")


def said(*notes: str, machine: Machine = PUMP) -> Log:
    log = Log(machine)
    for words in notes:
        log.note(words)
    return log


def says(wording: str, *notes: str) -> list[bool]:
    return [so for _, so in heard_in([wording], sentences(Read(said(*notes).history())))]


def advice(faults: FaultBook, log: Log) -> Advice:
    return advise(log.history(), log.items(), faults, None)


@pytest.mark.parametrize(
    ("wording", "notes", "heard"),
    [
        ("belt squeal|slip", ["The belts squealed when it started."], [True]),
        ("belt squeal|slip", ["The belt did not slip."], [False]),
        ("belt squeal|slip", ["The belt no longer squeals."], [False]),
        ("belt squeal|slip", ["Does the belt slip?"], []),
        ("belt squeal|slip", ["If the belt slips I will tighten it."], []),
        ("belt squeal|slip", ["It squeals. The belt is new."], []),
        ("! build pressure|bar", ["It won't build any pressure."], [True]),
        ("! build pressure|bar", ["It builds pressure, no trouble."], []),
        ("load creep -pedal", ["The load creeps down."], [True]),
        ("load creep -pedal", ["The load creeps when I press the pedal."], []),
        ("run_out fuel|diesel", ["It ran out of diesel on the bank."], [True]),
        ("! run|turn motor", ["Don't let anybody run that motor till I'm back."], []),
        ("run hot", ["So please don't run it hot."], []),
        ("! run|turn motor", ["The motors don't run, so don't touch the belt."], [True]),
        ("bubble pipe -filter", ["Bled it at the filter", "and there's air bubbles in the pipe"], [True]),
        ("rope strand|fray", ["Pedal has three inches of nothing", "rope is down to two strands"], [True]),
        ("ram drop|sink", ["Shut the cock at the ram and it dropped nothing."], []),
    ],
)
def test_a_family_of_wordings(wording: str, notes: Sequence[str], heard: list[bool]) -> None:
    assert says(wording, *notes) == heard


def test_what_is_shown_of_a_note_are_its_own_words_and_a_number_is_not_broken() -> None:
    read = Read(said("needles are soaking overnight", "motor draws 1.8 amps, belt is slipping").history())
    ((event, _),) = heard_in(["belt slip"], sentences(read))
    assert event.fact.quote == "motor draws 1.8 amps, belt is slipping"


def test_words_of_two_notes_are_shown_as_two() -> None:
    read = Read(said("there goes that old belt", "slipping on the pulley again").history())
    ((event, _),) = heard_in(["belt slip"], sentences(read), across=True)
    assert event.fact.quote == "there goes that old belt / slipping on the pulley again"


def test_a_complaint_that_breaks_across_two_notes_is_heard_once(faults: FaultBook) -> None:
    log = said("choke off and now it is hunting", "up and down, all the time")
    assert advice(faults, log).complaint == "it hunts up and down"


def test_words_that_point_at_a_fault_bring_its_look_first(faults: FaultBook) -> None:
    log = said("It hums and won't start.", "Spin it by hand and away it goes.", machine=DRILL)
    first = advice(faults, log).steps[0]
    assert "capacitor" in first.step
    assert 'What points to it: "Spin it by hand and away it goes" (1:00)' in first.why


def test_half_choke_that_smooths_it_out_cures_nothing(faults: FaultBook) -> None:
    log = said("It hunts, up and down.").found("engine", "smooth", "good")
    cured = advice(faults, log).complaint
    hinted = advice(faults, said("It hunts, up and down.", "Half choke and it runs smooth.")).complaint
    assert (cured, hinted) == ("", "it hunts up and down")


def test_work_that_did_not_help_is_not_proved_again(faults: FaultBook) -> None:
    log = Log().found("engine", "hunting", state="hunting").did("clean", "main jet")
    assert "try it again" in advice(faults, log).steps[0].step
    log.note("No better at all.")
    steps = [s.step for s in advice(faults, log).steps]
    assert "try it again" not in steps[0]
    assert not any("main jet" in s for s in steps)


def test_a_guard_that_was_taken_off_comes_before_the_next_start(faults: FaultBook) -> None:
    log = Log(SAW).did("remove", "belt guard")
    first = advice(faults, log).steps[0]
    assert first.step == "refit the belt guard"
    assert any("Guards on" in c for c in first.cautions)
    assert "refit the belt guard" not in [s.step for s in advice(faults, log.did("fit", "belt guard")).steps]


def test_oil_that_was_drained_is_filled_before_it_is_started(faults: FaultBook) -> None:
    log = Log().did("drain", "oil", name="engine oil")
    assert advice(faults, log).steps[0].step == "fill it with fresh oil to the mark before it is started"
    log.note("Two litres of fresh oil in the sump.")
    assert advice(faults, log).steps == ()


def test_a_bridged_safety_switch_heads_everything_until_it_is_mended(faults: FaultBook) -> None:
    log = said("Somebody has bridged the seat switch with wire.", machine=SAW)
    assert "safety switch" in advice(faults, log).steps[0].step
    log.note("New seat switch in, and it works.")
    assert advice(faults, log).steps == ()


def test_what_was_repaired_and_not_tried_is_tried(faults: FaultBook) -> None:
    log = Log().read("compression", 50, "psi", "cylinder 1").did("adjust", "valve clearance")
    assert advice(faults, log).steps[0].step == "measure the compression again"
    assert not any("again" in s.step for s in advice(faults, log.found("engine", "runs well", "good")).steps)


@pytest.mark.parametrize(
    ("condition", "state", "advised"), [("popping", "spits back", False), ("stuck", "stuck", True)]
)
def test_a_relief_valve_that_lifts_does_its_work(faults: FaultBook, condition: str, state: str, advised: bool) -> None:
    history = Log().found("relief valve", condition, state=state).history()
    (fact,) = history.facts()
    place = history.place(fact.main.note)
    quote = f"relief valve {condition}"
    item = OpenItem((fact.key,), "relief valve", "relief valve", "fault", "noticed", place, quote=quote)
    assert bool(advise(history, [item], faults, None).steps) is advised
