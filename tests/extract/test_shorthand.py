"""Shop shorthand: a typed `frt brg` is the front bearing, in the log and when it is looked for."""

from __future__ import annotations

import pytest

from worklog_tui.extract import read_session
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
