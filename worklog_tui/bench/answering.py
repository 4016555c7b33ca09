"""Answers to the questions of closing up: each is one act, and can be taken back."""

from __future__ import annotations

from typing import TYPE_CHECKING

from worklog_tui import store
from worklog_tui.bench import fact_acts, item_acts
from worklog_tui.bench.acting import CannotAct, Done, acting, sign
from worklog_tui.logbook.clashes import told
from worklog_tui.logbook.closing_up import AGAIN
from worklog_tui.logbook.outcomes import Clash, Question
from worklog_tui.model import Fact, Work

if TYPE_CHECKING:
    from worklog_tui.bench.desk import Desk


def answer(desk: Desk, machine: str, question: Question, said: str) -> Done:
    """Do what an answer means; it must be one of the question's answers, or `let go`: do not ask again."""
    if said == "let go" or said in ("still so", "not yet", "nothing to say", "no longer"):
        return let_go(desk, question.key)
    if said not in question.answers:
        raise CannotAct(f"The answers are {', '.join(question.answers)}, or let go.")
    if question.clash is not None:
        return let_go(desk, question.key) if said == "yes" else _first_of(desk, question.clash)
    if question.item is not None:
        return _on_item(desk, machine, question, said)
    if (job := question.promised) is not None:
        told = {"action": job.action, "part": job.part, "name": ""}
        return fact_acts.add_fact(desk, job.note.uid, "work", told, fact_acts.AFTER)
    assert question.fact is not None
    match said:
        case "yes":
            return fact_acts.confirm_fact(desk, question.fact)
        case "no":
            return fact_acts.strike_fact(desk, question.fact)
        case _ if said in AGAIN.values():
            work = _of(desk, question)
            part = work.part if isinstance(work, Work) else work.about
            told = {"action": _back(work), "part": part, "name": getattr(work, "name", "")}
            return fact_acts.add_fact(desk, question.fact.note, "work", told, fact_acts.AFTER)
        case _:
            part = _of(desk, question).about
            condition = "in order" if said == "good" else "not in order"
            told = {"part": part, "condition": condition, "verdict": said}
            return fact_acts.add_fact(desk, question.fact.note, "finding", told, fact_acts.AFTER)


def let_go(desk: Desk, key: str) -> Done:
    """Do not ask again about what a key of a question names."""
    with acting(desk) as connection:
        act = sign(desk, connection, "let go", key, None)
    return Done(act, "That will not be asked again.")


def _first_of(desk: Desk, clash: Clash) -> Done:
    """Have the earlier of two acts that clash count: it is done again, now that the other one was seen."""
    act = clash.earlier
    value = act.value
    if isinstance(value, dict) and isinstance(clash.later.value, dict) and "after" in clash.later.value:
        value = {**value, "after": clash.later.value["after"]}
    with acting(desk) as connection:
        again = sign(desk, connection, act.verb, act.target, value)
    return Done(again, f"Now it is {told(act)}.")


def _on_item(desk: Desk, machine: str, question: Question, said: str) -> Done:
    assert question.item is not None
    if said == "done":
        return item_acts.mark_done(desk, machine, question.item)
    if said == "leave it so":
        return item_acts.leave_so(desk, machine, question.item)
    return item_acts.reopen(desk, machine, question.item)


def _of(desk: Desk, question: Question) -> Fact:
    """The fact that a question is about."""
    assert question.fact is not None
    with store.reading(desk.logbook) as connection:
        facts = store.derived.facts_of_note(connection, question.fact.note)
    found = next((fact for fact in facts if fact.key == question.fact), None)
    if found is None:
        raise CannotAct("That is no longer in the log; look again.")
    return found


def _back(work: Fact) -> str:
    """The deed that undoes what was done."""
    back = {"disconnect": "connect", "loosen": "tighten", "drain": "fill"}
    return back.get(work.action, "fit") if isinstance(work, Work) else "fit"
