"""Under what name a part is spoken of in a step: as the card tells it, or as the person did."""

from __future__ import annotations

import pytest

from tests.diagnosis.workshop import Log
from worklog_tui.diagnosis.kin import by_card
from worklog_tui.diagnosis.log import Log as Read
from worklog_tui.model import Machine

MORTISER = Machine("Chain mortiser", "chain mortiser with an electric motor and a chain guard", "none", "none")


@pytest.mark.parametrize(
    ("said", "spoken_of"),
    [
        ("guard", "chain guard"),  # the card knows of one guard
        ("bottom bearing", "bottom bearing"),  # told apart by the person, and need not be the motor's
        ("worn strap", "worn strap"),
    ],
)
def test_the_card_tells_a_bare_part_and_no_other(said: str, spoken_of: str) -> None:
    log = Read(Log(MORTISER).found(said, "worn").history())
    assert by_card(log, said, ("chain guard", "motor bearing")) == spoken_of
