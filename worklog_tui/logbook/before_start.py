"""Before a start: what is not refitted, what was not looked at, how to stop it, and what was tried so far."""

from __future__ import annotations

from worklog_tui.logbook.how_left import do_not_start, how_left
from worklog_tui.logbook.off_machine import off_machine
from worklog_tui.logbook.outcomes import BeforeStart, FluidLook, OffPart
from worklog_tui.logbook.starts import start_attempts
from worklog_tui.logbook.trade_words import Fluid, trade_words
from worklog_tui.model import Due, Fact, Finding, History, OpenItem, Place, Reading, Work

_LOOKED = frozenset({"check", "fill", "drain", "replace", "flush"})
START_EVENTS = frozenset({"before start", "before the first start", "before starting", "start"})


def before_start(history: History, items: tuple[OpenItem, ...], cleared: frozenset[str] = frozenset()) -> BeforeStart:
    """The list; every entry is a question to look at, not a claim."""
    left = sorted(how_left(history, cleared), key=lambda one: not one.stops)
    off = tuple(one for one in off_machine(history) if off_key(one) not in cleared)
    return BeforeStart(
        do_not_start(history, cleared), tuple(left), off, _fluids(history), _stops(history),
        tuple(one for one in items if one.state in ("open", "awaited") and _before(one.due)), start_attempts(history),
    )  # fmt: skip


def off_key(off: OffPart) -> str:
    """How a person's act names a thing that is asked about."""
    key = off.work.key
    return f"{key.note}/off {key.kind}/{key.start}/{key.end}/{key.nth}"


def _before(due: Due | None) -> bool:
    return due is not None and due.event.casefold().strip() in START_EVENTS


def _fluids(history: History) -> tuple[FluidLook, ...]:
    """The fluids that the machine has, each with where it was last looked at."""
    facts = history.facts()
    has = _has(history, facts)
    found = []
    for fluid in trade_words().fluids:
        if fluid.when in has:
            looks = [history.place(fact.main.note) for fact in facts if _looks(fact, fluid)]
            found.append(FluidLook(fluid.name, looks[-1] if looks else None))
    return tuple(found)


def _has(history: History, facts: list[Fact]) -> frozenset[str]:
    machine = history.machine
    said = " | ".join([machine.kind, *(f"{fact.about} {getattr(fact, 'name', '')}" for fact in facts)])
    has = {name for name, words in trade_words().has.items() if words.search(said)}
    if machine.fuel not in ("", "none") or "engine" in machine.kind.casefold():
        has.add("engine")
    return frozenset(has)


def _looks(fact: Fact, fluid: Fluid) -> bool:
    about = {fact.about.casefold(), str(getattr(fact, "name", "")).casefold()}
    if not about & fluid.things:
        return False
    if isinstance(fact, Work):
        return fact.action in _LOOKED
    return isinstance(fact, Finding) or (isinstance(fact, Reading) and fact.role in ("measured", "set"))


def _stops(history: History) -> tuple[Place, ...]:
    words = trade_words().stops
    return tuple(
        history.place(note.uid) for record in history.sessions for note in record.notes if words.search(note.words)
    )
