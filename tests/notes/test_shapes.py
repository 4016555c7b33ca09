"""A handbook of the shapes in which a session may be pasted, and what each is read into."""

from __future__ import annotations

import pytest

from worklog_tui.notes.lines import ReadSession
from worklog_tui.notes.reading import read_text

Rows = list[tuple[int | None, str, str]]


def rows(read: ReadSession) -> Rows:
    """Seconds, time as written and words of each line."""
    return [(line.at, line.said_at, line.words) for line in read.lines]


FILM: dict[str, tuple[str, Rows]] = {
    "time in square brackets": (
        "[0:04] gate lifts\n[1:02:03] gate drops",
        [(4, "0:04", "gate lifts"), (3723, "1:02:03", "gate drops")],
    ),
    "time bare": ("0:04 gate lifts\n31:10 gate drops", [(4, "0:04", "gate lifts"), (1870, "31:10", "gate drops")]),
    "time glued to the words": (
        "00:04gate lifts\n00:09gate drops",
        [(4, "00:04", "gate lifts"), (9, "00:09", "gate drops")],
    ),
    "time above the words": (
        "0:04\ngate lifts\n0:09\ngate\ndrops",
        [(4, "0:04", "gate lifts"), (9, "0:09", "gate drops")],
    ),
    "time above the words, once more in words": (
        "0:04\n4 seconds\ngate lifts\n1:09\n1 minute, 9 seconds\ngate drops",
        [(4, "0:04", "gate lifts"), (69, "1:09", "gate drops")],
    ),
    "time glued to itself in words": (
        "0:044 secondsgate lifts\n1:091 minute, 9 secondsgate drops",
        [(4, "0:04", "gate lifts"), (69, "1:09", "gate drops")],
    ),
    "range below the words": (
        "gate lifts\n0:00:040:00:07\ngate drops\n0:00:090:00:12",
        [(4, "0:00:04", "gate lifts"), (9, "0:00:09", "gate drops")],
    ),
    "times inside a line": (
        "[0:04] gate lifts [0:09] gate drops",
        [(4, "0:04", "gate lifts"), (9, "0:09", "gate drops")],
    ),
    "times behind the words": (
        "the gate lifts (1:24); then it drops (1:42)",
        [(84, "1:24", "the gate lifts"), (102, "1:42", "then it drops")],
    ),
    "a range without minutes behind": ("lifting (:30-2:48)", [(30, "0:30", "lifting")]),
    "range in brackets": (
        "[00:00:04.000 --> 00:00:09.500]  gate lifts\n[00:00:09.500 --> 00:00:11.000]  gate drops",
        [(4, "00:00:04", "gate lifts"), (9, "00:00:09", "gate drops")],
    ),
    "segments": (
        '{"segments": [{"text": " gate lifts", "start": 4.9, "stop": 6}, {"text": "gate drops", "start": "9.2"}]}',
        [(4, "0:04", "gate lifts"), (9, "0:09", "gate drops")],
    ),
    "SubRip": (
        "1\n00:00:04,100 --> 00:00:06,000\n{\\an8}<i>gate</i>\nlifts\n\n2\n01:00:09,000 --> 01:00:11,000\ngate drops\n",
        [(4, "0:04", "gate lifts"), (3609, "1:00:09", "gate drops")],
    ),
    "SubRip without numbers, a blank line inside, a number said": (
        "00:00:04,100 --> 00:00:06,000\ngate\n\nlifts\n00:00:09,000 --> 00:00:11,000\n40\n",
        [(4, "0:04", "gate lifts"), (9, "0:09", "40")],
    ),
    "WebVTT": (
        "WEBVTT\nKind: captions\n\nNOTE nothing\n\none\n"
        "00:04.900 --> 00:06.000 align:start\n<v Ann>gate &amp; lift\n- drops",
        [(4, "0:04", "gate & lift - drops")],
    ),
    "speakers and sounds": (
        "[0:04] >> it lifts >> it does\n[0:09] [Music]",
        [(4, "0:04", ">> it lifts >> it does"), (9, "0:09", "[Music]")],
    ),
    "capitals": ("[0:04] GATE LIFTS", [(4, "0:04", "GATE LIFTS")]),
}


