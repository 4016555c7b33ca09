"""The measures of the fault finding in a short form; `python -m tests.diagnosis.measures` prints them all."""

from __future__ import annotations

from tests.diagnosis.measure_repairs import simulated
from worklog_tui.rulebook.faults import FaultBook

FEW = 6


def test_following_the_advice_beats_a_checklist_and_the_likeliest_first(faults: FaultBook) -> None:
    shares: dict[str, float] = {}
    for complaint in ("no_start", "hunting", "overheats", "misfire"):
        tally = simulated(faults, complaint, FEW)
        for way, minutes in tally.minutes.items():
            shares[way] = shares.get(way, 0.0) + minutes
    print("", *(f"{shares['advice'] / m:.0%} of {way}" for way, m in shares.items()), sep="\n  ")
    assert shares["advice"] <= 0.9 * shares["fixed checklist"]
    assert shares["advice"] <= shares["most likely first"]


def test_the_same_seeds_give_the_same_minutes(faults: FaultBook) -> None:
    assert simulated(faults, "hunting", 2).minutes == simulated(faults, "hunting", 2).minutes


def test_chances_come_true_in_their_order(faults: FaultBook) -> None:
    chances = [c for complaint in ("hunting", "overheats") for c in simulated(faults, complaint, FEW).chances]
    unlikely = [there for _, given, there in chances if given < 0.08]
    possible = [there for _, given, there in chances if given >= 0.15]
    assert sum(unlikely) / len(unlikely) < sum(possible) / len(possible)
