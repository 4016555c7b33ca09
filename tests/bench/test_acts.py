"""What a person corrects: every wording is kept, corrections outlive another reading, everything can be taken back."""

from __future__ import annotations

from dataclasses import replace

import pytest

from tests.bench.conftest import Clock
from tests.bench.plain_reader import PlainReader
from worklog_tui.bench.acting import CannotAct
from worklog_tui.bench.desk import Desk
from worklog_tui.bench.fact_acts import add_fact, correct_fact, set_subject, settable, strike_fact
from worklog_tui.bench.history import history, reread, would_change
from worklog_tui.bench.machines import add_machine, find_machine
from worklog_tui.bench.note_acts import edit_note, mend_word, strike_notes, struck_notes, wordings
from worklog_tui.bench.record import keep_note
from worklog_tui.bench.search import find_notes
from worklog_tui.bench.session_acts import (
    date_lines,
    date_session,
    join_sessions,
    move_lines,
    move_session,
    shift_lines,
    split_session,
)
from worklog_tui.bench.undoing import can_redo, can_undo, redo, take_back, undo
from worklog_tui.model import Fact, Finding, Instant, Machine, Note

pytestmark = pytest.mark.usefixtures("saw")


def say(desk: Desk, clock: Clock, *lines: str) -> list[Note]:
    kept = []
    for words in lines:
        clock.go_on(seconds=30)
        kept.append(keep_note(desk, "Band saw", words).note)
    return kept


def facts(desk: Desk, machine: str = "Band saw") -> list[tuple[str, str]]:
    return [(fact.kind, fact.about) for fact in history(desk, machine).facts()]


def first(desk: Desk) -> Fact:
    return history(desk, "Band saw").facts()[0]


def said(desk: Desk, machine: str = "Band saw") -> list[list[str]]:
    return [[note.words for note in record.notes] for record in history(desk, machine).sessions]


def settled(desk: Desk) -> None:
    """What stands in the logbook is what reading everything again gives."""
    changed = would_change(desk, "Band saw")
    assert (changed.added, changed.gone) == ((), ())


def test_an_edited_note_keeps_every_wording_and_is_read_again(desk: Desk, clock: Clock) -> None:
    note, _ = say(desk, clock, "the gide is cracked", "cleaned it")
    edit_note(desk, note.uid, "the guide is cracked")
    edit_note(desk, note.uid, "the fence is cracked")
    assert [one.words for one in wordings(desk, note.uid)] == [
        "the gide is cracked", "the guide is cracked", "the fence is cracked",
    ]  # fmt: skip
    assert facts(desk) == [("finding", "fence"), ("work", "fence")], "what follows is read with it"
    settled(desk)
    assert not find_notes(desk, "gide")
    undo(desk)
    undo(desk)
    assert facts(desk) == [("finding", "gide"), ("work", "gide")]
    assert len(wordings(desk, note.uid)) == 3
    settled(desk)


def test_a_struck_note_is_gone_from_the_log_and_comes_back(desk: Desk, clock: Clock) -> None:
    _, wrong, _ = say(desk, clock, "the guide is cracked", "the arm", "cleaned it")
    strike_notes(desk, [wrong.uid])
    assert said(desk) == [["the guide is cracked", "cleaned it"]]
    assert facts(desk) == [("finding", "guide"), ("work", "guide")]
    assert [one.uid for one in struck_notes(desk, wrong.session)] == [wrong.uid]
    assert not find_notes(desk, "arm")
    settled(desk)
    with pytest.raises(CannotAct, match="struck out already"):
        strike_notes(desk, [wrong.uid])
    undo(desk)
    assert facts(desk) == [("finding", "guide"), ("work", "arm")]
    settled(desk)


def test_a_run_of_notes_is_struck_out_by_one_act(desk: Desk, clock: Clock) -> None:
    notes = say(desk, clock, "the guide is cracked", "the arm is cracked", "the fence is cracked")
    strike_notes(desk, [note.uid for note in notes])
    assert said(desk) == []
    settled(desk)
    undo(desk)
    assert len(said(desk)[0]) == 3
    settled(desk)


def test_a_misheard_word_is_put_right_over_a_run(desk: Desk, clock: Clock) -> None:
    notes = say(desk, clock, "the Fens is cracked", "the fens, cleaned it", "the fenster")
    mend_word(desk, [note.uid for note in notes], "fens", "fence")
    assert said(desk) == [["the fence is cracked", "the fence, cleaned it", "the fenster"]]
    settled(desk)
    with pytest.raises(CannotAct, match="in none of these notes"):
        mend_word(desk, [notes[2].uid], "fens", "fence")


