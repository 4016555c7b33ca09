"""Complaints: what somebody says is wrong with a machine is found of it, each trouble on its own."""

from __future__ import annotations

import pytest

from worklog_tui.extract import read_session
from worklog_tui.model import Finding, Machine, Note
from worklog_tui.rulebook import Rulebook

HOIST = Machine("Barn hoist", kind="electric wire-rope hoist, drum brake", fuel="none")


def found(book: Rulebook, line: str) -> list[tuple[str, str, str]]:
    """(part, condition, verdict) of what the line tells."""
    facts = read_session(book, HOIST, [Note("n0", "s", line, track="captions")])
    return [(f.part, f.condition, f.verdict) for f in facts if isinstance(f, Finding)]


@pytest.mark.parametrize(
    ("line", "troubles"),
    [
        ("What they say is it judders and it stops short.", ["judders", "stops short"]),
        ("The complaint is that it judders, and that it screams.", ["judders", "screams"]),
        ("The drivers tell me it screams, it judders, and it sits there and hums.", ["screams", "judders", "hums"]),
    ],
)
def test_each_trouble_of_a_complaint_is_one_of_the_machine(book: Rulebook, line: str, troubles: list[str]) -> None:
    bad = [(part, condition) for part, condition, verdict in found(book, line) if verdict == "bad"]
    assert bad == [("hoist", t) for t in troubles]


def test_what_is_named_in_a_complaint_keeps_its_trouble(book: Rulebook) -> None:
    line = "The complaint is that the belt slips."
    assert found(book, line) == [("belt", "slips", "bad")]


@pytest.mark.parametrize("line", ["Is it screaming?", "If it judders we stop.", "He reckons it runs like a watch."])
def test_what_is_asked_supposed_or_praised_by_others_is_no_trouble(book: Rulebook, line: str) -> None:
    assert found(book, line) == []


@pytest.mark.parametrize(
    ("line", "verdict"),
    [("Drum spins true, nae wobble.", "good"), ("The pawl doesnae move.", "bad"), ("The cam isnae worn.", "good")],
)
def test_scots_denials_deny(book: Rulebook, line: str, verdict: str) -> None:
    assert [v for _, _, v in found(book, line)] == [verdict]