@pytest.mark.parametrize("shape", FILM)
def test_film_times(shape: str) -> None:
    text, expected = FILM[shape]
    read = read_text(text)
    assert (read.track, rows(read), read.complaints) == ("captions", expected, ())


TYPED: dict[str, tuple[str, Rows]] = {
    "below a header": (
        "session 2031-04-12 14:00\n14:05 lid off\n15:10 lid on",
        [(300, "14:05", "lid off"), (4200, "15:10", "lid on")],
    ),
    "without a header": ("14:05 lid off\n15:10 lid on", [(0, "14:05", "lid off"), (3900, "15:10", "lid on")]),
    "past midnight": (
        "session 2031-04-12 23:50\n23:52 lid off\n00:10 lid on",
        [(120, "23:52", "lid off"), (1200, "00:10", "lid on")],
    ),
    "half days": ("11:50 am lid off\n12:10 pm lid on", [(0, "11:50 am", "lid off"), (1200, "12:10 pm", "lid on")]),
    "am as a word": ("9:05 am going to lift\n9:15 done", [(0, "9:05", "am going to lift"), (600, "9:15", "done")]),
    "a time above several rows": (
        "14:05\nlid off\nseal gone\n14:20\ntea",
        [(0, "14:05", "lid off"), (0, "14:05", "seal gone"), (900, "14:20", "tea")],
    ),
    "readings by cylinder behind the time": ("14:05 1:90 2:95 3:40", [(0, "14:05", "1:90 2:95 3:40")]),
    "with a dash": ("14:05 - lid off", [(0, "14:05", "lid off")]),
    "no time at all": ("lid off\n\nseal gone", [(None, "", "lid off"), (None, "", "seal gone")]),
    "readings by cylinder only": ("1:40 2:45 3:38", [(None, "", "1:40 2:45 3:38")]),
}


@pytest.mark.parametrize("shape", TYPED)
def test_times_of_day(shape: str) -> None:
    text, expected = TYPED[shape]
    read = read_text(text)
    assert (read.track, rows(read), read.complaints) == ("typed", expected, ())


@pytest.mark.parametrize(
    ("line", "utc", "offset"),
    [
        ("session 2031-04-12 14:05", "2031-04-12T14:05:00Z", 0),
        ("Session: 2031-4-12 14:05", "2031-04-12T14:05:00Z", 0),
        ("session 2031-04-12 14:05 +02:00", "2031-04-12T12:05:00Z", 120),
        ("session 2031-04-12T14:05Z", "2031-04-12T14:05:00Z", 0),
    ],
)
def test_the_header_gives_the_start(line: str, utc: str, offset: int) -> None:
    header = read_text(f"\n{line}\n14:06 lid off").header
    assert header is not None
    assert (header.utc, header.offset, header.known, header.zone) == (utc, offset, "header", "")


def test_a_header_with_the_day_only_begins_with_the_first_time() -> None:
    header = read_text("session 2031-04-12\n14:06 lid off").header
    assert header is not None
    assert header.utc == "2031-04-12T14:06:00Z"


def test_an_impossible_day_is_named_and_the_words_are_kept() -> None:
    read = read_text("session 2031-02-30 14:05\nlid off")
    assert read.header is None
    assert "line 1:" in read.complaints[0]
    assert "lid off" in [line.words for line in read.lines]


def test_a_film_below_a_header_is_a_film() -> None:
    read = read_text("session 2031-04-12 14:05\n0:04 gate lifts")
    assert (read.track, rows(read)) == ("captions", [(4, "0:04", "gate lifts")])


def test_a_typed_time_that_goes_back_keeps_its_place_and_is_named() -> None:
    read = read_text("14:05 lid off\n14:20 seal gone\n14:10 new seal\n14:30 lid on")
    assert [line.at for line in read.lines] == [0, 900, 900, 1500] or [line.at for line in read.lines] == [
        0,
        0,
        300,
        1500,
    ]
    assert len(read.complaints) == 1
    assert "out of step" in read.complaints[0]


