"""What a person announces, forbids or leaves untried at the end of a day, and what comes of it the next time."""

from __future__ import annotations

import pytest

from tests.diagnosis.workshop import PUMP, Log
from worklog_tui.diagnosis import advise
from worklog_tui.diagnosis.job_words import JobWords, object_of, with_thing
from worklog_tui.diagnosis.put_right import put_right
from worklog_tui.diagnosis.sound import is_sound
from worklog_tui.model import Machine
from worklog_tui.rulebook.faults import FaultBook

LOOM = Machine("Ribbon loom", "hand-built ribbon loom, electric motor, belt driven", "none", "none")


def steps(faults: FaultBook, log: Log) -> list[str]:
    return [s.step for s in advise(log.history(), log.items(), faults, None).steps]


def noted(log: Log, *notes: str) -> Log:
    for words in notes:
        log.note(words)
    return log


@pytest.mark.parametrize(
    ("notes", "first"),
    [
        (["The regulator hisses.", "Tomorrow I'll clean that regulator and see what it pulls."],
         "clean that regulator and see what it pulls"),
        (["Either the lowering valve or the cylinder.",
          "To tell them apart I shut the ball valve under the cylinder and wait a night."],
         "shut the ball valve under the cylinder and wait a night"),
        (["The shuttle binds in the left box.", "So what I want to do is swap the two shuttles over."],
         "swap the two shuttles over"),
        (["It stops between four and five.", "So it's to run the night through before I call it cured."],
         "run the night through"),
        (["The size is sticky.", "Drain the size box tonight, that's what I'll do."], "drain the size box"),
        (["The feeler wire bends.", "I'll straighten the feeler wire first, that's two minutes.", "The reed is fine."],
         "straighten the feeler wire"),
        (["Either the dobby or the shed.", "To tell which, take the dobby cover off and watch the hooks."],
         "take the dobby cover off, watch the hooks"),
        (["Next week we'll bring the long leader and thread the leader.", "The leader is new."],
         "bring the long leader and thread the leader"),
    ],
)  # fmt: skip
def test_the_job_that_was_announced_comes_next_in_its_own_words(
    faults: FaultBook, notes: list[str], first: str
) -> None:
    assert steps(faults, noted(Log(LOOM), *notes))[0] == first


@pytest.mark.parametrize(
    "words",
    [
        "I'll away and feed the hens.",
        "I'll not touch the belt today.",
        "If the belt slips again I'll change the belt.",
        "Some day I'll paint the frame.",
        "Shall I'll clean the belt tomorrow?",
        "Tomorrow I'll have a lie in.",
    ],
)
def test_talk_put_offs_and_ways_out_are_no_next_job(faults: FaultBook, words: str) -> None:
    log = noted(Log(LOOM), "The belt is new.", "The frame is straight.", words)
    assert not [s for s in steps(faults, log) if "hens" in s or "belt" in s or "paint" in s or "lie" in s]


def test_an_announced_job_that_was_done_since_is_not_named_again(faults: FaultBook) -> None:
    log = noted(Log(LOOM), "The shuttle is rough.", "Next I'll polish the shuttle.", "A cup of tea.")
    assert "polish the shuttle" in steps(faults, log)
    assert "polish the shuttle" not in steps(faults, log.did("polish", "shuttle"))


def test_what_something_is_forbidden_for_comes_before_everything(faults: FaultBook) -> None:
    log = Log(PUMP).found("belt guard", "cracked", state="cracked")
    log.later("cup washer", "part needed", "cup washer is wanted")
    noted(log, "Nobody runs it till the coupling is back on.")
    advice = advise(log.history(), log.items(), faults, None)
    assert "coupling" in advice.steps[0].step
    assert "not to be used before this is done" in advice.steps[0].why


@pytest.mark.parametrize(
    "words",
    [
        "It won't be running till Thursday.",
        "Nobody has used it since the works closed.",
        "I'll not cut it before lunch.",
    ],
)
def test_a_time_or_the_past_is_no_ban(faults: FaultBook, words: str) -> None:
    log = noted(Log(PUMP).found("cup washer", "worn", state="worn"), words)
    assert "not to be used" not in " ".join(s.why for s in advise(log.history(), log.items(), faults, None).steps)


