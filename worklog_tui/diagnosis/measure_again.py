"""Readings that cannot both be right, and one of low trust that the order hangs on: measured again, properly, first.

Two readings of one thing contradict each other when they were taken soon after one another, nothing was done to it
between, and they are further apart than a gauge errs. How each is taken properly: grammars/diagnosis/steps.toml.
"""

from __future__ import annotations

from collections.abc import Iterator

from worklog_tui.diagnosis.candidate import Candidate, Tier
from worklog_tui.diagnosis.hearing import trust
from worklog_tui.diagnosis.log import Event, Log
from worklog_tui.diagnosis.measures import number
from worklog_tui.diagnosis.safety import Safety
from worklog_tui.diagnosis.signs import Signs
from worklog_tui.model import Reading, Step, Work
from worklog_tui.rulebook.faults import Symptom

NEAR = 15
"Within so many notes two readings of one thing are of one state of it (judgement)."
APART = 0.25
"By more than this share of the larger one two readings differ (judgement: gauges err by a tenth)."
OTHER_THING = 0.3
"Readings further apart than this share are of two things that were called alike (judgement)."
HARDLY = 0.35
"A reading that is trusted no more than this decides nothing (done wrong, or disowned)."
LOOKS = ("check", "test", "start", "order", "charge")
"Work that changes nothing of what is measured, but for a battery on charge."
MINUTES = 10


def measure_again(log: Log, signs: Signs, symptom: Symptom | None, safety: Safety) -> list[Candidate]:
    """A step for the last contradiction of each quantity, else for the reading that nobody trusts and all hangs on."""
    found = {e.fact.quantity: c for e, c in _contradicted(log, signs, symptom, safety) if isinstance(e.fact, Reading)}
    for event, candidate in _untrusted(log, signs, symptom, safety):
        if isinstance(event.fact, Reading):
            found.setdefault(event.fact.quantity, candidate)
    return list(found.values())


def _taken(log: Log) -> list[Event]:
    """The readings off the machine in the last session, of quantities that stay as they are."""
    return [
        e for e in log.readings
        if isinstance(e.fact, Reading) and e.fact.role == "measured" and e.place.session == log.last_session
        and number(e.fact) is not None
    ]  # fmt: skip


def _contradicted(log: Log, signs: Signs, symptom: Symptom | None, safety: Safety) -> Iterator[tuple[Event, Candidate]]:
    last: dict[tuple[str, str, str], Event] = {}
    for event in _taken(log):
        reading = event.fact
        if not isinstance(reading, Reading) or not reading.subject or reading.quantity not in _properly(safety):
            continue
        key = (reading.quantity, reading.subject.lower(), reading.condition)
        before, last[key] = last.get(key), event
        if before is None or not _differ(before, event) or _touched(log, before, event):
            continue
        if not _decides(reading.quantity, signs, symptom):
            continue
        if any(_same_thing(e, event) and e.when > event.when for e in _taken(log)):
            continue  # a third one settled it
        one, two = (_said(e, log) for e in (before, event))
        why = f"{one} and {two}, and nothing was done to it between: one is wrong, and the next step hangs on which."
        yield event, _candidate(event, why, safety)


def _untrusted(log: Log, signs: Signs, symptom: Symptom | None, safety: Safety) -> Iterator[tuple[Event, Candidate]]:
    for event in _taken(log):
        reading = event.fact
        if not isinstance(reading, Reading) or trust(reading) > HARDLY or reading.quantity not in _properly(safety):
            continue
        later = [e for e in log.readings if e.when > event.when and _same_thing(e, event)]
        if later or not _decides(reading.quantity, signs, symptom):
            continue
        why = f"{_said(event, log)}, and you did not trust it yourself: what comes next hangs on it."
        yield event, _candidate(event, why, safety)


def _properly(safety: Safety) -> dict[str, str]:
    """How each quantity is measured so that it can be trusted."""
    return dict(safety.book.words.get("properly", {}))


def _same_thing(a: Event, b: Event) -> bool:
    return (
        isinstance(a.fact, Reading) and isinstance(b.fact, Reading)
        and (a.fact.quantity, a.fact.subject.lower()) == (b.fact.quantity, b.fact.subject.lower())
    )  # fmt: skip


def _differ(a: Event, b: Event) -> bool:
    one, two = (number(e.fact) if isinstance(e.fact, Reading) else None for e in (a, b))
    if one is None or two is None or int(b.when) == int(a.when) or b.when - a.when > NEAR:
        return False
    share = min(abs(one), abs(two)) / max(abs(one), abs(two), 1e-9)
    return OTHER_THING < share < 1 - APART


def _touched(log: Log, a: Event, b: Event) -> bool:
    """Whether anything was done between two readings that may have changed what was measured."""
    between = (e.fact for e in log.works if a.when < e.when < b.when)
    return any(isinstance(w, Work) and (w.action not in LOOKS or w.action == "charge") for w in between)


def _said(event: Event, log: Log) -> str:
    reading = event.fact
    value = getattr(reading, "value", "")
    shown = " to ".join(f"{v:g}" for v in value) if isinstance(value, tuple) else f"{value:g}"
    return f"{reading.about} read {shown} {getattr(reading, 'unit', '')} at {log.said(event.place)}"


def _decides(quantity: str, signs: Signs, symptom: Symptom | None) -> bool:
    """Whether a check of this quantity speaks of what may cause the complaint."""
    causes = symptom.causes.keys() if symptom else frozenset[str]()
    checks = (c for c in signs.checks.values() if c.quantity == quantity)
    return any(not causes.isdisjoint(c.likelihood) or (symptom and c.answers == symptom.id) for c in checks)


def _candidate(event: Event, why: str, safety: Safety) -> Candidate:
    reading = event.fact
    quantity, subject = getattr(reading, "quantity", ""), getattr(reading, "subject", "")
    say = f"measure the {quantity}{f' of {subject}' if subject else ''} again, properly: {_properly(safety)[quantity]}"
    step = Step(say, why[0].upper() + why[1:], MINUTES, safety.cautions(say), (), (), "measure again")
    return Candidate(Tier.COMPLAINT, -event.when, step, "", f"{subject} {quantity}")
