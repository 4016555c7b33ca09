"""Typed in a row: figures in the order of the cylinders, numbers that tell which ones, and numbers that only count."""

from __future__ import annotations

import pytest

from worklog_tui.extract.reader import read_session
from worklog_tui.model import Finding, Machine, Note, Reading
from worklog_tui.rulebook import Rulebook

FOUR = Machine("Ice resurfacer", "four-cylinder gas engine", fuel="gas", ignition="electronic", cylinders=4)


@pytest.mark.parametrize(
    ("words", "track"),
    [
        ("comp 150 148 152 120", "live"),
        ("comp: 150, 148, 152, 120", "live"),
        ("compression one fifty, one forty eight, one fifty two, one twenty", "captions"),
    ],
)
def test_as_many_figures_as_cylinders_are_told_in_their_order(book: Rulebook, words: str, track: str) -> None:
    facts = read_session(book, FOUR, [Note("n", "s", words, track=track)])
    told = [(f.subject, f.value) for f in facts if isinstance(f, Reading)]
    assert told == [("cylinder 1", 150), ("cylinder 2", 148), ("cylinder 3", 152), ("cylinder 4", 120)]


def test_fewer_figures_are_of_no_cylinder(book: Rulebook) -> None:
    facts = read_session(book, FOUR, [Note("n", "s", "comp 150 148", track="live")])
    assert {f.subject for f in facts if isinstance(f, Reading)} == {"all cylinders"}


def test_plug_gaps_in_a_row_are_each_of_a_plug(book: Rulebook) -> None:
    facts = read_session(book, FOUR, [Note("n", "s", "plugs .044 .045 .044 .052", track="live")])
    assert [f.subject for f in facts if isinstance(f, Reading)] == ["plug 1", "plug 2", "plug 3", "plug 4"]


@pytest.mark.parametrize(
    ("words", "states"),
    [
        ("plugs 1, 2 and 3 tan, 4 black", [("plugs 1, 2 and 3", "good"), ("plugs 4", "bad")]),
        ("plugs 1 and 3 wet", [("plugs 1 and 3", "bad")]),
        ("plugs: 1 3 4 tan, 2 sooty", [("1 and 3 and 4 plugs", "good"), ("plugs 2", "bad")]),
    ],
)
def test_numbers_with_a_state_behind_them_tell_which_ones(
    book: Rulebook, words: str, states: list[tuple[str, str]]
) -> None:
    facts = read_session(book, FOUR, [Note("n", "s", words, track="live")])
    assert [(f.part, f.verdict) for f in facts if isinstance(f, Finding)] == states
    assert not any(isinstance(f, Reading) for f in facts)


@pytest.mark.parametrize("words", ["repacked the wash pump, 4 rings", "so it's the rings on 4"])
def test_a_number_of_rings_is_no_gap(book: Rulebook, words: str) -> None:
    facts = read_session(book, FOUR, [Note("n", "s", words, track="live")])
    assert not any(isinstance(f, Reading) for f in facts)