@pytest.mark.parametrize(
    ("part", "condition", "step"),
    [
        ("strainer", "packed with leaves", "clean the strainer"),
        ("idler arm", "seized", "free the idler arm and oil it"),
        ("gland nut", "slack", "tighten the gland nut"),
        ("planing knife", "dull", "sharpen or change the planing knife"),
        ("casting", "cracked", "put the casting right (cracked)"),
    ],
)
def test_a_fault_is_put_right_by_what_is_wrong(faults: FaultBook, part: str, condition: str, step: str) -> None:
    assert put_right(part, condition, False, faults.words["cures"]) == step


def test_what_wears_out_and_leaks_is_renewed(faults: FaultBook) -> None:
    assert put_right("top hose", "leaking", True, faults.words["cures"]) == "replace the top hose with a new one"


@pytest.mark.parametrize(
    "step", ["clean the fuel tank", "try it again", "run it overnight", "fit the new lining (worn)"]
)
def test_a_job_reads_as_a_job(step: str) -> None:
    assert is_sound(step)


@pytest.mark.parametrize(
    "step",
    ["see to the see", "send that away", "fit a new card until it", "see to the those on the bench", "put new in"],
)
def test_what_was_cut_badly_out_of_talk_is_held_back(step: str) -> None:
    assert not is_sound(step)


def test_jobs_are_cut_where_the_next_thought_begins(faults: FaultBook) -> None:
    cut = JobWords(faults.words)
    assert list(cut.jobs("clean the trap and fit the lid seal, but not before lunch", any_verb=True)) == [
        "clean the trap", "fit the lid seal",
    ]  # fmt: skip
    assert list(cut.jobs("ring the changes", any_verb=False)) == ["ring the changes"]
    assert list(cut.jobs("with the valve shut", any_verb=True)) == []


def test_a_job_on_it_is_named(faults: FaultBook) -> None:
    assert object_of("clean it") == ()
    assert with_thing("clean it tomorrow", "regulator") == "clean the regulator tomorrow"


def test_a_machine_of_a_trade_unknown_gets_the_sensible_first_look(faults: FaultBook) -> None:
    log = noted(Log(Machine("Slate trimmer", "foot and motor slate trimmer, electric motor", "none", "none")),
                "It hums and then it trips.", "The disc does not turn.")  # fmt: skip
    advice = advise(log.history(), log.items(), faults, None)
    assert advice.complaint
    assert any(w in advice.steps[0].step for w in ("by hand", "supply", "start capacitor"))


def test_cold_that_reaches_half_the_plate_is_left_to_the_licensed_fitter(faults: FaultBook) -> None:
    log = noted(Log(Machine("Creamery chiller", "milk tank with refrigeration, single-phase", "none", "none")),
                "The milk is not cold enough, it does not get down.", "Condenser is clean, I brushed it.",
                "Both fans turning, door seal good.", "Only the left third of the plate freezes.")  # fmt: skip
    steps_said = advise(log.history(), log.items(), faults, None).steps
    assert any("licensed" in s.step for s in steps_said)
    assert not any("recharge" in s.step or "top up" in s.step for s in steps_said)


def test_a_complaint_of_its_own_trade_comes_before_the_general_one(faults: FaultBook) -> None:
    clock = Log(Machine("Hall clock", "thirty-hour wall clock, weight driven", "none", "none"))
    advice = advise(noted(clock, "It stops by itself every night.").history(), [], faults, None)
    assert advice.complaint == "the clock stops or keeps bad time"


@pytest.mark.parametrize("words", ["It won't start without the choke.", "It doesn't cut until it is warm."])
def test_what_a_machine_will_not_do_is_a_complaint_and_no_ban(faults: FaultBook, words: str) -> None:
    log = noted(Log(PUMP).found("choke", "stiff", state="stiff"), words)
    assert "not to be used" not in " ".join(s.why for s in advise(log.history(), log.items(), faults, None).steps)


def test_what_was_told_twice_comes_before_what_was_told_once(faults: FaultBook) -> None:
    log = Log(LOOM).later("batten", "part needed", "a batten").later("shuttle", "part needed", "a new shuttle")
    noted(log, "The shuttle is worn.")
    assert "shuttle" in steps(faults, log)[0]


def test_a_battery_truck_that_crawls_is_looked_at_from_the_straps_on(faults: FaultBook) -> None:
    log = noted(Log(Machine("Baker's truck", "battery electric bread truck, milk float chassis", "none", "none")),
                "It goes for a mile and then it crawls.", "Terminals are clean and tight.")  # fmt: skip
    advice = advise(log.history(), log.items(), faults, None)
    assert advice.complaint == "it is slow, weak or does not go far on its charge"
    assert any("cell" in s.step for s in advice.steps[:2])
