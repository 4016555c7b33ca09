"""One thing and another: what is named twice is one, what is left open is not proved, what is only told is not done."""

from __future__ import annotations

import pytest

from worklog_tui.extract import CONFIDENCE_LINE, read_session
from worklog_tui.model import Fact, Finding, FollowUp, Machine, Note, Reading, Suspect, Work
from worklog_tui.rulebook import Rulebook

WINCH = Machine("Slip winch", kind="four-cylinder petrol engine in a shed, driving a winch", fuel="petrol", cylinders=4)
BELLOWS = Machine("Forge blower", kind="fan in a wooden case, driven by a motor", fuel="none", ignition="none")


def facts(book: Rulebook, *lines: str, machine: Machine = WINCH) -> list[Fact]:
    """All that is surely read from captions, one after another."""
    notes = [Note(f"n{i}", "s", line, track="captions", arrival=i) for i, line in enumerate(lines)]
    return [fact for fact in read_session(book, machine, notes) if fact.confidence >= CONFIDENCE_LINE]


def test_what_is_named_twice_is_one_thing(book: Rulebook) -> None:
    read = facts(book, "plug straight out, spark", "and the spark is weak")
    assert [f.part for f in read if isinstance(f, Finding)] == ["spark"]


@pytest.mark.parametrize(
    ("words", "standing"),
    [("so it was the regulator", "confirmed"), ("so that's rings, or it's only dry", "suspected")],
)
def test_a_cause_is_proved_only_where_no_other_follows(book: Rulebook, words: str, standing: str) -> None:
    assert {f.standing for f in facts(book, words) if isinstance(f, Suspect)} == {standing}


def test_a_maybe_at_the_end_is_of_what_was_said_before(book: Rulebook) -> None:
    read = facts(book, "then it waits for the bowl to fill. maybe", "inlet valve clearance is nine thou")
    assert not [f for f in read if isinstance(f, Suspect)]


def test_what_was_told_fine_just_now_is_not_blamed(book: Rulebook) -> None:
    read = facts(book, "the coupling's fine, oil in the box is low, so it may be only that")
    assert "coupling" not in [f.cause for f in read if isinstance(f, Suspect)]


@pytest.mark.parametrize(
    ("words", "subject"), [("95 psi on cylinder one", "cylinder one"), ("cylinder two is ninety", "cylinder two")]
)
def test_a_cylinder_has_its_number(book: Rulebook, words: str, subject: str) -> None:
    assert [f.subject for f in facts(book, words) if isinstance(f, Reading)] == [subject]


@pytest.mark.parametrize(
    "words", ["pressure is off as well", "one of the bolts is stripped", "oil in the tank is low", "two weeks later"]
)
def test_what_only_is_so_is_no_work_and_no_reading(book: Rulebook, words: str) -> None:
    assert not [f for f in facts(book, words) if isinstance(f, Work | Reading)]


def test_one_of_those_is_what_was_just_found_broken(book: Rulebook) -> None:
    read = facts(book, "greased the top bearing", "one of the bolts is snapped. I need one of those")
    assert [f.topic for f in read if isinstance(f, FollowUp)] == ["bolts"]


def test_a_complaint_is_of_the_machine_as_it_is_called(book: Rulebook) -> None:
    read = facts(book, "the smith says the blower hums and it won't start", machine=BELLOWS)
    assert {f.part for f in read if isinstance(f, Finding)} <= {"blower", "fan"}
    assert "case" not in {f.part for f in read if isinstance(f, Finding)}


def test_what_a_motor_draws_is_a_current_of_the_motor(book: Rulebook) -> None:
    assert [(f.subject, f.value) for f in facts(book, "draws 3.4 A", machine=BELLOWS) if isinstance(f, Reading)] == [
        ("motor", 3.4)
    ]