def test_a_corrected_fact_outlives_another_reading(desk: Desk, clock: Clock) -> None:
    say(desk, clock, "the guide is cracked")
    correct_fact(desk, first(desk).key, {"part": "upper guide", "condition": "split"})
    wanted = first(desk)
    assert isinstance(wanted, Finding)
    assert (wanted.part, wanted.condition, wanted.by_hand) == ("upper guide", "split", True)
    settled(desk)
    newer = replace(desk, reads_with=PlainReader(stamp="newer"))
    reread(newer, "Band saw")
    assert first(desk) == wanted
    undo(desk)
    assert first(desk).about == "guide"
    redo(desk)
    assert first(desk) == wanted


def test_a_correction_is_idle_when_the_grammar_says_so_itself(desk: Desk, clock: Clock) -> None:
    say(desk, clock, "the guide is cracked")
    key = first(desk).key
    correct_fact(desk, key, {"verdict": "noted"})
    assert first(desk).by_hand
    correct_fact(desk, key, {"verdict": "bad"})
    assert isinstance(first(desk), Finding)
    with pytest.raises(CannotAct, match="says that already"):
        correct_fact(desk, key, {"verdict": "bad"})


class Deaf(PlainReader):
    """A grammar that does not read findings."""

    def feed(self, machine, context, note):  # type: ignore[no-untyped-def]
        context, changed = super().feed(machine, context, note)
        return context, replace(changed, added=tuple(f for f in changed.added if f.kind != "finding"))


def test_a_correction_that_nothing_matches_stands_as_added_by_hand(desk: Desk, clock: Clock) -> None:
    say(desk, clock, "the guide is cracked")
    correct_fact(desk, first(desk).key, {"part": "upper guide"})
    reread(replace(desk, reads_with=Deaf(stamp="deaf")), "Band saw")
    assert facts(desk) == [("finding", "upper guide")]
    assert first(desk).by_hand


def test_a_correction_follows_its_words_through_an_edit(desk: Desk, clock: Clock) -> None:
    (note,) = say(desk, clock, "the guide is cracked")
    correct_fact(desk, first(desk).key, {"condition": "split"})
    edited = "right then, the guide is badly cracked"
    edit_note(desk, note.uid, edited)
    found = first(desk)
    assert isinstance(found, Finding)
    assert (found.condition, edited[found.main.start : found.main.end]) == ("split", "cracked")
    settled(desk)


def test_a_correction_whose_words_are_gone_is_asked_about(desk: Desk, clock: Clock) -> None:
    (note,) = say(desk, clock, "the guide is cracked")
    correct_fact(desk, first(desk).key, {"condition": "split"})
    edit_note(desk, note.uid, "a cup of tea")
    (record,) = history(desk, "Band saw").sessions
    assert record.facts == ()
    (asked,) = record.questions
    assert isinstance(asked, Finding)
    assert (asked.condition, asked.by_hand) == ("split", True)


def test_facts_are_struck_and_added(desk: Desk, clock: Clock) -> None:
    note, _ = say(desk, clock, "the guide is cracked", "and the blade needs setting")
    strike_fact(desk, first(desk).key)
    assert facts(desk) == []
    settled(desk)
    last = history(desk, "Band saw").sessions[0].notes[-1]
    add_fact(desk, last.uid, "follow_up", {"topic": "blade", "reason": "to do"}, "needs setting")
    assert facts(desk) == [("follow_up", "blade")]
    assert (first(desk).main.start, first(desk).main.end) == (14, 27)
    settled(desk)
    with pytest.raises(CannotAct, match="has no “colour”"):
        add_fact(desk, note.uid, "finding", {"colour": "red"})
    with pytest.raises(CannotAct, match="also needs condition, verdict"):
        add_fact(desk, note.uid, "finding", {"part": "guide"})
    assert "verdict" in settable("finding")
    undo(desk)
    undo(desk)
    assert facts(desk) == [("finding", "guide")]


def test_the_subject_of_a_run_of_lines(desk: Desk, clock: Clock) -> None:
    notes = say(desk, clock, "the guide is cracked", "cleaned it", "cracked too")
    set_subject(desk, [note.uid for note in notes[1:]], "thrust bearing")
    assert facts(desk) == [("finding", "guide"), ("work", "thrust bearing"), ("finding", "guide")]
    set_subject(desk, [note.uid for note in notes], "lower guide", was="guide")
    assert facts(desk) == [("finding", "lower guide"), ("work", "thrust bearing"), ("finding", "lower guide")]
    settled(desk)
    undo(desk)
    undo(desk)
    assert facts(desk) == [("finding", "guide"), ("work", "guide"), ("finding", "guide")]


