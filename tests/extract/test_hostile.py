"""Whatever the text, reading takes time in proportion to its length, and never fails."""

from __future__ import annotations

import time

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from worklog_tui.extract import Context, feed
from worklog_tui.extract.reader import read_session
from worklog_tui.model import Machine, Note
from worklog_tui.rulebook import Rulebook

PLAIN = Machine("Pump", cylinders=4)


def seconds(book: Rulebook, words: str) -> float:
    start = time.perf_counter()
    feed(book, PLAIN, Context.start(), Note("n", "s", words, track="captions"))
    return time.perf_counter() - start


@pytest.mark.parametrize(
    "piece",
    [
        "one ",
        "1 ",
        "x",
        "inlet valve is ",
        "twenty and a ",
        "set the ",
        "valve spring is cracked ",
        "- ",
        "(",
        "no ",
        "if ",
        "or the ",
    ],
)
def test_twice_the_text_takes_about_twice_the_time(book: Rulebook, piece: str) -> None:
    short, long = piece * (8_000 // len(piece)), piece * (32_000 // len(piece))
    seconds(book, short)
    one, four = min(seconds(book, short) for _ in range(2)), seconds(book, long)
    assert four < 12 * one + 0.05, f"{one:.3f} s for 8,000 characters, {four:.3f} s for four times as many"


@settings(max_examples=60, deadline=None)
@given(words=st.text(max_size=200))
def test_any_text_is_read(book: Rulebook, words: str) -> None:
    feed(book, PLAIN, Context.start(), Note("n", "s", words, track="captions"))
    feed(book, PLAIN, Context.start(), Note("n", "s", words, track="typed"))


@pytest.mark.parametrize("track", ["captions", "typed"])
@pytest.mark.parametrize(
    "last", "with w/ without at to in on by and or not no under over than from for if when after x -> = @".split()
)
def test_a_line_may_end_with_any_small_word(book: Rulebook, last: str, track: str) -> None:
    for words in (
        "the coil reads twelve volts",
        "1.2 ohms",
        "the gasket is torn",
        "I fitted a new valve",
        "maybe the pump",
    ):
        feed(book, PLAIN, Context.start(), Note("n", "s", f"{words} {last}", track=track))
        feed(book, PLAIN, Context.start(), Note("n", "s", f"{last} {words}", track=track))


@pytest.mark.parametrize(
    "line",
    [
        "the hose in the comments they know",
        "so dont let anyone sell",
        "the pump is shot if anyone there has",
        "yeah anybody know",
    ],
)
def test_a_line_may_end_before_what_is_asked_is_said(book: Rulebook, line: str) -> None:
    for track in ("captions", "typed"):
        read_session(book, PLAIN, [Note("a", "s", line, track=track, arrival=0)])


def test_of_a_line_without_end_the_beginning_is_read(book: Rulebook) -> None:
    """1 MB in one note, and the same cut into notes: what is read of it is bounded."""
    words = "the valve is cracked at 12 psi " * 32_000
    start = time.process_time()
    feed(book, PLAIN, Context.start(), Note("n", "s", words, track="captions"))
    context = Context.start()
    for n in range(0, len(words), 4_000):
        context, _ = feed(book, PLAIN, context, Note(f"n{n}", "s", words[n : n + 4_000], track="captions"))
    assert time.process_time() - start < 8
