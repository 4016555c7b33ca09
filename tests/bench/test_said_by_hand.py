"""What was not read is added in the person's own words, with the shipped grammars."""

from __future__ import annotations

import random
from dataclasses import replace
from pathlib import Path

import pytest

from tests.screens.logbook_desk import SAW, Clock
from worklog_tui import places
from worklog_tui.bench.acting import CannotAct
from worklog_tui.bench.desk import Desk
from worklog_tui.bench.history import history, reread
from worklog_tui.bench.machines import add_machine
from worklog_tui.bench.note_facts import note_facts
from worklog_tui.bench.record import keep_note
from worklog_tui.bench.said_by_hand import add_heard, add_told, heard, quantity_named
from worklog_tui.bench.undoing import undo
from worklog_tui.model import Finding, FollowUp, Machine, Reading, Work


@pytest.fixture
def desk(tmp_path: Path) -> Desk:
    chance = random.Random(1)
    made = Desk(
        tmp_path / "log.db", (places.grammars(),), Clock(), "bench-one", lambda: chance.getrandbits(74),
        cache=places.cache(),
    )  # fmt: skip
    add_machine(made, Machine(SAW, kind="woodworking machine"))
    keep_note(made, SAW, "the upper guide bearing is noisy")
    return made


def note(desk: Desk) -> str:
    return history(desk, SAW).sessions[0].notes[-1].uid


def test_words_are_read_as_if_they_went_on_from_the_note(desk: Desk) -> None:
    (found,) = heard(desk, note(desk), "the lower one is worn").sure
    assert isinstance(found, Finding)
    assert found.verdict == "bad"
    assert found.main.note != note(desk)
    assert heard(desk, note(desk), "good evening all") == heard(desk, note(desk), " ")


def test_several_facts_are_added_at_once_and_taken_back_one_by_one(desk: Desk) -> None:
    before = len(note_facts(desk, note(desk)).sure)
    done = add_heard(desk, note(desk), "the drive belt is cracked, need a new one")
    assert done.says.startswith("Added: drive belt: cracked")
    added = [fact for fact in note_facts(desk, note(desk)).sure if fact.by_hand]
    assert {type(fact) for fact in added} == {Finding, FollowUp}
    assert all("belt" in fact.quote or "new one" in fact.quote for fact in added)
    for _ in added:
        undo(desk)
    assert len(note_facts(desk, note(desk)).sure) == before


def test_what_was_added_outlives_a_reading_with_newer_grammars_and_another_wording(desk: Desk) -> None:
    from worklog_tui.bench.note_acts import edit_note

    add_heard(desk, note(desk), "the drive belt is cracked")
    edit_note(desk, note(desk), "the upper guide bearing is very noisy indeed")
    reread(desk, SAW)
    assert any(fact.about == "drive belt" for fact in note_facts(desk, note(desk)).sure)


def test_a_fact_is_told_field_by_field(desk: Desk) -> None:
    add_told(desk, note(desk), "reading", {"quantity": "Gap", "value": "18 thou", "subject": "guides", "condition": ""})
    add_told(desk, note(desk), "work", {"action": "Cleaned", "part": "", "used": "paraffin"})
    facts = [fact for fact in note_facts(desk, note(desk)).sure if fact.by_hand]
    (reading,) = (fact for fact in facts if isinstance(fact, Reading))
    assert (reading.quantity, reading.value, reading.unit, reading.subject) == ("gap", 0.018, "in", "guides")
    (work,) = (fact for fact in facts if isinstance(fact, Work))
    assert (work.action, work.part, work.used) == ("clean", "", "paraffin")


@pytest.mark.parametrize(
    ("kind", "told", "says"),
    [
        ("finding", {"part": "", "condition": "worn"}, "which part"),
        ("reading", {"quantity": "gap", "value": "", "subject": ""}, "how much"),
        ("reading", {"quantity": "gap", "value": "a lot", "subject": ""}, "is no value"),
        ("reading", {"quantity": "cheer", "value": "3 in", "subject": ""}, "nothing that is measured here"),
        ("work", {"action": "", "part": "belt"}, "what was done"),
    ],
)
def test_what_is_missing_is_said_and_nothing_is_added(desk: Desk, kind: str, told: dict[str, str], says: str) -> None:
    with pytest.raises(CannotAct, match=says):
        add_told(desk, note(desk), kind, told)
    assert not any(fact.by_hand for fact in note_facts(desk, note(desk)).sure)


def test_nothing_understood_is_refused(desk: Desk) -> None:
    with pytest.raises(CannotAct, match="Nothing for the log"):
        add_heard(desk, note(desk), "good evening all")


def test_quantities_go_by_their_names_for_people(desk: Desk) -> None:
    assert quantity_named(desk, "hours run") == "run_time"
    assert quantity_named(replace(desk), " Compression ") == "compression"
