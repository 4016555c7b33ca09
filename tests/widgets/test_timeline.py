"""The timeline's rows: sessions, notes, and what was understood, kept up to date note by note."""

from __future__ import annotations

from dataclasses import replace
from typing import NamedTuple

from worklog_tui.model import Fact, Finding, Instant, Note, Session, Span
from worklog_tui.widgets.log_rows import Log, in_a_row, marks_in, session_heading, time_of


class Part(NamedTuple):
    """Some notes of a session."""

    session: Session
    number: int
    first: int
    notes: tuple[Note, ...]
    facts: tuple[Fact, ...]


FIRST = Session("s1", "m", Instant("2031-04-12T14:05:00Z"))
SECOND = Session("s2", "m")


def note(number: int, words: str = "the belt is worn", session: str = "s1") -> Note:
    return Note(f"n{number}", session, words, at=number * 60, arrival=number)


def worn(of: Note) -> Fact:
    span = Span(of.uid, 12, 16)
    return Finding(
        main=span, evidence=(Span(of.uid, 4, 16),), quote="belt is worn", part="belt", condition="worn", verdict="bad"
    )


def test_a_page_becomes_headings_and_notes_with_what_was_understood() -> None:
    a, b = note(1), note(2, "quiet", "s2")
    parts = (Part(FIRST, 1, 0, (a,), (worn(a),)), Part(SECOND, 2, 0, (b,), ()))
    rows = Log.of(parts, [("s1", 1), ("s2", 1)]).rows
    assert [row.words for row in rows] == [
        "Session 1, Saturday 12 April 2031", "the belt is worn", "Session 2, date not known", "quiet",
    ]  # fmt: skip
    assert rows[1].below == "belt: worn (a fault)"
    assert rows[1].marks == ((4, 16),)


def test_a_new_note_is_added_below_a_heading_when_its_session_is_new() -> None:
    log = Log()
    assert log.take(note(0), FIRST, ()) == 0
    assert log.take(note(1), FIRST, ()) == 2
    assert log.take(note(2, session="s2"), SECOND, ()) == 3
    assert (log.sessions, log.notes, len(log.rows)) == (2, 3, 5)


def test_a_note_may_take_back_or_add_what_was_read_of_an_earlier_one() -> None:
    log = Log()
    first = note(0)
    log.take(first, FIRST, [worn(first)])
    assert log.take(note(1, "no, it is fine"), FIRST, [], [worn(first).key]) == 1
    assert log.rows[1].below == ""
    assert log.take(note(2), FIRST, [worn(first)]) == 1
    assert log.rows[1].below == "belt: worn (a fault)"
    assert log.facts_of("n0") == (worn(first),)


def test_a_note_that_stands_there_already_is_not_added_twice() -> None:
    log = Log()
    log.take(note(0), FIRST, ())
    log.take(note(0), FIRST, [worn(note(0))])
    assert log.notes == 1
    assert log.rows[1].below == "belt: worn (a fault)"


def test_marks_are_in_order_and_do_not_overlap() -> None:
    a = note(0)
    later = replace(worn(a), main=Span("n0", 0, 3), evidence=(Span("n0", 14, 20), Span("elsewhere", 0, 9)))
    assert marks_in([worn(a), later], "n0") == ((0, 3), (4, 20))


def test_the_time_beside_a_note_is_the_written_one_when_there_is_one() -> None:
    assert time_of(replace(note(2), said_at="1:02:03")) == "1:02:03"
    assert time_of(replace(note(2), instant=Instant("2031-04-12T14:05:00Z", offset=60))) == "15:05"
    assert time_of(note(2)) == "2:00"
    assert time_of(replace(note(2), at=None)) == ""


def test_an_assumed_date_is_marked() -> None:
    assumed = Session("s1", "m", Instant("2031-04-12T14:05:00Z", known="assumed"))
    assert session_heading(assumed, 3) == "Session 3, Saturday 12 April 2031 (assumed)"


def test_earlier_notes_are_put_above_and_all_keep_their_places() -> None:
    log = Log.of([Part(FIRST, 1, 2, (note(2), note(3)), ())], [("s0", 1), ("s1", 4)])
    assert (log.earlier, log.start) == (3, ("s1", 2))
    before = [Part(SECOND, 1, 0, (note(9, session="s0"),), ()), Part(FIRST, 2, 0, (note(0), note(1)), ())]
    assert log.put_before(Log.of(before, log.lengths.items())) == 1
    words = [row.key or row.words for row in log.rows]
    assert words == ["Session 1, date not known", "n9", "Session 2, Saturday 12 April 2031", "n0", "n1", "n2", "n3"]
    assert [log.place(key) for key in ("n9", "n1", "n3")] == [1, 4, 6]
    assert log.earlier == 0


def test_the_session_that_is_recorded_keeps_its_number_by_date_wherever_it_stands() -> None:
    parts = [Part(SECOND, 2, 0, (note(1, session="s2"),), ()), Part(FIRST, 1, 0, (note(0),), ())]
    log = Log.of(parts, [("s1", 1), ("s2", 1)])
    assert [row.words for row in log.rows if row.heading][-1] == "Session 1, Saturday 12 April 2031"
    assert log.number("s1") == 1


def test_what_several_things_begin_with_is_said_once() -> None:
    said = ("to come back to: bolt, to do", "to come back to: oil, to do", "belt: slack (a fault)")
    assert in_a_row(said) == "to come back to: bolt, to do; oil, to do; belt: slack (a fault)"
    assert in_a_row(()) == ""
