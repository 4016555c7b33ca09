"""Erasing: the words are gone for good from every file, a mark stays, and no merge brings them back."""

from __future__ import annotations

import tempfile
from itertools import permutations
from pathlib import Path

import pytest
from hypothesis import given, settings

from tests.bench.conftest import Clock
from tests.bench.test_exchange import Deeds, Told, computer, held, work
from tests.bench.test_undoing import DEEDS, EXAMPLES, TOLD, Bench
from worklog_tui import store
from worklog_tui.bench.act_list import acts
from worklog_tui.bench.acting import CannotAct
from worklog_tui.bench.desk import Desk
from worklog_tui.bench.erasing import erase_notes, to_erase
from worklog_tui.bench.exchange import export, merge
from worklog_tui.bench.fact_acts import add_fact, correct_fact
from worklog_tui.bench.history import history
from worklog_tui.bench.item_acts import mark_done
from worklog_tui.bench.note_acts import edit_note, mend_word, strike_notes, wordings
from worklog_tui.bench.record import keep_lines, keep_note
from worklog_tui.bench.review import open_items
from worklog_tui.bench.search import find_notes
from worklog_tui.bench.undoing import undo
from worklog_tui.model import Machine

SAW = "Band saw"


def traces(desk: Desk, word: str) -> list[str]:
    """The files of the logbook in which a word can still be found."""
    files = [path for path in desk.logbook.parent.rglob("*") if path.is_file()]
    return [path.name for path in files if word.encode() in path.read_bytes()]


@pytest.fixture
def told(desk: Desk, saw: Machine) -> str:
    """The uid of a note with a private word in it, corrected and edited more than once."""
    keep_note(desk, SAW, "the fence is cracked")
    note = keep_note(desk, SAW, "the guide is cracked, says Zebulon").note.uid
    keep_note(desk, SAW, "cleaned it")
    (fact,) = [f for f in history(desk, SAW).facts() if f.main.note == note and f.kind == "finding"]
    correct_fact(desk, fact.key, {"part": "guide of Zebulon"})
    mend_word(desk, [note], "Zebulon", "Zacharias")
    edit_note(desk, note, "the guide is cracked, so Zebulon told me")
    add_fact(desk, note, "follow_up", {"topic": "ask Zebulon", "reason": "to do"})
    item = next(one for one in open_items(desk, SAW) if "Zebulon" in one.about)
    mark_done(desk, SAW, item)
    return note


def test_the_words_are_in_no_file_any_more(desk: Desk, told: str) -> None:
    assert traces(desk, "Zebulon") == ["logbook.db"]
    done = erase_notes(desk, [told])
    assert done.says.startswith("One note was erased for good. Backups")
    assert traces(desk, "Zebulon") == traces(desk, "Zacharias") == traces(desk, "zebulon") == []
    assert find_notes(desk, "Zebulon") == []


def test_a_mark_stays_that_something_was_there(desk: Desk, told: str) -> None:
    erase_notes(desk, [told])
    known = history(desk, SAW)
    assert [note.words for note in known.sessions[0].notes] == ["the fence is cracked", "[erased]", "cleaned it"]
    assert all(fact.main.note != told for fact in known.facts())
    assert {one.words for one in wordings(desk, told)} == {""}
    assert [one.says for one in acts(desk, SAW)][-1] == "erasing words"


def test_what_is_erased_can_neither_be_had_back_nor_changed(desk: Desk, told: str) -> None:
    erase_notes(desk, [told])
    for _ in range(9):
        try:
            undo(desk)
        except CannotAct:
            break
    assert [note.words for note in history(desk, SAW).sessions[0].notes][1] == "[erased]"
    with pytest.raises(CannotAct, match="was erased"):
        edit_note(desk, told, "tea")
    with pytest.raises(CannotAct, match="was erased"):
        strike_notes(desk, [told])
    with pytest.raises(CannotAct, match="erased already"):
        erase_notes(desk, [told])
    with pytest.raises(CannotAct, match="no such note"):
        erase_notes(desk, ["nobody"])


