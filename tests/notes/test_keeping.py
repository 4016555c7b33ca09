"""Imported sessions have uids that the same text always gives, so importing again doubles nothing."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from worklog_tui.notes.keeping import make_notes
from worklog_tui.notes.reading import read_text

TYPED = "session 2031-04-12 23:50\n23:52 lid off\n00:10 lid on\n00:10 lid on"


def test_the_same_text_gives_the_same_uids() -> None:
    first, second = (make_notes(read_text(TYPED), "m-1") for _ in range(2))
    assert first == second


def test_equal_lines_are_different_notes() -> None:
    _, notes = make_notes(read_text(TYPED), "m-1")
    assert len({note.uid for note in notes}) == len(notes) == 3


def test_a_line_put_in_before_leaves_the_others_their_uids() -> None:
    _, before = make_notes(read_text(TYPED), "m-1")
    _, after = make_notes(read_text(TYPED.replace("23:52", "23:51 lights on\n23:52")), "m-1")
    assert [note.uid for note in after[1:]] == [note.uid for note in before]


def test_another_machine_has_another_session() -> None:
    assert make_notes(read_text(TYPED), "m-1")[0].uid != make_notes(read_text(TYPED), "m-2")[0].uid


def test_a_typed_note_knows_its_instant() -> None:
    session, notes = make_notes(read_text(TYPED), "m-1")
    assert session.source == "import"
    assert [note.instant.utc for note in notes if note.instant] == [
        "2031-04-12T23:52:00Z",
        "2031-04-13T00:10:00Z",
        "2031-04-13T00:10:00Z",
    ]
    assert [(note.session, note.arrival, note.track, note.film) for note in notes] == [
        (session.uid, arrival, "typed", None) for arrival in range(3)
    ]


def test_a_caption_knows_its_place_in_the_film_and_no_hour() -> None:
    session, notes = make_notes(read_text("[0:04] gate lifts\nand more"), "m-1")
    assert session.start is None
    assert [(note.at, note.film, note.instant, note.said_at) for note in notes] == [(4, 4, None, "0:04")]


@given(st.text())
def test_making_notes_twice_gives_the_same_uids(text: str) -> None:
    assert make_notes(read_text(text), "m") == make_notes(read_text(text), "m")
