"""What is found, and where it stands."""

from __future__ import annotations

from datetime import timedelta

import pytest

from tests.bench.conftest import Clock
from worklog_tui.bench.desk import Desk
from worklog_tui.bench.fact_acts import strike_fact
from worklog_tui.bench.machines import UnknownMachine, add_machine
from worklog_tui.bench.record import keep_note
from worklog_tui.bench.search import find_items, find_notes
from worklog_tui.bench.undoing import undo
from worklog_tui.model import Machine


def test_notes_of_all_machines_newest_first(desk: Desk, clock: Clock) -> None:
    for name in ("Band saw", "Lathe"):
        add_machine(desk, Machine(name))
        keep_note(desk, name, f"the belt of the {name.lower()} is cracked")
        clock.go_on(minutes=1)
    hits = find_notes(desk, "belt")
    assert [hit.machine for hit in hits] == ["Lathe", "Band saw"]
    assert hits[0].start == hits[0].note.instant
    assert [hit.machine for hit in find_notes(desk, "belt", "band")] == ["Band saw"]
    assert [hit.machine for hit in find_notes(desk, "belt", limit=1)] == ["Lathe"]
    assert find_notes(desk, "belt tea") == []
    with pytest.raises(UnknownMachine):
        find_notes(desk, "belt", "Shaper")


def test_a_word_stands_for_its_other_spellings_in_the_trade(desk: Desk, clock: Clock) -> None:
    add_machine(desk, Machine("Lathe"))
    for words in ("carb off", "carburetor cleaned", "the carburettor leaks", "carbon on the plug"):
        clock.go_on(minutes=1)
        keep_note(desk, "Lathe", words)
    assert len(find_notes(desk, "carburettor")) == 3
    assert len(find_notes(desk, "carb")) == 3
    assert [hit.note.words for hit in find_notes(desk, '"carb"')] == ["carb off"], "a phrase is what it says"


def test_newest_is_by_when_it_was_said(desk: Desk, clock: Clock) -> None:
    add_machine(desk, Machine("Lathe"))
    keep_note(desk, "Lathe", "the belt is new")
    clock.moment -= timedelta(days=30)
    keep_note(desk, "Lathe", "the belt is old")
    assert [hit.note.words for hit in find_notes(desk, "belt")] == ["the belt is new", "the belt is old"]


def test_a_note_is_found_by_what_was_read_from_it_and_by_other_endings(desk: Desk, clock: Clock) -> None:
    add_machine(desk, Machine("Lathe"))
    for words in ("the guide is cracked", "cleaned that", "the tailstock leaks oil"):
        clock.go_on(minutes=1)
        keep_note(desk, "Lathe", words)
    cleaned = find_notes(desk, "cleaning guides")
    assert [hit.note.words for hit in cleaned] == ["cleaned that"], "it was read that the guide was meant"
    assert [fact.about for fact in cleaned[0].facts] == ["guide"]
    assert [hit.note.words for hit in find_notes(desk, "leaking")] == ["the tailstock leaks oil"]


def test_what_a_person_struck_from_what_was_read_is_not_found(desk: Desk) -> None:
    add_machine(desk, Machine("Lathe"))
    keep_note(desk, "Lathe", "the guide is a bit odd")
    keep_note(desk, "Lathe", "cleaned that")
    assert len(find_notes(desk, "clean guide")) == 1
    strike_fact(desk, find_notes(desk, "cleaned")[0].facts[0].key)
    assert find_notes(desk, "clean guide") == []
    undo(desk)
    assert [hit.note.words for hit in find_notes(desk, "clean guide")] == ["cleaned that"]


def test_items_are_found_with_their_machine(desk: Desk) -> None:
    add_machine(desk, Machine("Lathe"))
    keep_note(desk, "Lathe", "the guide is cracked")
    assert [(hit.machine, hit.item.about) for hit in find_items(desk, "guides")] == [("Lathe", "guide cracked")]
    assert find_items(desk, "chuck") == []
