"""Closing up on the invented machines and on talk nobody tuned it to: few questions, each answered by one act."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest

from tests.bench.conftest import Clock
from worklog_tui import places
from worklog_tui.bench.answering import answer, let_go
from worklog_tui.bench.card import read_card
from worklog_tui.bench.desk import Desk
from worklog_tui.bench.fact_acts import add_fact
from worklog_tui.bench.history import history, would_change
from worklog_tui.bench.looking_over import before_start, closing_up, compression, left, oddities, parts
from worklog_tui.bench.machines import add_machine
from worklog_tui.bench.publishing import published
from worklog_tui.bench.record import import_sessions, keep_note
from worklog_tui.bench.review import open_items
from worklog_tui.bench.undoing import undo
from worklog_tui.logbook.closing_up import MOST
from worklog_tui.logbook.outcomes import Question
from worklog_tui.model import Machine, Work

HERE = Path(__file__).parent
CARDS = sorted([*places.demo_sessions().glob("*/machine.toml"), *(HERE.parent / "cases").glob("*/machine.toml")])


@pytest.fixture
def taken(tmp_path: Path, clock: Clock, request: pytest.FixtureRequest) -> Desk:
    """A desk with the grammars of the program and one machine of the folders."""
    card: Path = request.param
    numbers = iter(range(1, 1 << 30))
    desk = Desk(tmp_path / "l.db", (places.grammars(),), clock, "one", lambda: next(numbers), cache=places.cache())
    machine = add_machine(desk, replace(read_card(card)[0], name="It"))
    import_sessions(desk, machine, sorted(card.parent.glob("session-*.*")))
    return desk


@pytest.mark.parametrize("taken", CARDS, indirect=True, ids=lambda card: card.parent.name)
def test_a_session_asks_few_things_and_nothing_must_be_answered(taken: Desk) -> None:
    for number in range(1, len(history(taken, "It").sessions) + 1):
        asked = closing_up(taken, "It", number)
        assert len(asked.questions) + asked.more <= MOST
        assert len({one.key for one in asked.questions}) == len(asked.questions)
        assert all(one.asks and one.answers and len(one.asks) < 300 for one in asked.questions)
    for look in (parts, left, before_start, oddities, compression):
        look(taken, "It")


@pytest.mark.parametrize("taken", CARDS[:1], indirect=True, ids=lambda card: card.parent.name)
def test_every_answer_is_one_act_and_settles_its_question(taken: Desk) -> None:
    asked = closing_up(taken, "It").questions
    assert asked
    for question in asked:
        for said in (*question.answers, "let go"):
            answer(taken, "It", question, said)
            assert question.key not in {one.key for one in closing_up(taken, "It").questions}, (question, said)
            changed = would_change(taken, "It")
            assert (changed.added, changed.gone) == ((), ())
            undo(taken)
            assert question.key in {one.key for one in closing_up(taken, "It").questions}


@pytest.mark.usefixtures("saw")
def test_answers(desk: Desk, clock: Clock) -> None:
    """With a reader that finds cracks: what was only noticed becomes an item, what was checked a finding."""
    note = keep_note(desk, "Band saw", "the guide is cracked").note
    add_fact(desk, note.uid, "work", {"action": "test", "part": "blade"}, "guide")
    add_fact(desk, note.uid, "work", {"action": "disconnect", "part": "lead", "name": "lead"}, "the")

    def question(kind: str) -> Question:
        return next(one for one in closing_up(desk, "Band saw").questions if one.kind == kind)

    answer(desk, "Band saw", question("noticed"), "come back to it")
    assert [one.state for one in open_items(desk, "Band saw")] == ["open"]
    assert question("off").answers[0] == "connected again"
    answer(desk, "Band saw", question("off"), "connected again")
    works = [fact for fact in history(desk, "Band saw").facts() if fact.kind == "work"]
    assert [getattr(one, "action", "") for one in works] == ["disconnect", "test", "connect"]
    assert left(desk, "Band saw").off == ()
    undo(desk)
    let_go(desk, question("off").key)
    assert left(desk, "Band saw").off == ()


@pytest.mark.usefixtures("saw")
def test_what_was_announced_and_is_said_to_be_done_is_work_done(desk: Desk) -> None:
    keep_note(desk, "Band saw", "I'm going to grease the lower bearing")
    (asked,) = (one for one in closing_up(desk, "Band saw").questions if one.kind == "announced")
    assert asked.asks == "lower bearing: you were going to grease it; was it done?"
    answer(desk, "Band saw", asked, "done")
    (work,) = (fact for fact in history(desk, "Band saw").facts() if isinstance(fact, Work))
    assert (work.action, work.part) == ("lubricate", "lower bearing")
    assert not [one for one in closing_up(desk, "Band saw").questions if one.kind == "announced"]
    undo(desk)
    assert [one for one in closing_up(desk, "Band saw").questions if one.kind == "announced"] == [asked]


def test_a_machine_without_a_word_has_nothing_to_look_over(desk: Desk) -> None:
    add_machine(desk, Machine("Lathe"))
    assert closing_up(desk, "Lathe").questions == ()
    assert left(desk, "Lathe").off == ()
    assert parts(desk, "Lathe").states == ()


DEMOS = sorted(places.demo_sessions().glob("*/machine.toml"))


@pytest.mark.parametrize("taken", DEMOS, indirect=True, ids=lambda card: card.parent.name)
def test_the_sound_parts_of_the_invented_machines_are_not_called_odd(taken: Desk) -> None:
    assert {one.kind for one in oddities(taken, "It")} <= {"book"}, "one line tells two figures of one gap"


@pytest.mark.parametrize("taken", DEMOS[:1], indirect=True)
def test_sums_are_for_the_persons_own_eyes(taken: Desk) -> None:
    keep_note(taken, "It", "new drive belt fitted, that was 14 pounds 50 of anybody's money")
    keep_note(taken, "It", "gave 40 quid for the pair of bearings")
    keep_note(taken, "It", "the table is 40 pounds of cast iron")
    sums = [one.text for one in parts(taken, "It").sums]
    assert "40 quid" in sums
    assert not any("cast iron" in one.told for one in parts(taken, "It").sums)
    out = published(taken, "It")
    told = repr((out.material, out.log(), out.hand_over()))
    assert [text for text in sums if text in told] == [], "what is published says nothing of it"
