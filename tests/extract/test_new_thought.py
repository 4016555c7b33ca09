"""Where captions set no stop: a line that begins anew ends the thought before it, one that only goes on does not."""

from __future__ import annotations

import pytest

from worklog_tui.extract.new_thought import begins_anew
from worklog_tui.extract.reader import read_session
from worklog_tui.model import FollowUp, Machine, Note, Reading, Work
from worklog_tui.rulebook import Rulebook

CRIMPER = Machine("Tin crimper", "crimping machine with an electric motor")


@pytest.mark.parametrize(
    ("before", "after"),
    [
        ("ran it twice so happy with that", "tension arm still flops about"),
        ("scrubbed it with a wire brush", "magneto points are burnt"),
        ("the book says it wants to be twelve", "okay the other one then"),
        ("there's muck all over the bottom of it", "forty bent teeth on the rack"),  # `it` takes no figure
        ("so that one's fine", "unplugged it and pulled the lid"),  # what was done, with no subject
        ("and it's in there tight", "no oil in the box at all"),
    ],
)
def test_a_line_begins_anew(book: Rulebook, before: str, after: str) -> None:
    assert begins_anew(before, after, book)


@pytest.mark.parametrize(
    ("before", "after"),
    [
        ("I had to order a new", "shaft seal"),
        ("and the float", "has got a hole in it"),
        ("the reading on that is", "forty two"),
        ("call it eighteen thou", "no wait twenty"),  # put right
        ("eighteen thou", "no twenty"),
        ("battery is at twelve point", "four volts"),
        ("number three", "eighty five"),  # the figure of what was named
        ("it's seized", "because nobody oiled it"),
        ("I've to find a drain", "plug for it"),  # both words are one name
        ("put the lid back on", "the tank"),
        ("the gap on it is eighteen thou", "the book says twenty"),
        ("two cams on this shaft", "left one is bent"),  # only named so far
        ("and if it slips again", "I'll have to get a new one"),  # only supposed so far
        ("The old belt is worn", "right through to the cord."),  # who writes capitals writes stops
    ],
)
def test_a_line_goes_on(book: Rulebook, before: str, after: str) -> None:
    assert not begins_anew(before, after, book)


def facts_of(book: Rulebook, *lines: str) -> list[object]:
    notes = [Note(f"n{i}", "s", line, at=i * 6, track="captions", arrival=i) for i, line in enumerate(lines)]
    return list(read_session(book, CRIMPER, notes))


def test_what_was_used_ends_with_its_line(book: Rulebook) -> None:
    facts = facts_of(book, "brushes were black so cleaned them up with a rag", "drive belt is loose")
    assert [(f.action, f.part, f.used) for f in facts if isinstance(f, Work)] == [("clean", "brushes", "rag")]


def test_a_question_ends_with_its_line(book: Rulebook) -> None:
    facts = facts_of(book, "does anyone know where you get them", "left hand roller I'm leaving as it is")
    assert "where you get them" in [f.about for f in facts if isinstance(f, FollowUp)]


def test_a_figure_is_of_what_its_own_line_names(book: Rulebook) -> None:
    facts = facts_of(
        book, "pulled the jaw off and I can see light", "guide rail it should be half an inch and I got one inch"
    )
    assert {f.subject for f in facts if isinstance(f, Reading)} == {"guide rail"}
