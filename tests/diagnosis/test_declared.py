"""What the person says of a fault that he found decides what comes next: its cause, its hurry, what is at hand."""

from __future__ import annotations

import pytest

from tests.diagnosis.workshop import PUMP, Log
from worklog_tui.diagnosis import advise
from worklog_tui.diagnosis.sayings import Sayings
from worklog_tui.logbook.open_items import open_items
from worklog_tui.model import Advice, Machine
from worklog_tui.rulebook.faults import FaultBook

LOOM = Machine("Ribbon loom", "hand-built ribbon loom, electric motor, belt driven", "none", "none")


def steps(faults: FaultBook, log: Log) -> list[str]:
    return [s.step for s in advised(faults, log).steps]


def advised(faults: FaultBook, log: Log) -> Advice:
    return advise(log.history(), open_items(log.history()), faults, None)


def noted(log: Log, *notes: str) -> Log:
    for words in notes:
        log.note(words)
    return log


def frayed_belt(words: str) -> Log:
    """A loom with a frayed belt, of which these words were said, and a cracked latch, the quicker one to put right."""
    log = noted(Log(LOOM).found("drive belt", "frayed", state="frayed"), words)
    return log.found("warp latch", "cracked", state="cracked").chat(2)


@pytest.mark.parametrize(
    "words",
    [
        "Well, there's your trouble.",
        "So that's what is wrong with it.",
        "And that's why it drops the shed.",
        "That's what's causing it.",
        "No wonder.",
    ],
)
def test_what_he_found_to_be_the_cause_comes_before_any_check(faults: FaultBook, words: str) -> None:
    assert "drive belt" in steps(faults, frayed_belt(words))[0]
    assert "warp latch" in steps(faults, frayed_belt("The kettle is on."))[0]


def test_a_cause_that_was_mended_on_the_spot_is_no_next_step(faults: FaultBook) -> None:
    log = frayed_belt("There's your trouble.").did("replace", "drive belt").chat(3)
    assert "warp latch" in steps(faults, log)[0]


@pytest.mark.parametrize(
    "words",
    ["That needs doing before anything else.", "That comes first.", "That's the first job.", "That can't wait."],
)
def test_what_he_puts_first_comes_first(faults: FaultBook, words: str) -> None:
    log = frayed_belt(words).later("take up", "to do", "the take up wants doing").chat(2)
    assert "drive belt" in steps(faults, log)[0]


def test_a_thing_at_hand_comes_before_one_on_its_way(faults: FaultBook) -> None:
    log = noted(Log(LOOM), "That reed kit is worn.", "The reed kit is ordered, Thursday they say.")
    log.found("picker strap", "perished, I've a length here to do that with", state="perished")
    found = steps(faults, log)
    assert "picker strap" in found[0]
    assert "fit the new reed kit" in found[1:]


def test_a_way_on_waits_until_what_it_follows_was_tried(faults: FaultBook) -> None:
    """If that does not help, then the governor: not before the belt is on."""
    log = Log(PUMP).later("governor", "fallback", "if that does not help, the governor has to come off")
    log.later("cup washer", "part needed", "it needs a new cup washer")
    assert "cup washer" in steps(faults, log)[0]


@pytest.mark.parametrize(
    "words",
    [
        "She doesn't do a day's work till there's a new one on.",
        "Nobody's putting a hand in there till it's new.",
        "It is not to be run till that is done.",
    ],
)
def test_what_it_must_not_run_without_comes_before_all(faults: FaultBook, words: str) -> None:
    log = noted(Log(LOOM).found("heddle guard", "split", state="split"), words).chat(6)
    advice = advised(faults, log)
    assert "heddle guard" in advice.steps[0].step
    assert "not to be used before this is done" in advice.steps[0].why


def test_a_guard_has_the_name_that_the_card_gives_it(faults: FaultBook) -> None:
    log = noted(Log(LOOM), "The shuttles are fine.", "No guard on it yet. Nobody comes near it till there is one.")
    assert steps(faults, log)[0] == "fit a proper new belt guard"


def test_a_guard_that_came_off_with_the_shaft_goes_back_with_it(faults: FaultBook) -> None:
    apart = Log(LOOM).did("remove", "crank shaft").did("remove", "belt guard")
    apart.later("crank bearing", "part needed", "a new crank bearing is wanted")
    first = advised(faults, apart).steps[0]
    assert "crank bearing" in first.step
    assert any("belt guard was taken off" in c for c in first.cautions)
    only = Log(LOOM).did("remove", "belt guard").later("crank bearing", "part needed", "a crank bearing is wanted")
    assert "refit the belt guard" in steps(faults, only)[0]


def test_work_that_made_it_no_better_owes_no_try(faults: FaultBook) -> None:
    def owed(words: str) -> bool:
        log = noted(Log(PUMP).found("engine", "hunting", state="hunting").did("clean", "main jet"), words)
        return any("see whether it is cured" in s for s in steps(faults, log))

    assert owed("Now the kettle.")
    assert not owed("That made no difference.")


@pytest.mark.parametrize(
    ("wording", "text", "met"),
    [
        ("that [really] comes first", "And that comes first.", True),
        ("that [really] comes first", "that really comes first", True),
        ("that [really] comes first", "that comes last", False),
        ("i'll (go|come back)", "I’ll come back", True),
        ("i'll (go|come back)", "ill go", True),
        ("^ next", "and next", False),
        ("keep * off", "keep that wee thing off", True),
        ("keep * off", "keep it, then switch it off", False),
        ("<other> it", "leave it", True),
        ("to", "I'm to", True),
        ("i", "I'm", False),
    ],
)
def test_wordings_read_as_their_file_says(wording: str, text: str, met: bool) -> None:
    talk = Sayings({"this": (wording,), "other": ("leave", "drop")})
    assert (talk.pattern("this").search(text) is not None) == met
