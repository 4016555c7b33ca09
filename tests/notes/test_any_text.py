"""Whatever is pasted: it is read, no word is lost, and the time taken grows with the length."""

from __future__ import annotations

import re
import time

import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from worklog_tui.notes.cleaning import sanitise
from worklog_tui.notes.comments import read_comments
from worklog_tui.notes.keeping import make_notes
from worklog_tui.notes.reading import read_text

TIMES = st.sampled_from(
    ["[0:02] ", "0:05 ", "14:05 ", "(1:12) ", "0:04\n", "00:00:02,000 --> 00:00:04,000\n", "[99:99] ", "3:05 pm "]
)
WORDS = st.text(alphabet="abcxyz ABC,.", min_size=1, max_size=30)
ROWS = st.lists(st.tuples(st.one_of(st.just(""), TIMES), WORDS), max_size=12)
SESSION = ROWS.map(lambda rows: "\n".join(stamp + words for stamp, words in rows))


@given(
    st.one_of(st.text(), SESSION, SESSION.map(lambda text: f"WEBVTT\n\n{text}"), SESSION.map(lambda text: "{" + text))
)
@example("session 0001-01-01 00:00 +23:59\n00:01 a")
@example("session 9999-12-31 23:59 -23:59\n23:59 a\n00:01 b")
@example('{"segments": [{"text": "a", "start": 1e999}]}')
@example("[" * 100_000)
def test_reading_never_fails(text: str) -> None:
    read = read_text(text)
    make_notes(read, "m")
    read_comments(text)
    for complaint in read.complaints:
        assert re.match(r"line \d+: ", complaint)


@given(SESSION)
def test_every_word_survives(text: str) -> None:
    words = set(re.findall(r"[a-zA-Z]+", re.sub(r"\d:\d\d pm", "", sanitise(text))))
    kept = set(re.findall(r"[a-zA-Z]+", " ".join(line.words for line in read_text(text).lines)))
    assert words <= kept


@given(SESSION)
def test_the_written_order_is_the_order_in_time(text: str) -> None:
    times = [line.at for line in read_text(text).lines if line.at is not None]
    assert times == sorted(times)


HOSTILE = [
    "a", "[", "(", "<", "<a", "0:", "1:11", "0:00 ", "[0:02] x ", "[ ", "{\\", '{"a":', " - A", "a@", "a.", "x. ",
    "0:00 --> 0:01\n", "WEBVTT\n\n00:99.000 --> 00:01.000\nab\n\n", "x\n", "\u0301\u0316", "Cheers ", " ",
]  # fmt: skip


@pytest.mark.parametrize("unit", HOSTILE)
def test_time_grows_with_the_length_only(unit: str) -> None:
    text = "x" + unit * (200_000 // len(unit)) if not unit.startswith("WEBVTT") else unit * (200_000 // len(unit))
    begin = time.perf_counter()
    read_text(text)
    read_comments(text)
    assert time.perf_counter() - begin < 3
