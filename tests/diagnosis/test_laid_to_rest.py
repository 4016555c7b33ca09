"""What the talk lays to rest is no next step: a suspicion that proved right and was cured, a fault one lives with."""

from __future__ import annotations

import pytest

from tests.diagnosis.workshop import PUMP, Log
from worklog_tui.diagnosis import advise
from worklog_tui.diagnosis.laid_to_rest import is_lived_with
from worklog_tui.diagnosis.log import Log as Read
from worklog_tui.diagnosis.whole import is_the_machine
from worklog_tui.model import Machine
from worklog_tui.rulebook.faults import FaultBook


def steps(faults: FaultBook, log: Log) -> list[str]:
    return [s.step for s in advise(log.history(), log.items(), faults, None).steps]


def noted(log: Log, *notes: str) -> Log:
    for words in notes:
        log.note(words)
    return log


def suspected_lever(*notes: str) -> Log:
    return noted(Log().found("lever", "rattles", state="rattles").suspected("link pin"), *notes)


def test_a_suspicion_stands_until_something_is_said_of_it(faults: FaultBook) -> None:
    assert "check the link pin" in steps(faults, suspected_lever("The kettle is on."))


@pytest.mark.parametrize(
    "words",
    ["Turned a new one and the rattle has gone.", "Bushed it. Told you.", "New one in. No rattle now.", "Fixed."],
)
def test_a_suspicion_whose_trouble_is_told_gone_is_laid_to_rest(faults: FaultBook, words: str) -> None:
    assert "check the link pin" not in steps(faults, suspected_lever("Had the thing apart.", words))


def test_what_is_there_still_is_not_laid_to_rest(faults: FaultBook) -> None:
    log = suspected_lever("The rattle is gone.", "No, it is still there when it warms up.")
    assert "check the link pin" in steps(faults, log)


def test_another_trouble_that_is_gone_lays_nothing_to_rest(faults: FaultBook) -> None:
    assert "check the link pin" in steps(faults, suspected_lever("Had the thing apart.", "The leak has gone."))


def test_a_pin_that_is_gone_is_no_trouble_that_is_gone(faults: FaultBook) -> None:
    assert "check the link pin" in steps(faults, suspected_lever("The split pin has gone."))


@pytest.mark.parametrize(
    ("words", "lived_with"),
    [
        ("a bit of a knock, I'm not losing sleep over it", True),
        ("the lid is crumbly but that's cosmetic", True),
        ("the dog is worn, but I'll let it be", True),
        ("the lid is crumbly and I'll leave it off till Friday", False),
        ("the knock is worse", False),
        ("there's a crack in the spring", False),
    ],
)
def test_what_one_will_live_with_is_no_job(faults: FaultBook, words: str, lived_with: bool) -> None:
    log = Log()
    span = log.note(words)
    assert is_lived_with(Read(log.history()), span, faults.words) is lived_with


def test_a_ban_in_other_words_comes_first(faults: FaultBook) -> None:
    log = Log().found("exhaust duct", "furred up", state="furred up", name="duct")
    log.later("belt", "part needed", "wants a belt")
    assert "duct" in steps(faults, noted(log, "Told them to keep it off till the duct is clean."))[0]


def test_a_spring_that_is_waited_for_is_a_part_and_no_season(faults: FaultBook) -> None:
    log = noted(Log().found("latch spring", "snapped", state="snapped"), "Keep it off till the latch spring is in.")
    assert "spring" in steps(faults, log)[0]


def test_a_ban_that_points_at_what_is_lacking(faults: FaultBook) -> None:
    log = noted(Log(), "There's no pulley cage on it yet. Nobody comes near it till there is one.")
    assert "pulley cage" in steps(faults, log)[0]


def test_the_machine_itself_is_no_part_to_put_right() -> None:
    ironer = Machine("Laundry ironer", "gas-heated flatwork ironer, roller, electric motor")
    assert is_the_machine(ironer, "ironer")
    assert is_the_machine(ironer, "the flatwork ironer")
    assert not is_the_machine(ironer, "roller")
    assert not is_the_machine(PUMP, "belt")
