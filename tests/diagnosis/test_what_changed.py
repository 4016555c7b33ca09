"""What changed between good and bad: work in between is gone over first, asked about where nobody told, and what is
told gone troubles no more. A noise that nobody has placed is placed before anything comes off.
"""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.diagnosis.test_how import advised
from tests.diagnosis.workshop import Log
from worklog_tui.diagnosis import advise
from worklog_tui.diagnosis.log import Log as Read
from worklog_tui.diagnosis.signs import Signs
from worklog_tui.model import Machine
from worklog_tui.rulebook.faults import FaultBook

VAN = Machine("Stall van", "four-cylinder petrol van", "petrol", "battery", 4)
DRYER = Machine("Hop dryer", "hop dryer, belt-driven fan, three-phase motor", "none", "none")


@pytest.mark.parametrize(
    ("well", "work", "ill", "part"),
    [
        ("She ran sweet.", "Took the distributor cap off and put it back.", "Now it won't start.", "distributor cap"),
        ("It ran fine yesterday.", "Had the float bowl off and back on.", "Now it will not start.", "float bowl"),
        ("She started first pull.", "Unplugged the coil lead and plugged it in.", "It won't fire now.", "coil lead"),
    ],
)  # fmt: skip
def test_the_work_between_good_and_bad_is_gone_over_first(
    well: str, work: str, ill: str, part: str, tmp_path: Path
) -> None:
    first = advised(VAN, f"{well}\n{work}\n{ill}", tmp_path).steps[0]
    assert first.step.startswith("go over the work on the ")
    assert part in first.step
    assert "It was well before the work" in first.why


def test_it_is_no_longer_first_once_it_was_looked_at_again(faults: FaultBook) -> None:
    log = Log().found("engine", "runs well", "good", state="runs well").did("remove", "points cover")
    log.found("engine", "will not start", state="will not start")
    before = advise(log.history(), (), faults, None).steps[0].step
    assert before.startswith("go over the work on the points cover")
    log.found("points cover", "seated", "good")
    assert advise(log.history(), (), faults, None).steps[0].step != before


def test_it_is_asked_whether_it_was_well_before_the_work_where_nobody_said(tmp_path: Path) -> None:
    work = "Took the distributor cap off and put it back.\nIt won't start."
    told = advised(VAN, f"It came in on the trailer.\n{work}", tmp_path)
    assert len(told.asks) == 1
    assert told.asks[0].startswith("Was it well until the work on the distributor cap")
    answered = advised(VAN, f"It ran sweet.\n{work}", tmp_path)
    assert answered.asks == ()
    assert answered.steps[0].step in told.asks[0]  # the answer does change what comes first
    assert answered.steps[0].step != told.steps[0].step


def test_it_is_not_asked_where_nothing_was_done_before(tmp_path: Path) -> None:
    assert advised(VAN, "It came in on the trailer.\nIt won't start.", tmp_path).asks == ()


@pytest.mark.parametrize(
    ("told", "gone"),
    [
        ("It misfires.", "The misfire has gone."), ("There's a squeal from the fan belt.", "No squeal now."),
        ("It's hunting up and down.", "The hunting's gone."), ("It misfires.", "No more misfire."),
        ("A bearing is screeching and rumbling.", "Gave it grease and it went quiet."),
    ],
)  # fmt: skip
def test_a_trouble_told_gone_by_its_name_troubles_no_more(told: str, gone: str, tmp_path: Path) -> None:
    assert advised(VAN, f"{told}\nTightened it.", tmp_path).complaint
    assert not advised(VAN, f"{told}\nTightened it.\n{gone}", tmp_path).complaint


@pytest.mark.parametrize("later", ["Two miles on the misfire is back.", "It misfires again."])
def test_it_does_once_it_is_back(later: str, tmp_path: Path) -> None:
    assert advised(VAN, f"It misfires.\nThe misfire has gone.\n{later}", tmp_path).complaint == "it misfires"


@pytest.mark.parametrize("hoped", ["I hope the misfire has gone.", "Is the misfire gone?", "No leak at the tap."])
def test_what_is_hoped_or_asked_or_told_of_a_place_cures_nothing(hoped: str, tmp_path: Path) -> None:
    assert advised(VAN, f"It misfires.\n{hoped}", tmp_path).complaint == "it misfires"


@pytest.mark.parametrize(
    "noise",
    ["There's a strange chirping noise at the front of the engine.", "The engine howls like a dog when it's warm."],
)
def test_a_noise_that_nobody_has_placed_is_placed_first(noise: str, tmp_path: Path) -> None:
    told = advised(VAN, noise, tmp_path)
    assert told.complaint == "there is a noise, and nobody has placed it yet"
    assert "with speed or with load" in told.steps[0].step
    assert any("sleeves" in c for c in told.steps[0].cautions)
    assert all(s.minutes is not None and s.minutes < 10 for s in told.steps[:3])


def test_what_a_thing_does_not_do_is_no_job(tmp_path: Path) -> None:
    told = advised(DRYER, "The fan won't run up.\nTurned the fan by hand and the fan is stiff.", tmp_path)
    assert not [s.step for s in told.steps[:3] if "won't run" in s.step]


@pytest.mark.parametrize(("figure_last", "shows"), [(True, "low"), (False, "ok")])
def test_a_figure_replaces_an_older_word_and_no_later_one(figure_last: bool, shows: str, faults: FaultBook) -> None:
    log = Log()
    if not figure_last:
        log.read("compression", 40, "psi", "cylinder 1").read("compression", 100, "psi", "cylinder 2")
    log.found("compression", "good", "good")
    if figure_last:
        log.read("compression", 40, "psi", "cylinder 1").read("compression", 100, "psi", "cylinder 2")
    assert Signs(Read(log.history()), faults).check_signs["comp.gauge"].shows == shows


def test_the_own_suspicion_of_the_person_goes_before_it(faults: FaultBook) -> None:
    log = Log().found("engine", "runs well", "good", state="runs well").did("remove", "points cover")
    log.found("engine", "will not start", state="will not start").suspected("condenser")
    assert advise(log.history(), (), faults, None).steps[0].step == "check the condenser"