def test_one_time_far_ahead_is_the_slip_and_not_all_that_follow() -> None:
    read = read_text("14:05 lid off\n19:20 seal gone\n14:25 new seal\n14:30 lid on")
    assert [line.at for line in read.lines] == [0, 0, 1200, 1500]
    assert read.complaints == ("line 2: the time 19:20 is out of step; the written order is kept",)


def test_times_that_start_again_are_a_further_clip() -> None:
    read = read_text("[0:04] gate lifts\n[9:00] gate drops\n[0:02] second clip")
    assert [(line.at, line.said_at) for line in read.lines] == [(4, "0:04"), (540, "9:00"), (542, "0:02")]
    assert read.complaints == ("line 3: the times start again at 0:02; taken as a further clip",)


def test_rolling_captions_say_each_word_once() -> None:
    text = (
        "[0:02] lift the\n[0:04] lift the gate\n[0:06] the gate and hold\n[0:08] and hold it there\n[0:10] it there now"
    )
    assert [line.words for line in read_text(text).lines] == ["lift the", "gate", "and hold", "it there", "now"]


def test_rolling_captions_in_two_rows() -> None:
    cues = [" \nlift the gate", "lift the gate\nand hold it", "and hold it\nthen let go", "then let go\nslowly"]
    text = "WEBVTT\n\n" + "\n\n".join(f"00:0{n}.000 --> 00:0{n + 1}.000\n{cue.strip()}" for n, cue in enumerate(cues))
    assert [line.words for line in read_text(text).lines] == ["lift the gate", "and hold it", "then let go", "slowly"]


def test_what_is_said_twice_stays_twice() -> None:
    text = "[0:02] come on\n[0:04] come on\n[0:06] it moves\n[0:08] there\n[0:10] we have it\n[0:12] good\n[0:14] tea"
    assert [line.words for line in read_text(text).lines][:2] == ["come on", "come on"]


def test_a_wrapped_thought_is_one_note() -> None:
    read = read_text("[0:04] the gate lifts as far as\nthe stop and no more\n[0:09] it drops\n    like a stone")
    assert [line.words for line in read.lines] == [
        "the gate lifts as far as the stop and no more",
        "it drops like a stone",
    ]


def test_a_line_without_a_time_is_named_and_kept() -> None:
    read = read_text("14:05 lid off.\nBall race gone\n14:20 lid on")
    assert rows(read)[1] == (None, "", "Ball race gone")
    assert read.complaints == ("line 2: no time in front; kept without one",)


def test_a_broken_caption_keeps_its_words() -> None:
    read = read_text("WEBVTT\n\n00:99.000 --> 00:02.000\nlost time\n\n00:03.000 --> 00:04.000\nfine\n")
    assert rows(read) == [(None, "", "lost time"), (3, "0:03", "fine")]
    assert read.complaints == ("line 3: the time of this caption could not be read; kept without one",)


def test_line_numbers_are_those_of_the_text() -> None:
    assert [line.number for line in read_text("\n[0:04] a\n\n[0:09] b").lines] == [2, 4]
    vtt = "WEBVTT\n\n00:01.000 --> 00:02.000\na\n\n00:03.000 --> 00:04.000\nb\n"
    assert [line.number for line in read_text(vtt).lines] == [3, 6]


def test_broken_paragraphs_are_put_together() -> None:
    text = (
        "The gate has been standing open since the last flood took the lower\n"
        "hinge, and nobody has been able to close it by hand or by the winch\nsince.\n\nWe start with the hinge."
    )
    assert [line.words[-10:] for line in read_text(text).lines] == ["nch since.", "the hinge."]


def test_long_lines_are_cut_at_sentence_marks_with_the_same_time() -> None:
    read = read_text("[0:04] " + "the gate lifts and then it drops again. " * 300)
    assert len(read.lines) > 1
    assert {line.said_at for line in read.lines} == {"0:04"}
    assert all(len(line.words) <= 4000 and line.words.endswith(".") for line in read.lines)


def test_nothing_gives_nothing() -> None:
    assert read_text("").lines == ()
    assert read_text(" \n\t\n").lines == ()


