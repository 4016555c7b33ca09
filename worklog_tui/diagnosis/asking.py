"""Which missing fact would change what comes first: it is asked for before the machine is touched."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import replace

from worklog_tui.diagnosis.measures import number
from worklog_tui.diagnosis.signs import Signs
from worklog_tui.model import History, Machine, Reading

FUELS = {"petrol": "petrol", "diesel": "diesel", "gas": "gas"}
IGNITIONS = {"magneto": "magneto", "battery": "battery and coil", "electronic": "electronic"}
ASK_MOST = 2_000
"With more facts than this the card's questions are left out: each costs the whole advice once more."
First = Callable[[History], str]
"The first step that a history would be given; empty for none."


def asks(history: History, signs: Signs, first: First) -> tuple[str, ...]:
    """The questions whose answers change the first step, those about the machine card first."""
    asked = "engine" in signs.makeup.has and len(signs.log.events) <= ASK_MOST
    card = _about_the_card(history, first) if asked else ()
    return (*card, *_about_figures(signs))


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
