"""What is found, and where it stands."""

from __future__ import annotations

from datetime import timedelta

import pytest

from tests.bench.conftest import Clock
from worklog_tui.bench.desk import Desk
from worklog_tui.bench.machines import UnknownMachine, add_machine
from worklog_tui.bench.record import keep_note
from worklog_tui.bench.search import find_notes
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
