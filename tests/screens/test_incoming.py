"""What comes from the keyboard is parted into keys and whole pastes; nothing of a paste is ever a key."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from worklog_tui.screens.incoming import AT_ONCE, BEGINS, CUT_OFF, ENDS, QUIET, SILENCES, Incoming, Piece, came_at_once


def fed(*readings: str, silence: float = 0.0) -> list[Piece]:
    """What is given for these readings, with so much silence after each, and at last a long one."""
    incoming, now, found = Incoming(), 0.0, []
    for text in readings:
        found += incoming.feed(text, now)
        if silence:
            found += quiet(incoming, now, silence)
        now += silence
    return [*found, *quiet(incoming, now, 2 * CUT_OFF)]


def quiet(incoming: Incoming, now: float, seconds: float) -> list[Piece]:
    """What is given while nothing comes."""
    return [piece for n in range(1, SILENCES + 1) for piece in incoming.tick(now + n * seconds / SILENCES)]


def test_single_keys_go_through_at_once() -> None:
    incoming = Incoming()
    assert incoming.feed("g", 0.0) == [Piece("g")]
    assert incoming.feed("\x1b[A\x1b[A\x1b[A\x1b[A", 0.1) == [Piece("\x1b[A\x1b[A\x1b[A\x1b[A")]
    assert incoming.feed("\r" * 40, 0.2) == [Piece("\r" * 40)]
    assert not incoming.collecting


def test_a_paste_with_escapes_and_its_own_end_inside_arrives_whole() -> None:
    words = f"abc \x1bl{ENDS}q m {BEGINS}n\x1b[2J"
    assert fed(BEGINS + words + ENDS) == [Piece("abc \x1blq m n\x1b[2J", pasted=True)]


@settings(deadline=None)
@given(st.text(st.sampled_from("qml\r\n \x1b[2~01\x1b") | st.characters(), min_size=1, max_size=200), st.data())
def test_whatever_is_pasted_and_wherever_the_readings_break_it_is_one_paste(words: str, data: st.DataObject) -> None:
    whole = BEGINS + words + ENDS
    cuts = sorted(data.draw(st.lists(st.integers(len(BEGINS), len(whole)), max_size=4)))
    readings = [whole[a:b] for a, b in zip([0, *cuts], [*cuts, len(whole)], strict=True) if whole[a:b]]
    found = fed(*readings)
    assert all(piece.pasted for piece in found)
    meant = words.replace(BEGINS, "").replace(ENDS, "").replace("\x00", "")
    assert "".join(piece.text for piece in found) == meant


def test_two_pastes_with_a_pause_between_are_two() -> None:
    readings = (f"{BEGINS}one{ENDS}", f"{BEGINS}two{ENDS}")
    assert fed(*readings, silence=0.2) == [Piece("one", True), Piece("two", True)]


def test_a_key_pressed_after_a_pause_is_a_key() -> None:
    incoming = Incoming()
    assert incoming.feed(f"{BEGINS}one\ntwo{ENDS}", 0.0) == []
    assert quiet(incoming, 0.0, 2 * QUIET) == [Piece("one\ntwo", True)]
    assert incoming.feed("k", 0.3) == [Piece("k")]


def test_what_was_only_read_late_still_belongs_to_the_paste() -> None:
    incoming = Incoming()
    assert incoming.feed(f"{BEGINS}one{ENDS}q", 0.0) == []
    assert incoming.feed(f"m two{ENDS}", 5.0) == []
    assert quiet(incoming, 5.0, 1.0) == [Piece("oneqm two", True)]


def test_the_mouse_moved_while_the_paste_came_is_still_the_mouse() -> None:
    assert fed(f"{BEGINS}words{ENDS}\x1b[<35;10;4M\x1b[I") == [Piece("words", True), Piece("\x1b[<35;10;4M\x1b[I")]


def test_a_paste_whose_end_never_comes_is_taken_as_it_is() -> None:
    assert fed(f"{BEGINS}words that went") == [Piece("words that went", True)]


@pytest.mark.parametrize("end", ["\r", "\r\n", "\n"])
def test_lines_without_marks_that_come_at_once_are_a_paste(end: str) -> None:
    lines = end.join(f"m q d line {n}" for n in range(500)) + end
    (found,) = fed(lines[:4096], lines[4096:])
    assert found.pasted
    assert found.text == lines


def test_one_line_and_enter_at_once_is_typed_in_and_kept() -> None:
    assert fed("gap is 18 thou\r") == [Piece("gap is 18 thou", True), Piece("\r")]


def test_what_can_be_typed_in_one_reading_is_not_a_paste() -> None:
    assert not came_at_once("a" * (AT_ONCE - 1))
    assert not came_at_once("\x1b[<35;10;4M" * 20)
    assert came_at_once("\x1b[<35;10;4Mthe belt slips")
