"""Shop shorthand: a typed `frt brg` is the front bearing, in the log and when it is looked for."""

from __future__ import annotations

import pytest

from worklog_tui.extract import read_session
from worklog_tui.extract.heard.written_out import changes
from worklog_tui.model import Finding, Machine, Note, Work
from worklog_tui.rulebook import Rulebook

SAW = Machine("Mill saw", kind="twin-cylinder diesel engine", fuel="diesel", cylinders=2)


def parts(book: Rulebook, line: str, track: str = "live") -> list[str]:
    facts = read_session(book, SAW, [Note("n0", "s", line, track=track)])
    return [f.part.lower() for f in facts if isinstance(f, Finding | Work)]


@pytest.mark.parametrize(
    ("line", "part"),
    [
        ("frt brg notchy", "front bearing"),
        ("whl nuts loose", "wheel nuts"),
        ("hd gskt blown", "head gasket"),
        ("sel fork bent", "selector fork"),
        ("str mtr dead", "starter motor"),
        ("m/cyl leaking", "master cylinder"),
        ("h/brake cable frayed", "handbrake cable"),
        ("vlvs pitted", "valves"),
        ("lh spndl worn", "left spindle"),
        ("hd cracked", "head"),
    ],
)
def test_the_log_names_a_part_in_all_its_words(book: Rulebook, line: str, part: str) -> None:
    assert parts(book, line) == [part]


@pytest.mark.parametrize("line", ["press on, nothing bent", "del came round, fan ok", "str8 edge ok"])
def test_letters_that_may_be_another_word_stay_as_they_are(book: Rulebook, line: str) -> None:
    assert not any(word in " ".join(parts(book, line)) for word in ("pressure", "delivery", "starter"))


def test_a_mis_heard_part_stands_in_the_log_as_it_is_meant(book: Rulebook) -> None:
    assert parts(book, "the head casket is torn", track="captions") == ["head gasket"]


def written_out(book: Rulebook, line: str) -> str:
    """The line as it is read."""
    at, whole = 0, ""
    for start, end, meant in changes(line, book):
        whole += line[at:start] + meant
        at = end
    return whole + line[at:]


@pytest.mark.parametrize(
    ("line", "whole"),
    [
        ("drum strnds brkn, 2 blkd", "drum strands broken, 2 blocked"),  # no vowels, and one word has these letters
        ("boom cleand, seal leakng", "boom cleaned, seal leaking"),  # the last vowel of a verb left out
        ("hyd tk drnd, w/sep ok", "hydraulic tank drained, water separator ok"),  # names of several words
        ("Brkn tooth", "Broken tooth"),
        ("chkd/clnd the sump", "checked/cleaned the sump"),
        ("smokes blk, eng blk ok", "smokes black, engine block ok"),  # the word beside it tells which
    ],
)
def test_a_typed_line_is_written_out_before_it_is_read(book: Rulebook, line: str, whole: str) -> None:
    assert written_out(book, line) == whole


@pytest.mark.parametrize(
    "line",
    [
        "flm ok",  # film or flame
        "DTI on the rim, TDC found",  # capitals are the letters of something
        "12 hrs, 4 pts, 3 lbs",  # units
        "by my own try",
        "the old grate rattled and the cloth held",
    ],
)
def test_what_may_be_more_than_one_word_stays_as_it_was_typed(book: Rulebook, line: str) -> None:
    assert written_out(book, line) == line


def test_the_words_of_the_note_are_quoted_as_they_were_typed(book: Rulebook) -> None:
    line = "brw house pmp: drv sprkt brkn, shft ok"
    (first, second) = (f for f in read_session(book, SAW, [Note("n0", "s", line)]) if isinstance(f, Finding))
    assert (first.part, first.condition, first.quote) == ("drive sprocket", "broken", "drv sprkt brkn")
    assert (second.part, second.condition, second.quote) == ("shaft", "ok", "shft ok")
    assert line[second.main.start : second.main.end] == "ok"
    assert line[first.main.start : first.main.end] == "brkn"


def test_talk_is_not_shorthand(book: Rulebook) -> None:
    (fact,) = read_session(book, SAW, [Note("n0", "s", "the drv sprkt is brkn", track="captions")])
    assert isinstance(fact, Finding)
    assert fact.condition == "brkn"