def test_what_was_struck_out_can_be_erased_too(desk: Desk, told: str) -> None:
    time = history(desk, SAW).sessions[0].notes[0].said_at
    strike_notes(desk, [told])
    meant = to_erase(desk, SAW, f"1/{time}")
    assert [(note.words[:9], note.struck) for note in meant] == [
        ("the fence", False), ("the guide", True), ("cleaned i", False),
    ]  # fmt: skip
    assert [note.words for note in to_erase(desk, SAW, f"1/{time}/2")] == ["cleaned it"], "as the timeline counts"
    erase_notes(desk, [told])
    assert traces(desk, "Zebulon") == []


def test_reading_a_file_in_again_does_not_bring_its_words_back(desk: Desk, saw: Machine) -> None:
    text = "[0:05] the guide is cracked\n[0:20] my number is Zebulon\n[0:40] cleaned it"
    keep_lines(desk, SAW, text)
    note = history(desk, SAW).sessions[0].notes[1]
    erase_notes(desk, [note.uid])
    keep_lines(desk, SAW, text)
    assert [note.words for note in history(desk, SAW).sessions[0].notes][1] == "[erased]"
    assert traces(desk, "Zebulon") == []


def test_a_copy_that_still_has_the_words_loses_them_when_it_is_merged(desk: Desk, told: str, tmp_path: Path) -> None:
    before, after = tmp_path / "before.jsonl", tmp_path / "after.jsonl"
    export(desk, before)
    edit_note(desk, told, "the guide is cracked, says Zebulon again")
    erase_notes(desk, [told])
    export(desk, after)
    assert b"Zebulon" not in after.read_bytes()
    for number, order in enumerate(((before, after), (after, before)), 2):
        other = computer(str(tmp_path), number)
        for file in order:
            merge(other.desk, file)
        assert traces(other.desk, "Zebulon") == [], order
        merge(desk, other.desk.logbook)
        with store.reading(other.desk.logbook) as there, store.reading(desk.logbook) as here:
            assert store.acts.load(there) == store.acts.load(here)
    assert traces(desk, "Zebulon") == []


@settings(max_examples=EXAMPLES // 2, deadline=None)
@given(told=TOLD, deeds=DEEDS, mine=DEEDS, yours=DEEDS)
def test_erasing_on_one_computer_and_working_on_another_merge_to_the_same(
    told: Told, deeds: Deeds, mine: Deeds, yours: Deeds
) -> None:
    with tempfile.TemporaryDirectory() as folder:
        first = Bench(folder)
        first.say(0, "the guide of Zebulon is cracked", 1)
        uid = first.notes(SAW)[-1].uid
        work(first, told, deeds)
        second = computer(folder, 2, first)
        work(second, [], yours)
        try:
            erase_notes(first.desk, [uid])
        except CannotAct:  # the deeds have left nothing to erase
            return
        work(first, [], mine)
        results = []
        for number, order in enumerate(permutations((first, second)), 3):
            into = computer(folder, number)
            for other in order:
                merge(into.desk, other.desk.logbook)
            results.append(held(into))
            assert not any("Zebulon" in line for line in held(into))
            into.consistent()
        merge(first.desk, second.desk.logbook)
        assert [held(first), *results] == [results[0]] * 3


def test_a_desk_that_cannot_write_the_file_anew_says_so(
    desk: Desk, told: str, clock: Clock, monkeypatch: pytest.MonkeyPatch
) -> None:
    def full(path: Path, wait: float) -> None:
        raise store.NoRoom(path)

    monkeypatch.setattr(store, "scour", full)
    assert "Unused parts of the file may hold them" in erase_notes(desk, [told]).says
    assert find_notes(desk, "Zebulon") == []