def test_a_session_is_split_and_joined(desk: Desk, clock: Clock) -> None:
    notes = say(desk, clock, "the guide is cracked", "the arm", "cleaned it")
    before = history(desk, "Band saw").sessions
    split_session(desk, notes[2].uid)
    assert said(desk) == [["the guide is cracked", "the arm"], ["cleaned it"]]
    one, other = (record.session for record in history(desk, "Band saw").sessions)
    assert facts(desk) == [("finding", "guide"), ("work", "")], "a session begins with nothing in mind"
    settled(desk)
    assert one.start
    assert other.start
    assert (other.start.moment() - one.start.moment()).total_seconds() == 60
    join_sessions(desk, other.uid, one.uid)
    assert history(desk, "Band saw").sessions == before
    settled(desk)
    with pytest.raises(CannotAct, match="begins with that note already"):
        split_session(desk, notes[0].uid)


def test_a_session_is_given_to_another_machine(desk: Desk, clock: Clock) -> None:
    add_machine(desk, Machine("Lathe"))
    (note,) = say(desk, clock, "the guide is cracked")
    move_session(desk, note.session, "Lathe")
    assert (said(desk), said(desk, "Lathe")) == ([], [["the guide is cracked"]])
    assert facts(desk, "Lathe") == [("finding", "guide")]
    say(desk, clock, "the arm is cracked")
    assert said(desk) == [["the arm is cracked"]], "what is said next is of a new session"
    undo(desk)
    assert [words for session in said(desk) for words in session] == ["the guide is cracked", "the arm is cracked"]
    settled(desk)


def test_lines_are_given_to_another_machine(desk: Desk, clock: Clock) -> None:
    add_machine(desk, Machine("Lathe"))
    notes = say(desk, clock, "the guide is cracked", "the belt is cracked", "the arm is cracked")
    move_lines(desk, [notes[1].uid], "Lathe")
    assert said(desk) == [["the guide is cracked", "the arm is cracked"]]
    assert said(desk, "Lathe") == [["the belt is cracked"]]
    undo(desk)
    assert len(said(desk)[0]) == 3
    assert said(desk, "Lathe") == []


def test_lines_are_dated_and_shifted(desk: Desk, clock: Clock) -> None:
    notes = say(desk, clock, "the guide is cracked", "the belt is cracked", "the arm is cracked")
    spring = Instant("2031-03-01T09:00:00Z")
    date_lines(desk, [notes[2].uid], spring)
    assert said(desk) == [["the arm is cracked"], ["the guide is cracked", "the belt is cracked"]]
    shift_lines(desk, [notes[0].uid], 90)
    assert said(desk)[1] == ["the belt is cracked", "the guide is cracked"]
    later = history(desk, "Band saw").sessions[1].notes[1]
    assert (later.at, later.said_at) == (90, "14:07")
    date_session(desk, notes[0].session, None)
    undo(desk)
    undo(desk)
    undo(desk)
    assert [note.uid for note in history(desk, "Band saw").sessions[0].notes] == [note.uid for note in notes]
    settled(desk)


def test_undo_and_redo_after_a_restart_and_only_of_this_device(desk: Desk, clock: Clock) -> None:
    one, other = say(desk, clock, "the gide is cracked", "the arm is cracked")
    edit_note(desk, one.uid, "the guide is cracked")
    edit_note(replace(desk, device="another"), other.uid, "the fence is cracked")
    restarted = replace(desk, _kept={})
    undo(restarted)
    assert facts(desk) == [("finding", "gide"), ("finding", "fence")], "what another device did stays"
    with pytest.raises(CannotAct, match="nothing to take back"):
        undo(restarted)
    redo(restarted)
    assert facts(desk) == [("finding", "guide"), ("finding", "fence")]
    with pytest.raises(CannotAct, match="nothing to do again"):
        redo(restarted)


def test_an_act_in_the_middle_is_taken_back_and_the_later_ones_stay(desk: Desk, clock: Clock) -> None:
    one, other = say(desk, clock, "the gide is cracked", "the arm is cracked")
    act = edit_note(desk, one.uid, "the guide is cracked").act
    edit_note(desk, other.uid, "the fence is cracked")
    take_back(desk, act.uid)
    assert facts(desk) == [("finding", "gide"), ("finding", "fence")]
    again = can_redo(desk)
    assert again is not None
    assert again.target == act.uid
    last = can_undo(desk)
    assert last is not None
    assert last.target == other.uid


def test_a_new_card_can_be_taken_back(desk: Desk) -> None:
    add_machine(desk, Machine("Band saw", kind="saw", cylinders=None))
    assert find_machine(desk, "Band saw").kind == "saw"
    undo(desk)
    assert find_machine(desk, "Band saw").kind == "woodworking machine"
    redo(desk)
    assert find_machine(desk, "Band saw").kind == "saw"
