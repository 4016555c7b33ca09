"""Which missing fact would change what comes first: it is asked for before the machine is touched."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import replace

from worklog_tui.diagnosis.disturbed import SOON, disturbs
from worklog_tui.diagnosis.measures import number
from worklog_tui.diagnosis.signs import Signs
from worklog_tui.diagnosis.standing import standing_signs
from worklog_tui.model import Finding, History, Machine, Reading, Span

FUELS = {"petrol": "petrol", "diesel": "diesel", "gas": "gas"}
IGNITIONS = {"magneto": "magneto", "battery": "battery and coil", "electronic": "electronic"}
ASK_MOST = 2_000
"With more facts than this no question is tried out: each costs the whole advice once more."
First = Callable[[History], str]
"The first step that a history would be given; empty for none."


def asks(history: History, signs: Signs, first: First, now: str) -> tuple[str, ...]:
    """The questions whose answers change the first step (`now`), those about the machine card first."""
    if len(signs.log.events) > ASK_MOST:
        return tuple(_about_figures(signs))
    return (*_about_the_card(history, first), *_about_the_work_before(history, signs, first, now),
            *_about_figures(signs))  # fmt: skip


def _about_the_card(history: History, first: First) -> Iterator[str]:
    machine = history.machine
    if not machine.fuel:
        yield from _choice("What does it run on", FUELS, lambda v: replace(machine, fuel=v), history, first)
    elif machine.fuel in ("petrol", "paraffin", "gas") and not machine.ignition:
        yield from _choice("Which ignition has it", IGNITIONS, lambda v: replace(machine, ignition=v), history, first)


def _choice(
    question: str, values: dict[str, str], made: Callable[[str], Machine], history: History, first: First
) -> Iterator[str]:
    said = {v: step for v in values if (step := first(replace(history, machine=made(v))))}
    if len(set(said.values())) > 1:
        ways = "; ".join(f"{values[v]}: {step}" for v, step in said.items())
        yield f"{question}? It decides what comes first ({ways})."


def _about_the_work_before(history: History, signs: Signs, first: First, now: str) -> Iterator[str]:
    """Whether a trouble that nobody said was new came with the work just before it: tried with the answer yes."""
    sign = next(iter(standing_signs(signs)), None)
    if sign is None or sign.of not in signs.symptom_signs or sign.of in signs.between:
        return
    log = signs.log
    works = [e for e in log.works if disturbs(e) and sign.event.when - SOON <= e.when < sign.event.when]
    cured, notes = signs.symptoms[sign.of].cured, [n.uid for r in history.sessions for n in r.notes]
    before = notes.index(works[0].fact.main.note) - 1 if works else -1
    if before < 0 or not cured.parts:
        return
    work, state = works[-1], next(iter(cured.states), "")
    well = Finding(main=Span(notes[before], 0, 0), part=cured.parts[0], condition=state or "well", verdict="good",
                   name=cured.parts[0], state=state)  # fmt: skip
    if (then := first(_with(history, well))) != now and then:
        yield (
            f"Was it well until the work on the {work.fact.about} ({log.said(work.place)})? "
            f"Then that comes first: {then}."
        )


def _with(history: History, fact: Finding) -> History:
    """The history with one more finding in a note that it has."""
    rows = (
        replace(r, facts=(fact, *r.facts)) if any(n.uid == fact.main.note for n in r.notes) else r
        for r in history.sessions
    )
    return replace(history, sessions=tuple(rows))


def _about_figures(signs: Signs) -> Iterator[str]:
    """A reading that was taken and cannot be judged because nobody said what it should be."""
    for check in signs.checks.values():
        if not check.quantity or check.id in signs.check_signs:
            continue
        taken = [
            e.fact for e in signs.log.readings if isinstance(e.fact, Reading) and e.fact.quantity == check.quantity
        ]
        if any(r.role == "measured" and number(r) is not None for r in taken):
            yield f"What should the {check.quantity} be by the handbook? Without it the reading tells nothing."
