"""A part that is on its way is fitted next, also where no open item was read from the words."""

from __future__ import annotations

import pytest

from tests.diagnosis.workshop import Log
from worklog_tui.diagnosis import advise
from worklog_tui.model import Machine
from worklog_tui.rulebook.faults import FaultBook

LOOM = Machine("Ribbon loom", "hand-built ribbon loom, electric motor, belt driven", "none", "none")


def steps(faults: FaultBook, *notes: str) -> list[str]:
    log = Log(LOOM)
    for words in notes:
        log.note(words)
    return [s.step for s in advise(log.history(), [], faults, None).steps]


@pytest.mark.parametrize(
    ("words", "step"),
    [
        ("I called for the scrapers, they have white ones and blue ones.", "fit the new scrapers"),
        ("Heddle eyes ordered from the maker's stock, three weeks.", "fit the new heddle eyes"),
        ("I've sent off for a set of reeds.", "fit the new reeds"),
        ("The picker strap is on its way.", "fit the new picker strap"),
        ("There's a picker strap on the order.", "fit the new picker strap"),
        ("The picker strap comes as a set. I've ordered two sets.", "fit the new picker"),
    ],
)
def test_what_was_sent_for_is_fitted_next(faults: FaultBook, words: str, step: str) -> None:
    assert step in steps(faults, "The scrapers are blunt.", "These scrapers and reeds.", "Reeds are bent.", words)


@pytest.mark.parametrize(
    "words",
    [
        "I have not ordered the reeds yet.",
        "I ordered a pizza.",
        "If it goes again I order reeds.",
        "Is the reed ordered?",
    ],
)
def test_what_was_not_sent_for_is_not_awaited(faults: FaultBook, words: str) -> None:
    assert not [s for s in steps(faults, "It weaves crooked.", words) if "reed" in s or "pizza" in s]


def test_one_that_is_being_made_is_called_by_what_was_spoken_of(faults: FaultBook) -> None:
    assert "fit the new hose" in steps(faults, "Hose is five foot long. They'll make me one while I eat.")


def test_the_next_thing_that_i_do_is_the_next_step(faults: FaultBook) -> None:
    said = steps(faults, "The batten jams.", "So the next thing I do, I shim the batten and run a yard.")
    assert said[0] == "shim the batten, run a yard"
    assert steps(faults, "The batten jams.", "To find out which, back the batten bolt right off.")[0].startswith(
        "back the"
    )
