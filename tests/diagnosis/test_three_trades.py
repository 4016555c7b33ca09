"""Three invented machines of trades that no table of ours is about: right, calm, the simplest first, no danger."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.diagnosis.test_how import advised
from worklog_tui.model import Machine

PUG = Machine("Kelling pug mill", "de-airing clay pug mill, single-phase motor, worm gearbox", "none", "none")
GUN = Machine("Hollin snow gun", "fan snow gun, three-phase fan motor, ring of water nozzles", "none", "none")
GRADER = Machine("Fenny grader", "egg grader, three lanes, single-phase motor, chain drive", "none", "none")


@pytest.mark.parametrize(
    "said",
    [
        "There's a tingle when you touch the casing, only when it's wet.", "I got a shock off the frame.",
        "It gave me an electric shock.", "The casing is live.",
    ],
)  # fmt: skip
def test_metalwork_that_tingles_comes_before_everything(said: str, tmp_path: Path) -> None:
    notes = f"Fan runs, but it shakes.\nHeater is dead.\n{said}\nSwing motor only turns left."
    first = advised(GUN, notes, tmp_path).steps[0]
    assert first.step.startswith("leave it unplugged or locked off")
    assert "licensed" in first.step
    assert any("prove dead" in c for c in first.cautions)


@pytest.mark.parametrize("mended", ["Earth wire was off, bolted it back, tested good.", "The tingle's gone."])
def test_it_does_so_until_it_is_tested(mended: str, tmp_path: Path) -> None:
    steps = advised(GUN, f"There's a tingle off the casing.\n{mended}", tmp_path).steps
    assert all("unplugged" not in s.step for s in steps)


def test_a_foot_that_tingles_is_no_danger(tmp_path: Path) -> None:
    steps = advised(GUN, "My foot tingles from kneeling.\nThe fan shakes.", tmp_path).steps
    assert all("unplugged" not in s.step for s in steps)


def test_a_fan_is_looked_at_as_a_fan_and_no_pump(tmp_path: Path) -> None:
    how = next(s.how for s in advised(GUN, "I think the fan is bent.", tmp_path).steps if "fan" in s.step)
    assert "blades" in how
    assert "outlet" not in how
    assert how.startswith("supply off")


def test_what_is_suspected_and_what_the_files_know_of_it_is_one_step(tmp_path: Path) -> None:
    notes = "It hums and won't start.\nGave it a flick and away it went.\nI reckon it's the start cap."
    first, *others = advised(PUG, notes, tmp_path).steps
    assert first.step == "check the start cap"
    assert first.how.index("discharge") < first.how.index("measure")
    assert all("discharge the start capacitor" not in s.step for s in others)


def test_what_will_be_done_next_time_keeps_its_order(tmp_path: Path) -> None:
    plan = "Next time I'll do the lid seal and put fresh oil in the gearbox."
    steps = advised(PUG, f"The lid seal is hard.\nGearbox oil's grey.\n{plan}", tmp_path).steps
    assert [s.step for s in steps[:2]] == ["do the lid seal", "put fresh oil in the gearbox"]


def test_what_was_cleaned_is_not_to_be_cleaned(tmp_path: Path) -> None:
    notes = "Cleaned the knife edges on lane two, full of dried egg.\nOne chain's slack."
    steps = advised(GRADER, notes, tmp_path).steps
    assert all("edge" not in s.step for s in steps[:3])
    assert "tighten the chain" in [s.step for s in steps]
