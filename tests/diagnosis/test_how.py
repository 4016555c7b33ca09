"""Own suspicions and parts seen bad get a check: how it is done, what each outcome means, and what follows."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.diagnosis.workshop import Log
from worklog_tui import places
from worklog_tui.bench.extract_files import extract
from worklog_tui.diagnosis import advise
from worklog_tui.diagnosis.how import how_to
from worklog_tui.diagnosis.kinds import Kinds
from worklog_tui.diagnosis.log import Log as Read
from worklog_tui.diagnosis.signs import Signs
from worklog_tui.model import Advice, Machine, Step
from worklog_tui.rulebook import load
from worklog_tui.rulebook.faults import FaultBook, load_faults

MANGLE = Machine("Laundry mangle", "hand turned mangle with wooden rollers", "none", "none")
MIXER = Machine("Dough mixer", "dough mixer, single-phase electric motor, belt drive", "none", "none")
HOIST = Machine("Slipway hoist", "twelve volt electric capstan", "none", "none")


def advised(machine: Machine, notes: str, folder: Path) -> Advice:
    """The advice for a log that is read from the words on."""
    path = folder / "session.txt"
    lines = [line.strip() for line in notes.strip().splitlines()]
    path.write_text("".join(f"[{n // 4}:{n % 4 * 15:02d}] {line}\n" for n, line in enumerate(lines)))
    book = load([places.grammars()], places.cache())
    return extract(book, load_faults([places.grammars()]), machine, [path]).advice


@pytest.mark.parametrize(
    ("thing", "kind"),
    [
        ("start capacitor", "capacitor"), ("left return spring", "spring"), ("contacts in the lamp holder", "contact"),
        ("drive belt", "belt"), ("main bearing", "bearing"), ("lid seal", "seal"), ("foot switch", "switch"),
        ("pull cord", "cord"), ("brake pad", "brake"), ("ball valve", "valve"), ("take-up pulley", "roller"),
        ("worm wheel", "gear"), ("cam follower", "cam"), ("weather", ""), ("", ""),
    ],
)  # fmt: skip
def test_a_part_is_of_the_kind_that_its_name_ends_with(thing: str, kind: str, faults: FaultBook) -> None:
    found = Kinds(faults.kinds.values()).of(thing)
    assert (found.id if found else "") == kind


def first_of(machine: Machine, cause: str, faults: FaultBook) -> Step:
    log = Log(machine).found("machine", "does not run", name="machine", state="does not run").suspected(cause)
    return advise(log.history(), log.items(), faults, None).steps[0]


def test_a_suspected_capacitor_is_discharged_before_it_is_measured(faults: FaultBook) -> None:
    step = first_of(MIXER, "run capacitor", faults)
    assert step.step == "check the run capacitor"
    assert step.how.index("discharge") < step.how.index("measure")
    assert [o.split(":")[0] for o in step.outcomes] == ["bad", "good"]
    assert "same value" in step.outcomes[0]  # one of the same value; then what comes next
    assert any("keep their charge" in c for c in step.cautions)


def test_a_suspected_spring_is_unloaded_first(faults: FaultBook) -> None:
    step = first_of(MANGLE, "tension spring", faults)
    assert step.how.startswith("let its load off first")
    assert any("springs hold energy" in c for c in step.cautions)


def test_what_is_no_part_gets_no_made_up_check(faults: FaultBook) -> None:
    log = Log(MANGLE).found("machine", "does not run", name="machine", state="does not run").suspected("the weather")
    steps = advise(log.history(), log.items(), faults, None).steps
    assert not any("weather" in s.step for s in steps)


def test_what_was_only_supposed_is_no_finding(tmp_path: Path) -> None:
    """`I reckon the brushes are stuck` is no look at the brushes: they are checked, not renewed."""
    notes = """
        press the switch and nothing, the solenoid clicks
        I reckon the brushes are stuck
    """
    steps = advised(HOIST, notes, tmp_path).steps
    assert steps[0].step == "check the brushes"
    assert not any(s.step.startswith(("fit", "free", "put")) for s in steps[:1])


def test_the_bare_words_of_a_bad_part_are_enough(tmp_path: Path) -> None:
    """Worn through is worse than slack: the worst comes first; what is fine, new or only thought of is left alone."""
    notes = """
        laundry mangle from the farm, it squeezes on one side only
        the handle return spring is snapped
        the left cog is fine
        if the strap were frayed I would see it
        new felt on the shelf, it is green
    """
    steps = [s.step for s in advised(MANGLE, notes, tmp_path).steps]
    assert "spring" in steps[0]
    assert not any(w in " ".join(steps) for w in ("cog", "strap", "felt"))


def test_a_suspicion_in_bare_words_is_checked(tmp_path: Path) -> None:
    notes = """
        the mangle rollers slip on wet sheets
        could be the little eccentric under the crossbar
    """
    steps = advised(MANGLE, notes, tmp_path).steps
    assert steps[0].step == "check the little eccentric under the crossbar"
    assert "one whole cycle" in steps[0].how


def test_a_machine_turned_by_hand_has_no_motor(tmp_path: Path) -> None:
    told = advised(MANGLE, "it hums and will not turn", tmp_path)
    said = " ".join(s.step for s in told.steps)
    assert said
    assert not any(w in said for w in ("supply", "volts", "capacitor", "winding"))


def test_twelve_volts_need_nobody_with_a_licence(tmp_path: Path) -> None:
    """Battery, cables under load, solenoid, brushes; no phases, no start capacitor."""
    told = advised(HOIST, "press the button, only a click and the motor does nothing", tmp_path)
    said = " ".join(s.step for s in told.steps)
    assert "battery" in said
    assert not any(w in said for w in ("phase", "capacitor", "someone who may"))


def test_a_level_is_never_renewed(tmp_path: Path) -> None:
    told = advised(MIXER, "the gearbox oil level is low\nthe gearbox oil level keeps sinking", tmp_path)
    assert not any("replace the" in s.step and "level" in s.step for s in told.steps)


def test_what_is_slight_is_not_the_trouble(faults: FaultBook) -> None:
    log = Log(MIXER).found("motor", "hums", state="hums").found("belt", "slips a bit", state="slips")
    assert advise(log.history(), log.items(), faults, None).complaint.startswith("the motor hums")
    log = Log(MIXER).found("motor", "hums", state="hums").found("belt", "slips", state="slips")
    assert advise(log.history(), log.items(), faults, None).complaint == "a belt slips or squeals"


def test_what_is_measured_is_never_renewed_by_its_looks(tmp_path: Path) -> None:
    told = advised(MIXER, "the motor runs hot\nthe speed rectifier is cracked", tmp_path)
    assert "check the rectifier" in [s.step for s in told.steps]
    assert not any("new one" in s.step for s in told.steps)


def test_a_fresh_suspicion_stands_before_the_causes_of_another_trouble(faults: FaultBook) -> None:
    """The fault files know causes of the slipping belt; by now the person looks after something else."""
    log = Log(MIXER).found("belt", "slips", state="slips").chat(2).suspected("bowl lift rack")
    causes = advise(log.history(), log.items(), faults, None).causes
    assert causes[0].name == "bowl lift rack"
    assert causes[0].grade == "possible"
    assert causes[1].id


def test_a_suspicion_that_was_ruled_out_or_worked_on_is_no_cause(faults: FaultBook) -> None:
    for settle in ("good", "work"):
        log = Log(MIXER).found("belt", "slips", state="slips").suspected("bowl lift rack")
        log = log.found("bowl lift rack", "fine", "good") if settle == "good" else log.did("clean", "bowl lift rack")
        assert "bowl lift rack" not in [c.name for c in advise(log.history(), log.items(), faults, None).causes]


def test_a_part_found_bad_is_itself_a_possible_cause(faults: FaultBook) -> None:
    log = Log(MIXER).found("dough hook", "bent", state="bent")
    causes = advise(log.history(), log.items(), faults, None).causes
    assert [c.name for c in causes] == ["dough hook: bent"]
    assert causes[0].grade == "unlikely"


def test_first_this_and_if_that_does_not_help_then_that(tmp_path: Path) -> None:
    """A plan told with both its branches keeps its order, before what the fault files would do."""
    van = Machine("Fish van", "four-cylinder petrol van", "petrol", "battery", 4)
    notes = "it misfires under load\nfirst I'll change the plugs, if that doesn't help I'll swap the coil"
    told = advised(van, notes, tmp_path)
    assert told.plan == ("change the plugs", "if that does not help: swap the coil")
    assert told.steps[0].step == "change the plugs"


def test_the_machine_itself_is_no_cause_of_its_trouble(faults: FaultBook) -> None:
    log = Log(Machine("Van", "petrol van", "petrol", "battery", 4)).found("engine", "yodels", state="yodels")
    assert advise(log.history(), log.items(), faults, None).causes == ()


def test_an_exhaust_gasket_is_not_looked_at_for_oil(faults: FaultBook) -> None:
    signs = Signs(Read(Log().found("exhaust gasket", "blowing", state="blowing").history()), faults)
    assert "oil" in str(how_to("cover gasket", signs)), "whose fault file looks where the oil comes from"
    assert "oil" not in str(how_to("exhaust gasket", signs))
    assert "chalk" in str(how_to("exhaust gasket", signs))
