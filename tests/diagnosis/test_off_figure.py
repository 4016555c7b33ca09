"""A figure that stands outside what it should be: what is set by hand is set, the rest is looked into."""

from __future__ import annotations

from functools import lru_cache
from pathlib import Path

import pytest

from worklog_tui import places
from worklog_tui.bench.extract_files import extract
from worklog_tui.model import Machine, Step
from worklog_tui.rulebook import Rulebook, load
from worklog_tui.rulebook.faults import FaultBook

MOWER = Machine("Verge mower", "rotary mower, single-cylinder petrol", "petrol", "magneto", 1)
DRILL = Machine("Bench drill", "pillar drill, single-phase motor", "none", "none", 0)
BIKE = Machine("Field bike", "motorcycle", "petrol", "battery", 1)


@lru_cache(maxsize=1)
def book() -> Rulebook:
    return load([places.grammars()], places.cache())


def steps(folder: Path, faults: FaultBook, machine: Machine, *lines: str) -> list[Step]:
    """The steps after a session of these lines, ten seconds apart."""
    path = folder / "session.txt"
    path.write_text("".join(f"[{n // 6}:{n % 6 * 10:02d}] {line}\n" for n, line in enumerate(lines)))
    return list(extract(book(), faults, machine, [path]).advice.steps)


@pytest.mark.parametrize(
    ("machine", "lines", "step"),
    [
        (MOWER, ["the plug gap is forty thou, it should be thirty"], "set the plug gap to 0.03 in"),
        (MOWER, ["idle speed is two thousand rpm and it should be sixteen hundred"], "set the idle speed to 1600 rpm"),
        (MOWER, ["mixture screw is three turns out", "should be one and a half"], "set the mixture screw to 1.5 turns"),
        (DRILL, ["belt deflection is twenty mil, should be eight"], "take up the belt to 8 mm of give at mid-span"),
        (DRILL, ["belt deflection is three mil, should be eight"], "slacken the belt to 8 mm of give at mid-span"),
        (BIKE, ["front tyre is at fifteen psi", "it should be twenty six"], "inflate the front tyre to 26 psi"),
        (BIKE, ["brake pedal free play is six mil, should be fifteen"], "set the brake pedal free play to 15 mm"),
    ],
)  # fmt: skip
def test_what_a_hand_sets_is_set_to_its_figure(
    tmp_path: Path, faults: FaultBook, machine: Machine, lines: list[str], step: str
) -> None:
    assert steps(tmp_path, faults, machine, *lines)[0].step == step


def test_the_step_tells_what_was_found_and_when_it_is_right(tmp_path: Path, faults: FaultBook) -> None:
    first = steps(tmp_path, faults, MOWER, "the plug gap is forty thou, it should be thirty")[0]
    assert first.why == "It was found at 0.04 in at 0:00, and 0.03 in is wanted."
    assert first.outcomes == ("Put right when it measures 0.03 in.",)


def test_a_tyre_is_inflated_with_its_cautions(tmp_path: Path, faults: FaultBook) -> None:
    first = steps(tmp_path, faults, BIKE, "front tyre is at fifteen psi", "it should be twenty six")[0]
    assert any("Inflate in a cage or standing clear" in c for c in first.cautions)


def test_what_is_worn_below_its_limit_is_replaced(tmp_path: Path, faults: FaultBook) -> None:
    lines = ["the rear brake disc is three point four millimetres thick", "the minimum is four millimetres"]
    first = steps(tmp_path, faults, BIKE, *lines)[0]
    assert first.step == "replace the rear brake disc: 3.4 mm is left, and 4 mm is the limit"


def test_what_no_screw_alters_is_looked_into(tmp_path: Path, faults: FaultBook) -> None:
    lines = ["motor current is five amps, it should be two point eight"]
    assert steps(tmp_path, faults, DRILL, *lines)[0].step == "find why the motor current is 5 A where 2.8 A is wanted"


@pytest.mark.parametrize(
    ("machine", "lines"),
    [
        (MOWER, ["the plug gap is forty thou, it should be thirty", "brought it down to thirty thou"]),
        (MOWER, ["the plug gap is forty thou, it should be thirty", "fitted a new plug"]),
        (MOWER, ["the plug gap is thirty thou, it should be thirty"]),
        (MOWER, ["the plug gap is forty thou, should be thirty", "I don't trust that reading though"]),
        (DRILL, ["the belt gives twenty mil, should give eight", "so the belt is tensioned up now"]),
        (MOWER, ["his plug gap was forty thou", "ours should be thirty thou"]),
        (DRILL, ["the belt is seventeen mil wide", "deflection should be ten mil"]),
    ],
)  # fmt: skip
def test_nothing_is_asked_for_where_nothing_stands_out(
    tmp_path: Path, faults: FaultBook, machine: Machine, lines: list[str]
) -> None:
    """Set since, renewed, in order, not trusted, of another machine, or of another measure of the part."""
    said = [s.step for s in steps(tmp_path, faults, machine, *lines)]
    assert not any("plug gap" in s or "belt" in s for s in said)


def test_a_cold_figure_is_not_held_against_a_hot_one(tmp_path: Path, faults: FaultBook) -> None:
    lines = ["valve clearance is eight thou hot", "the book says twelve thou cold"]
    assert not any("clearance" in s.step for s in steps(tmp_path, faults, MOWER, *lines))


def test_a_figure_at_idle_is_not_held_against_one_at_full_throttle(tmp_path: Path, faults: FaultBook) -> None:
    lines = ["oil pressure is two bar hot at idle", "should be four bar flat out"]
    assert not any("oil pressure" in s.step for s in steps(tmp_path, faults, BIKE, *lines))


def test_a_belt_that_was_told_slack_is_taken_up_once(tmp_path: Path, faults: FaultBook) -> None:
    """The figure says by how much: what the person found in words is the same job."""
    lines = ["the drive chain's got forty mil of slack in it", "it should be twenty the book says"]
    said = [s.step for s in steps(tmp_path, faults, BIKE, *lines)]
    assert said[0] == "take up the drive chain to 20 mm of give at mid-span"
    assert sum("chain" in s for s in said) == 1


def test_what_is_looked_into_already_is_not_asked_for(tmp_path: Path, faults: FaultBook) -> None:
    lines = ["motor current is five amps, it should be two point eight", "took the end cover off the motor"]
    assert not any("current" in s.step for s in steps(tmp_path, faults, DRILL, *lines))


def test_what_the_person_plans_himself_comes_first(tmp_path: Path, faults: FaultBook) -> None:
    lines = ["belt deflection is twenty mil, should be eight", "tomorrow I'll fit the new spindle bearing first"]
    said = [s.step for s in steps(tmp_path, faults, DRILL, *lines)]
    assert "spindle bearing" in said[0]
    assert said[1].startswith("take up the belt")


def test_a_figure_many_times_off_is_not_believed(tmp_path: Path, faults: FaultBook) -> None:
    """Nine hundred amps through a drill was heard wrong."""
    lines = ["motor current is nine hundred amps, it should be two point eight"]
    assert not any("current" in s.step for s in steps(tmp_path, faults, DRILL, *lines))
