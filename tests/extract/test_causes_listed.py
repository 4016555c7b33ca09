"""Causes told as a list: announced by a word, set behind a sign of equation, or asked with `or`."""

from __future__ import annotations

import pytest

from worklog_tui.extract import CONFIDENCE_LINE, explain
from worklog_tui.model import Machine, Suspect
from worklog_tui.rulebook import Rulebook

SAW = Machine("Fret saw", kind="treadle fret saw with an electric motor", fuel="none")


def causes(book: Rulebook, words: str, track: str = "captions") -> list[str]:
    """What is suspected in one note, in the speaker's words."""
    facts = explain(book, SAW, words, track).facts
    return [f.cause for f in facts if isinstance(f, Suspect) and f.confidence >= CONFIDENCE_LINE]


@pytest.mark.parametrize(
    ("said", "suspected"),
    [
        ("Candidates for the drift: guide worn, blade dull, table loose.", ["guide worn", "blade dull", "table loose"]),
        ("The usual suspects are the belt, the clutch and the idler.", ["belt", "clutch", "idler"]),
        ("Possible causes: worn bushes, a slack belt or a bent shaft.", ["worn bushes", "slack belt", "bent shaft"]),
        ("Next suspects then: capacitor, switch, brushes.", ["capacitor", "switch", "brushes"]),
    ],
)
def test_a_list_that_is_announced(book: Rulebook, said: str, suspected: list[str]) -> None:
    assert causes(book, said) == suspected


@pytest.mark.parametrize(
    ("said", "suspected"),
    [
        ("so no drive = belt + clutch", ["belt", "clutch"]),
        ("hums = cap or switch", ["cap", "switch"]),
        ("slips under load = belt glazed", ["belt glazed"]),
        ("no power -> brushes", ["brushes"]),
    ],
)
def test_a_typed_sign_sets_the_cause_behind_the_trouble(book: Rulebook, said: str, suspected: list[str]) -> None:
    assert causes(book, said, "live") == suspected


@pytest.mark.parametrize(
    "said",
    ["belt = 10 mm wide", "slow start -> cap dead -> trips", "spindle round = ok", "rattles -> tightened the guard"],
)
def test_a_sign_that_tells_no_cause(book: Rulebook, said: str) -> None:
    assert causes(book, said, "live") == []


@pytest.mark.parametrize(
    ("said", "cleared"),
    [
        ("So spool, joint and hoses are cleared in one go.", {"spool", "joint", "hoses"}),
        ("Belt, pulleys and clutch are in the clear.", {"belt", "pulleys", "clutch"}),
        ("The belt's off, the clutch is ruled out.", {"clutch"}),
    ],
)
def test_all_of_a_list_are_cleared_together(book: Rulebook, said: str, cleared: set[str]) -> None:
    facts = explain(book, SAW, said, "captions").facts
    assert {f.cause for f in facts if isinstance(f, Suspect) and f.standing == "ruled out"} == cleared


@pytest.mark.parametrize("said", ["There's play in it. Bush or shaft?", "The belt slips. Belt or pulley?"])
def test_two_parts_asked_after_a_fault(book: Rulebook, said: str) -> None:
    assert len(causes(book, said)) == 2


@pytest.mark.parametrize("said", ["Oil or grease? Oil.", "Tea or coffee?", "Belt's on. Guard or cover?"])
def test_other_choices_are_no_suspects(book: Rulebook, said: str) -> None:
    assert causes(book, said) == []


@pytest.mark.parametrize(
    ("said", "joined"), [("belt + guard off", "belt + guard"), ("the + lead is hot", "lead"), ("+ve lead off", "lead")]
)
def test_a_plus_joins_two_things_and_is_the_pole_of_a_battery(book: Rulebook, said: str, joined: str) -> None:
    assert [getattr(f, "part", "") for f in explain(book, SAW, said, "live").facts] == [joined]
