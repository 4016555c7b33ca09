"""What becomes of text on its way in."""

from __future__ import annotations

import time

import pytest
from hypothesis import given
from hypothesis import strategies as st

from worklog_tui.notes.cleaning import sanitise


@pytest.mark.parametrize(
    ("given_text", "kept"),
    [
        ("plug gap 25 thou", "plug gap 25 thou"),
        ("a\x1b[31mred\x1b[0m b", "ared b"),
        ("a\x1b]0;new title\x07b", "ab"),
        ("a\x1b]8;;file:x\x1b\\b", "ab"),
        ("a\x9b2Jb", "ab"),
        ("a\x1bcb", "ab"),
        ("a\x00b\x07c\x7fd\x85e", "abcd\ne"),
        ("a\u202eb\u2066c\u200fd", "abcd"),
        ("a\u200bb\u200dc\ufeffd", "abcd"),
        ("one\r\ntwo\rthree\u2028four\x0cfive", "one\ntwo\nthree\nfour\nfive"),
        ("tab\tstays", "tab\tstays"),
        ("cafe\u0301", "caf\u00e9"),
        ("\u00bd in and 5\u2033", "\u00bd in and 5\u2033"),
        ("a\ud800b", "a\ufffdb"),
        ("[bold]torque [/] 40", "[bold]torque [/] 40"),
    ],
)
def test_what_is_dropped_and_what_stays(given_text: str, kept: str) -> None:
    assert sanitise(given_text) == kept


HOSTILE = st.text(
    st.one_of(
        st.characters(), st.sampled_from("\x00\x1b[]\x07\x9b\x9d\x9c\\m0;\r\n\u0301\u0316\u0344\u202e\ud800\udc00")
    )
)


@given(HOSTILE)
def test_twice_is_the_same_as_once(text: str) -> None:
    once = sanitise(text)
    assert sanitise(once) == once


@given(HOSTILE)
def test_no_control_character_gets_through(text: str) -> None:
    assert not [char for char in sanitise(text) if char not in "\n\t" and (ord(char) < 32 or 0x7F <= ord(char) <= 0x9F)]


def test_a_pile_of_accents_is_cut_to_thirty() -> None:
    assert len(sanitise("o" + "\u0316\u0301" * 500)) <= 31


@pytest.mark.parametrize("unit", ["\x1b[", "\x1b]", "\u0301\u0316", "\u0344", "a", "\r", "\x9b0"])
def test_a_megabyte_takes_well_under_a_second(unit: str) -> None:
    text = "x" + unit * (1_000_000 // len(unit))
    begin = time.perf_counter()
    sanitise(text)
    assert time.perf_counter() - begin < 2
