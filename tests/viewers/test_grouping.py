"""Comments with known groups, on three invented machines: how well they are told apart and put together.

Pairs of comments are counted: right when both stand in one group here and by the file. Chatter is counted by its kind.
The rope way was kept back until the grouping was done.
"""

from __future__ import annotations

import random
import tomllib
from dataclasses import dataclass
from itertools import combinations
from pathlib import Path

import pytest

from worklog_tui import places
from worklog_tui.logbook.answers import read_all
from worklog_tui.logbook.comment_groups import grouped
from worklog_tui.logbook.comment_topics import Asked
from worklog_tui.logbook.comment_words import load_comment_words
from worklog_tui.model import Comment, History, Machine
from worklog_tui.rulebook import Rulebook

FLOORS = {"sawmill": (0.98, 0.94), "laundry": (0.98, 0.95), "ropeway": (0.96, 0.88)}
"Share of right kinds, and F1 over pairs: they may only rise."


@dataclass(frozen=True)
class Told:
    """A comment with what it is and the group that a person put it in."""

    group: str
    kind: str
    words: str


def comments(name: str, order: int = 3) -> list[Told]:
    """The comments of a file, shuffled as they come in."""
    groups = tomllib.loads((Path(__file__).with_name(f"{name}.toml")).read_text(encoding="utf-8"))["group"]
    rows = [Told(group["asks"], group["is"], words) for group in groups for words in group["comments"]]
    random.Random(order).shuffle(rows)
    return rows


def measured(book: Rulebook, rows: list[Told]) -> tuple[float, float, float]:
    """Share of right kinds; precision and recall over the pairs that are not both chatter."""
    said = [Comment(number, row.words) for number, row in enumerate(rows)]
    found = read_all(History(Machine("machine")), load_comment_words([places.grammars()]), book.table, said)
    right = together = wanted = 0
    for (one, a), (other, b) in combinations(zip(rows, found, strict=True), 2):
        if one.kind == other.kind == "chatter":
            continue
        here = a.kind != "chatter" and (a.kind, a.about) == (b.kind, b.about)
        there = one.group == other.group
        right, together, wanted = right + (here and there), together + here, wanted + there
    kinds = sum(row.kind == read.kind for row, read in zip(rows, found, strict=True)) / len(rows)
    return kinds, right / together, right / wanted


@pytest.mark.parametrize("name", FLOORS)
def test_comments_that_ask_the_same_come_together(name: str, book: Rulebook) -> None:
    kinds, precision, recall = measured(book, comments(name))
    f1 = 2 * precision * recall / (precision + recall)
    print(f"{name}: kinds {kinds:.3f}, pairs precision {precision:.3f} recall {recall:.3f} F1 {f1:.3f}")
    assert kinds >= FLOORS[name][0] - 0.001
    assert f1 >= FLOORS[name][1] - 0.001


def test_the_order_in_which_they_come_changes_little(book: Rulebook) -> None:
    for order in (1, 2, 4):
        _, precision, recall = measured(book, comments("sawmill", order))
        assert 2 * precision * recall / (precision + recall) >= 0.85


def asked(*words: str) -> Asked:
    return Asked(" ".join(words), frozenset(words), words)


def test_a_question_and_a_suggestion_are_never_one_group() -> None:
    both = [asked("cam chain"), asked("cam chain")]
    assert grouped(["question", "suggestion"], both, ["cam chain worn", "cam chain worn"]) == [0, 1]


def test_comments_without_a_telling_word_do_no_harm() -> None:
    assert grouped(["question"] * 3, [asked(), asked(), asked("rope")], ["", "?", "rope"]) == [0, 1, 2]
