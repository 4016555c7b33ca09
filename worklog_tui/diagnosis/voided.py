"""Discoveries that void what was seen before them: the gauge was wrong, the switch was off, the tap was shut."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from worklog_tui.diagnosis.hearing import is_state
from worklog_tui.model import Finding, Suspect

if TYPE_CHECKING:
    from collections.abc import Iterable

    from worklog_tui.diagnosis.log import Event, Log
    from worklog_tui.diagnosis.sign import Sign
    from worklog_tui.rulebook.fault_nouns import Discovery
    from worklog_tui.rulebook.faults import Check, FaultBook

VOID = 0.1
"What is left of the trust of a sign that a later discovery voids (judgement)."


def discoveries(log: Log, book: FaultBook) -> list[tuple[Discovery, Event]]:
    """The discoveries of a log, in order."""
    return [(d, e) for e in log.events for d in book.discoveries if _is(d, e)]


def _is(discovery: Discovery, event: Event) -> bool:
    fact = event.fact
    if isinstance(fact, Suspect):
        return fact.standing == "confirmed" and fact.name in discovery.heard.parts
    if not isinstance(fact, Finding) or fact.name not in discovery.heard.parts or fact.verdict == "good":
        return False
    return is_state(fact.state, fact.condition, discovery.heard.states)


def voided(sign: Sign, made: Iterable[tuple[Discovery, Event]], checks: dict[str, Check]) -> Sign:
    """The sign, hardly trusted where a later discovery voids it."""
    quantity = getattr(sign.event.fact, "quantity", "") or (
        checks[sign.of].quantity if sign.sort == "check" and sign.of in checks else ""
    )
    for discovery, event in made:
        hit = sign.of in discovery.voids or (quantity and quantity in discovery.quantities)
        if hit and sign.event.when < event.when:
            return replace(sign, trust=sign.trust * VOID)
    return sign