def test_a_control_written_as_an_entity_is_cleaned_too() -> None:
    read = read_text("WEBVTT\n\n00:01.000 --> 00:02.000\na&#27;[2Jb &rlm;c &#x202e;d &lt;i&gt;\n")
    assert read.lines[0].words == "a[2Jb c d <i>"


def test_words_behind_the_header_are_kept() -> None:
    read = read_text("session 2031-04-12 14:00 winch house\n14:05 lid off")
    assert (read.header_text, rows(read)) == (
        "2031-04-12 14:00",
        [(None, "", "winch house"), (300, "14:05", "lid off")],
    )


def test_a_second_header_is_named() -> None:
    read = read_text("session 2031-04-12 14:00\n14:05 lid off\nsession 2031-04-19 09:00\n09:05 lid on")
    assert "line 3: a further session begins here; paste each one by itself to keep its date" in read.complaints


def test_a_span_of_the_day_keeps_its_end() -> None:
    assert rows(read_text("14:05 to 14:20 soaking\n14:30-15:00 tea")) == [
        (0, "14:05", "to 14:20 soaking"),
        (1500, "14:30", "15:00 tea"),
    ]


def test_a_ratio_in_front_of_prose_is_no_time() -> None:
    text = "1:50 is the mix that it wants.\n\nThe can is empty.\n\nSo we stop."
    assert [line.at for line in read_text(text).lines] == [None, None, None]


def test_one_film_time_among_times_of_day() -> None:
    read = read_text("14:05 lid off\n[0:30] see the clip\n14:10 seal gone\n14:20 lid on")
    assert read.track == "typed"
    assert rows(read)[1:3] == [(None, "", "[0:30] see the clip"), (300, "14:10", "seal gone")]


def test_a_twelve_hour_dial_goes_past_noon() -> None:
    read = read_text("session 2031-04-12 09:00\n9:05 lid off\n12:30 tea\n1:15 lid on\n2:00 done")
    assert [line.at for line in read.lines] == [300, 12600, 15300, 18000]
    assert read.complaints == ("line 4: the time 1:15 is taken as past noon",)


def test_speakers_above_their_words() -> None:
    text = "Speaker 1  0:04\nThe gate lifts.\n\nSpeaker 2  0:09\nIt drops."
    assert rows(read_text(text)) == [(4, "0:04", "The gate lifts."), (9, "0:09", "It drops.")]


@pytest.mark.parametrize("line", ["- 14:05 lid off", "* 14:05 | lid off", "\u2022 14:05: lid off"])
def test_bullets_and_bars_around_a_time(line: str) -> None:
    assert rows(read_text(line)) == [(0, "14:05", "lid off")]


@pytest.mark.parametrize(
    ("start", "typed", "at"),
    [
        ("14:00", "2:05", 300),
        ("13:00", "1:05", 300),
        ("22:00", "10:05", 300),
        ("12:00", "12:05", 300),
        ("9:00", "9:05", 300),
    ],
)
def test_a_dial_below_a_24_hour_header(start: str, typed: str, at: int) -> None:
    assert rows(read_text(f"session 2031-04-12 {start}\n{typed} lid off")) == [(at, typed, "lid off")]


def test_a_film_below_a_header_at_noon_is_a_film() -> None:
    assert read_text("session 2031-04-12 12:00\n0:03 gate lifts").track == "captions"


def test_a_sentence_that_ends_in_a_time_keeps_its_words() -> None:
    text = "Started at 14:05\nlid off\nStopped at 14:20\ntea"
    assert [line.words for line in read_text(text).lines] == text.split("\n")


def test_one_word_said_all_through_is_not_rolling() -> None:
    assert len(read_text("\n".join(f"[0:{n:02}] yes." for n in range(10, 30))).lines) == 20


def test_each_caption_twice_is_rolling() -> None:
    text = "\n".join(f"[0:{n:02}] step {n // 2}" for n in range(10, 20))
    assert [line.words for line in read_text(text).lines] == [f"step {n}" for n in range(5, 10)]
