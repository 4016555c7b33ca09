"""The machine card as it is known: what it says, what the talk told, what missing fact would change the advice."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING, Any

from worklog_tui.bench.review import Review, advice_for, review
from worklog_tui.model import Fact, Machine, Number, Place, Reading, Trait

if TYPE_CHECKING:
    from worklog_tui.bench.desk import Desk

_CHOICES: dict[str, tuple[Any, ...]] = {
    "fuel": ("petrol", "diesel", "none"), "ignition": ("magneto", "battery", "electronic"),
}  # fmt: skip
"What is tried for a fact that the card leaves out."


@dataclass(frozen=True, slots=True)
class Told:
    """Something about the machine that was told, and where."""

    what: str
    says: str
    source: str
    doubtful: bool
    place: Place


@dataclass(frozen=True, slots=True)
class Missing:
    """A fact that the card leaves out, and the first step for each thing that it could be."""

    fact: str
    steps: tuple[tuple[str, str], ...]


@dataclass(frozen=True, slots=True)
class KnownCard:
    """All that is known of what a machine is and should be."""

    machine: Machine
    told: tuple[Told, ...]
    "Traits and numbers; of several tellings of one thing the last."
    figures: tuple[tuple[Reading, Place], ...]
    "What was said that figures should be, where the card gives none."
    missing: tuple[Missing, ...]


def machine_card(desk: Desk, machine_name: str) -> KnownCard:
    """The card of a machine with what the talk adds to it."""
    seen = review(desk, machine_name)
    rows = [(fact, seen.history.place(fact.main.note)) for fact in seen.history.facts()]
    told: dict[str, Told] = {}
    for fact, place in rows:
        one = _told(fact, place)
        if one is not None:
            told[one.what.casefold()] = one
    return KnownCard(seen.history.machine, tuple(told.values()), _figures(seen, rows), _missing(desk, seen))


def _told(fact: Fact, place: Place) -> Told | None:
    if isinstance(fact, Trait):
        return Told(fact.trait, fact.value, fact.source, fact.doubtful, place)
    if isinstance(fact, Number):
        return Told(f"number of the {fact.of}" if fact.of else "number", fact.number, fact.source, False, place)
    return None


def _figures(seen: Review, rows: list[tuple[Fact, Place]]) -> tuple[tuple[Reading, Place], ...]:
    on_card = {value.quantity for value in seen.history.machine.specified if value.quantity}
    last: dict[tuple[str, str], tuple[Reading, Place]] = {}
    for fact, place in rows:
        if isinstance(fact, Reading) and fact.role == "specified" and fact.quantity not in on_card:
            last[fact.quantity, fact.subject.casefold()] = (fact, place)
    return tuple(last.values())


def _missing(desk: Desk, seen: Review) -> tuple[Missing, ...]:
    """The facts that the card leaves out and that would lead to another first step."""
    found = []
    for name, choices in _CHOICES.items():
        if getattr(seen.history.machine, name):
            continue
        steps = []
        for choice in choices:
            known = replace(seen.history, machine=replace(seen.history.machine, **{name: choice}))
            advice = advice_for(desk, replace(seen, history=known))
            steps.append((str(choice), advice.steps[0].step if advice.steps else ""))
        if len({step for _, step in steps}) > 1:
            found.append(Missing(name, tuple(steps)))
    return tuple(found)
