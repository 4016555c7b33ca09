"""Causes in the person's own words: what he suspects and nothing has ruled out, and what was found bad.

The fault files know the causes of one complaint; a person often looks after another trouble by then. How often such a
suspicion came true was counted over 34 labelled logs in November 2026: one in five of those told in the last six notes,
one in eight within fifteen, one in fourteen before; one in twenty of the parts found bad.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from worklog_tui.diagnosis.explain import grade
from worklog_tui.diagnosis.log import Event, Log, proves_good, shows_no_effect
from worklog_tui.diagnosis.network import Network
from worklog_tui.diagnosis.sign import Sign
from worklog_tui.diagnosis.signs import MENDS, Signs
from worklog_tui.diagnosis.words import tokens
from worklog_tui.model import Cause, Evidence, Fact, Finding, Suspect, Work

CAME_TRUE = ((6, 0.20), (15, 0.13), (10**9, 0.07))
"Of the suspicions told within so many notes this share was confirmed later."
BAD_WAS_IT = 0.05
"The share of the parts found bad that were said to be the cause later."
FRESH = 6
"A suspicion of so many last notes tells what trouble is looked after now."
JUST = 3
"A part found bad in so many last notes, and no other trouble told since, is what he has before him."
BEFORE = 2
"So many fresh suspicions stand before the causes of a complaint that does not explain them."
MOST = 6
LOOKED_AT = 30
"So many of the last suspicions and findings are gone through."


def with_own(
    causes: Sequence[Cause], log: Log, signs: Signs, network: Network, latest: Sign | None
) -> tuple[Cause, ...]:
    """The causes of the complaint among the person's own: fresh suspicions first, then the complaint's, then the rest.

    `latest`: the complaint that the causes are of; a suspicion told before it is not about anything newer.
    """
    own = list(_suspected(log, signs, network))
    since = latest.event.when if latest else -1.0
    now = int(log.history.place(log.last_notes[-1].uid).order) if log.last_notes else 0
    fresh = [c for e, c in own if e.when > since and now - int(e.when) < FRESH][:BEFORE]
    rest = [c for _, c in own if c not in fresh]
    found: dict[str, Cause] = {}
    bad = list(_bad(log, signs))
    held = {c.id for c in causes}
    new = [c for e, c in bad if now - int(e.when) < JUST and e.when > since and held.isdisjoint(_meant(signs, e))]
    just = new[: BEFORE - len(fresh)]
    for cause in (*fresh, *just, *causes, *rest, *(c for _, c in bad)):
        key = cause.id or " ".join(sorted(set(tokens(cause.name))))
        known = next((c for c in causes if c.id and c.id == cause.id), cause)
        found.setdefault(key, known)
    return tuple(found.values())[: max(MOST, len(causes))]


def _suspected(log: Log, signs: Signs, network: Network) -> Iterator[tuple[Event, Cause]]:
    """The unsettled suspicions, the latest first, each once."""
    last = int(log.history.place(log.last_notes[-1].uid).order) if log.last_notes else 0
    told: set[str] = set()
    for event in reversed(log.suspects[-LOOKED_AT:]):
        fact = event.fact
        if not isinstance(fact, Suspect) or fact.standing != "suspected" or fact.cause in told:
            continue
        told.add(fact.cause)
        later = [e for e in log.about(fact.name, fact.cause) if e.when > event.when]
        if any(_clears(e.fact) for e in later):
            continue
        event = next((e for e in reversed(later) if isinstance(e.fact, Finding)), event)
        share = next(s for notes, s in CAME_TRUE if last - int(event.when) < notes)
        meant = [f for f in signs.causes(fact.name, fact.cause) if f in network.index]
        best = max(meant, key=network.chance, default="")
        chance = max(share, network.chance(best)) if best else share
        system = signs.faults[best].system if best else ""
        evidence = Evidence(f"you suspected it: {fact.cause}", event.place, 0.0, 1.0)
        yield event, Cause(best, fact.cause, system, chance, grade(chance), (evidence,))


def _meant(signs: Signs, event: Event) -> list[str]:
    return signs.causes(event.name, event.fact.about)


def _clears(fact: Fact) -> bool:
    """Whether a later fact takes a suspicion away: found good, of no effect, or worked on. Found bad, it stands."""
    return proves_good(fact) or shows_no_effect(fact) or (isinstance(fact, Work) and fact.action in MENDS)


def _bad(log: Log, signs: Signs) -> Iterator[tuple[Event, Cause]]:
    """The parts that were found bad last and not dealt with since, the latest first; a complaint is no cause."""
    complaints = [s.event.fact for s in signs.symptom_signs.values()]
    wholes = {"engine", "motor", *signs.machines}
    for event in reversed(log.findings[-LOOKED_AT:]):
        fact = event.fact
        if not isinstance(fact, Finding) or fact.verdict != "bad" or not fact.name:
            continue
        if fact in complaints or fact.name in wholes:
            continue
        if event.place.session != log.last_session:
            continue
        last = log.verdict(fact.name, fact.part)
        if (last and last.when > event.when) or log.work_on(fact.name, fact.part, event.when, MENDS):
            continue
        evidence = Evidence(f"{fact.part}: {fact.condition}", event.place, 0.0, 1.0)
        yield event, Cause("", f"{fact.part}: {fact.condition}", "", BAD_WAS_IT, grade(BAD_WAS_IT), (evidence,))
