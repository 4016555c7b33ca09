"""Two computers change the same thing: both changes are kept, the later counts, and closing up asks once."""

from __future__ import annotations

from collections.abc import Callable
from datetime import timedelta
from pathlib import Path

import pytest

from tests.bench.test_exchange import computer
from tests.bench.test_undoing import Bench
from worklog_tui.bench.act_list import acts
from worklog_tui.bench.answering import answer
from worklog_tui.bench.exchange import merge
from worklog_tui.bench.fact_acts import correct_fact, strike_fact
from worklog_tui.bench.history import history
from worklog_tui.bench.item_acts import add_item, leave_so, mark_done, set_awaited, set_due
from worklog_tui.bench.looking_over import closing_up
from worklog_tui.bench.note_acts import edit_note
from worklog_tui.bench.review import open_items
from worklog_tui.logbook.outcomes import Question
from worklog_tui.model import Due, Fact, OpenItem

SAW = "Band saw"


@pytest.fixture
def two(tmp_path: Path) -> tuple[Bench, Bench]:
    """Two computers with the same log: a cracked guide, and an item."""
    first = Bench(str(tmp_path))
    first.say(0, "the guide is cracked", 0)
    add_item(first.desk, SAW, "oil the arm")
    return first, computer(str(tmp_path), 2, first)


def note(bench: Bench) -> str:
    return bench.notes(SAW)[0].uid


def fact(bench: Bench) -> Fact:
    return history(bench.desk, SAW).facts()[0]


def item(bench: Bench) -> OpenItem:
    return next(one for one in open_items(bench.desk, SAW) if one.about == "oil the arm")


def asked(bench: Bench) -> list[Question]:
    return [one for one in closing_up(bench.desk, SAW).questions if one.kind == "clash"]


def plainly(bench: Bench) -> list[object]:
    """What the log says: words, facts and items."""
    facts = [(one.kind, one.about) for one in history(bench.desk, SAW).facts()]
    items = [(one.about, one.state) for one in open_items(bench.desk, SAW)]
    return [[one.words for one in bench.notes(SAW)], facts, items]


def meet(first: Bench, second: Bench) -> None:
    merge(first.desk, second.desk.logbook)
    merge(second.desk, first.desk.logbook)


Deed = Callable[[Bench], object]
CLASHES: dict[str, tuple[Deed, Deed, str]] = {
    "words": (
        lambda b: edit_note(b.desk, note(b), "the guide is bent"),
        lambda b: edit_note(b.desk, note(b), "the guide is loose"),
        "“the guide is bent”, or “the guide is loose”",
    ),
    "a fact": (
        lambda b: correct_fact(b.desk, fact(b).key, {"part": "fence"}),
        lambda b: correct_fact(b.desk, fact(b).key, {"part": "arm"}),
        "part fence, or part arm",
    ),
    "a fact and nothing": (
        lambda b: correct_fact(b.desk, fact(b).key, {"part": "fence"}),
        lambda b: strike_fact(b.desk, fact(b).key),
        "part fence, or struck out",
    ),
    "an item": (
        lambda b: mark_done(b.desk, SAW, item(b)),
        lambda b: leave_so(b.desk, SAW, item(b)),
        "changed oil the arm without knowing of each other: done, or left so on purpose",
    ),
}


@pytest.mark.parametrize("what", CLASHES)
def test_a_clash_is_asked_about_once(two: tuple[Bench, Bench], what: str) -> None:
    first, second = two
    here, there, says = CLASHES[what]
    there(first)
    second.clock.moment += timedelta(minutes=1)
    here(second)  # later by the clock; the order goes by counter and computer, never by the clock
    meet(first, second)
    assert first.state() == second.state()
    (question,) = asked(first)
    assert says in question.asks
    assert [one.clashes for one in acts(first.desk, SAW)][-2:] == [True, True]
    before = first.state()
    answer(first.desk, SAW, question, "yes")
    assert asked(first) == []
    assert first.state() == before
    meet(first, second)
    assert asked(second) == [], "the answer counts on both"


@pytest.mark.parametrize("what", CLASHES)
def test_the_first_may_count_instead(two: tuple[Bench, Bench], what: str) -> None:
    first, second = two
    here, there, _ = CLASHES[what]
    there(first)
    here(second)
    wanted = plainly(second)
    meet(first, second)
    assert plainly(first) != wanted
    (question,) = asked(second)
    answer(second.desk, SAW, question, "the first")
    assert asked(second) == []
    meet(first, second)
    assert asked(first) == []
    assert plainly(first) == plainly(second) == wanted


def test_what_goes_together_is_no_clash(two: tuple[Bench, Bench]) -> None:
    first, second = two
    set_awaited(first.desk, SAW, item(first))
    set_due(second.desk, SAW, item(second), Due(day="2031-05-01"))
    for bench in two:
        edit_note(bench.desk, note(bench), "the guide is bent")
    meet(first, second)
    assert asked(first) == [], "the same words, and two things of one item that both hold"
    edit_note(second.desk, note(second), "the guide is loose")
    meet(first, second)
    assert asked(first) == [], "what was done in the knowledge of the other is no clash"
