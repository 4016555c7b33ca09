"""Comments on invented machines and their logs: what each is, what it is about, and the line that answers it.

The talk and the comments were written, and labelled, before anybody looked at what is made of them. Three sets of
sixty came one after the other, and after each the causes of what was missed were mended: of the answered ones 24 of
39, 18 of 41 and 31 of 40 were found at first sight; nothing was mended for the last set (`LOOKED_AT_ONCE`), of which
26 were found before all of it; two were given up again for the rule that only a figure answers a question for one.

Three more machines (`MOSTLY_UNANSWERED`) have comments of which the log answers fewer than half, though it names what
each is about: a figure that was never read, a deed that was not done. On two of them 16 of 26 were falsely answered,
and 21 of 89 over the others, before a line had to tell what is asked of the part; the drum came after that, and 3 of
its 13 were at first sight. What is shown as only perhaps the answer is counted as an answer here.

Floors may only rise. `pytest tests/viewers -s` prints the figures; `WORKLOG_MISSES=1` what is missed.
"""

from __future__ import annotations

import os
import tomllib
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import pytest

from worklog_tui import places
from worklog_tui.bench.card import read_card
from worklog_tui.bench.extract_files import extract
from worklog_tui.logbook.words import FILLER, one_form, raw_words
from worklog_tui.model import CommentReading
from worklog_tui.rulebook import Rulebook
from worklog_tui.rulebook.faults import load_faults

HERE = Path(__file__).with_name("answered")
FLOORS = {
    "mist-blower": (19, 17, 10, 0),
    "fire-pump": (18, 18, 10, 2),
    "dough-mixer": (18, 18, 11, 1),
    "quarry-dumper": (19, 17, 10, 0),
    "snow-blower": (20, 20, 11, 0),
    "upholstery-sewing-machine": (20, 19, 12, 2),
    "variator-moped": (20, 20, 12, 0),
    "day-boat-twin": (19, 19, 10, 0),
    "hall-projector": (20, 19, 8, 0),
    "plate-compactor": (18, 18, 8, 1),
}
LOOKED_AT_ONCE = {
    "carvers-compressor": (19, 18, 10, 1),
    "hillclimb-cyclecar": (17, 17, 10, 2),
    "letterpress-treadle": (19, 18, 9, 1),
}
MOSTLY_UNANSWERED = {
    "beet-washer": (21, 21, 5, 2),
    "cheese-press": (22, 22, 7, 2),
    "bell-chime-drum": (21, 18, 4, 2),
}
ALL = FLOORS | LOOKED_AT_ONCE | MOSTLY_UNANSWERED
"Right kinds, right topics, right answers at least; answers to what nothing answers at most."
NEAR = 3  # lines: a thing is often told over several
FURTHER = 6  # words that a topic may say more than its label


@dataclass(frozen=True)
class Judged:
    """Counts over the comments of one machine."""

    kinds: int
    topics: int
    answers: int
    wanted: int
    "Comments that the log answers."
    false: int
    "Answers where the log has none."
    missed: tuple[str, ...]


def stemmed(text: str) -> set[str]:
    return {one_form(w) for w in raw_words(text) if w not in FILLER}


def same_topic(read: str, labels: list[str]) -> bool:
    """Whether the words of a label are in what was read, all but one of four, and not much else."""
    mine = stemmed(read)
    for label in labels:
        theirs = stemmed(label)
        if len(theirs & mine) >= len(theirs) - (len(theirs) > 3) and len(mine - theirs) <= FURTHER:
            return True
    return False


def same_place(read: CommentReading, label: list[Any], sessions: list[list[str]]) -> bool:
    if read.answered is None or read.answered.session != label[0]:
        return False
    times = [line.split()[0].strip("[]") for line in sessions[label[0] - 1]]
    return abs(times.index(read.answered.at) - times.index(label[1])) <= NEAR


def judge(book: Rulebook, name: str, folder: Path) -> tuple[Judged, int]:
    data = tomllib.loads((HERE / f"{name}.toml").read_text(encoding="utf-8"))
    told = [session["lines"].strip().splitlines() for session in data["session"]]
    paths = [folder / f"session-{number}.txt" for number, _ in enumerate(told, 1)]
    for path, lines in zip(paths, told, strict=True):
        path.write_text("\n".join(lines), encoding="utf-8")
    written = folder / "comments.txt"
    written.write_text("\n\n".join(one["words"] for one in data["comment"]), encoding="utf-8")
    toml = folder / "machine.toml"
    toml.write_text("\n".join(f"{key} = {value!r}" for key, value in data["machine"].items()), encoding="utf-8")
    card, _ = read_card(toml)
    lines = [[line for line in lines if not line.startswith("session ")] for lines in told]
    got = extract(book, load_faults([places.grammars()]), card, paths, written).comments
    assert len(got) == len(data["comment"])
    kinds = topics = answers = wanted = false = 0
    missed = []
    for read, label in zip(got, data["comment"], strict=True):
        kind = read.kind == label["is"]
        topic = same_topic(read.about or "", label["about"]) if label.get("about") else not read.about
        kinds, topics = kinds + kind, topics + topic
        if "answered" in label:
            right = any(same_place(read, place, lines) for place in (label["answered"], *label.get("also_at", ())))
            wanted, answers = wanted + 1, answers + right
        else:
            right = read.answered is None
            false += not right
        if not (kind and topic and right):
            at = f"{read.answered.session} {read.answered.at}" if read.answered else "none"
            missed.append(f"{label} -> {read.kind} “{read.about}” {at}")
    return Judged(kinds, topics, answers, wanted, false, tuple(missed)), len(got)


@pytest.mark.parametrize("name", ALL)
def test_comments_are_told_apart_named_and_answered(name: str, book: Rulebook, tmp_path: Path) -> None:
    found, count = judge(book, name, tmp_path)
    print(
        f"\n{name}: kind {found.kinds}/{count}, about {found.topics}/{count}, "
        f"answered {found.answers}/{found.wanted}, falsely {found.false}"
    )
    if os.environ.get("WORKLOG_MISSES"):
        print("\n".join(found.missed))
    kinds, topics, answers, false = ALL[name]
    assert found.kinds >= kinds
    assert found.topics >= topics
    assert found.answers >= answers
    assert found.false <= false


def test_the_judge_asks_for_the_words_of_a_label() -> None:
    assert same_topic("gap of the points", ["points gap"])
    assert not same_topic("points", ["points gap"])
    assert not same_topic("gap", ["points gap", "breaker"])
