"""A row on its screen lines: wrapped words, underlined stretches, what is said below."""

from __future__ import annotations

from worklog_tui.widgets.row import Piece, Row


def test_a_row_takes_as_many_lines_as_it_has_pieces() -> None:
    row = Row.of("the belt slips and the guard rattles at every turn " * 3, margin="14:05", below="belt: slips")
    for width in (20, 39, 40, 80, 200):
        assert row.height(width, 11) == len(row.pieces(width, 11))


def test_what_stands_in_goes_on_further_in() -> None:
    row = Row.of("  ██████  90 psi, too low, session 1 at 14:05, with the throttle held wide open")
    first, second = row.pieces(50, 2)
    assert (first.hang, second.hang) == (0, 4)
    assert row.height(50, 2) == 2
    assert all(piece.end - piece.start + piece.hang <= 48 for piece in (first, second))
    assert [piece.hang for piece in Row.of("the belt slips " * 9).pieces(50, 2)] == [0, 0, 0]


def test_marks_are_underlined_across_a_break() -> None:
    row = Row.of("set the gap eighteen thou", marks=((8, 25),))
    first, second = Piece("words", 0, 11), Piece("words", 12, 25)
    assert row.stretches(first) == [("set the ", False), ("gap", True), ("", False)]
    assert row.stretches(second) == [("", False), ("eighteen thou", True), ("", False)]


def test_text_is_made_harmless_and_marks_that_no_longer_fit_are_dropped() -> None:
    row = Row.of("gap \x1b[31m18 thou", marks=((4, 16),))
    assert row.words == "gap 18 thou"
    assert row.marks == ()


def test_a_row_stays_on_its_line() -> None:
    row = Row.of("one\ntwo\tthree")
    assert "\n" not in row.words
    assert "\t" not in row.words
