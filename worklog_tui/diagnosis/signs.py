"""The signs: what the log says for and against each fault, each with its moment and its trust."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace

from worklog_tui.diagnosis.hearing import TRUST_HUNCH, applies, is_cause, is_part, means, trust
from worklog_tui.diagnosis.log import Event, Log
from worklog_tui.diagnosis.measures import judged, outcome_of
from worklog_tui.model import Fact, Finding, Reading, Suspect, Work
from worklog_tui.rulebook.faults import Check, Fault, FaultBook, Symptom

MENDS = ("replace", "repair", "clean", "adjust", "free", "fit", "make", "tighten", "fill", "flush", "connect")


@dataclass(frozen=True, slots=True)
class Sign:
    """One sign of the log: of a complaint, a check or a fault (`of`), with what it showed (`shows`)."""

    sort: str
    "symptom, check, look or hunch (a suspicion of the person that nothing has settled)."
    of: str
    shows: str
    "present or absent; an outcome; bad or good."
    event: Event
    trust: float

    @property
    def words(self) -> str:
        """The sign in a few words of the speaker."""
        fact = self.event.fact
        if isinstance(fact, Finding):
            return f"{fact.part}: {fact.condition}"
        if isinstance(fact, Suspect):
            return f"{fact.cause}: {fact.standing}"
        if isinstance(fact, Reading):
            value = fact.value if not isinstance(fact.value, tuple) else f"{fact.value[0]:g} to {fact.value[1]:g}"
            shown = f"{value:g}" if isinstance(value, float) else value
            return f"{fact.subject or fact.quantity}: {shown} {fact.unit}".rstrip()
        return fact.about


class Signs:
    """Finds the signs for all faults, checks and complaints that apply to the machine."""

    def __init__(self, log: Log, book: FaultBook) -> None:
        machine = log.history.machine
        self.log = log
        self.faults = {k: f for k, f in book.faults.items() if applies(machine, dict(f.applies))}
        self.checks = {k: c for k, c in book.checks.items() if applies(machine, dict(c.applies))}
        self.symptoms = {k: s for k, s in book.symptoms.items() if applies(machine, dict(s.applies))}
        self.mended = self._mended()
        self.symptom_signs = self._symptoms()
        self.check_signs = {k: s for k, c in self.checks.items() if (s := self._check(c))}
        self.look_signs = {k: s for k, f in self.faults.items() if (s := self._look(f))}
        self.hunch_signs = {k: s for k, f in self.faults.items() if (s := self._hunch(f))}

    def all(self) -> list[Sign]:
        """Every sign, in the order of the log."""
        found = [*self.symptom_signs.values(), *self.check_signs.values(), *self.look_signs.values()]
        found += self.hunch_signs.values()
        return sorted(found, key=lambda s: (s.event.when, s.sort, s.of))

    def _mended(self) -> dict[str, float]:
        """The last moment at which each fault's parts were worked on so that the fault should be gone."""
        found: dict[str, float] = {}
        for fault in self.faults.values():
            ways = [(action, part) for action, _, part in (way.partition(" ") for way in fault.mended_by)]
            for event in self.log.works:
                work = event.fact
                if isinstance(work, Work) and _mends(work, fault, ways):
                    found[fault.id] = event.when
        return found

    def _symptoms(self) -> dict[str, Sign]:
        found: dict[str, Sign] = {}
        for symptom in self.symptoms.values():
            bad = _last(e for e in self.log.findings if means(symptom.heard, e.fact, ("bad",)))
            good = _last(e for e in self.log.findings if means(symptom.cured, e.fact, ("good",)))
            if bad and (not good or good.when < bad.when):
                found[symptom.id] = Sign("symptom", symptom.id, "present", bad, trust(bad.fact))
            elif good:
                found[symptom.id] = Sign("symptom", symptom.id, "absent", good, trust(good.fact))
        return self._ended(found)

    def _ended(self, found: dict[str, Sign]) -> dict[str, Sign]:
        """Complaints that are over because the machine was heard to run since."""
        running = [s.event for s in found.values() if self._shows_running(self.symptoms[s.of], s)]
        last = max(running, key=lambda e: e.when, default=None)
        if last:
            for key, sign in found.items():
                if self.symptoms[key].ends_running and sign.shows == "present" and sign.event.when < last.when:
                    found[key] = replace(sign, shows="absent", event=last)
        return found

    @staticmethod
    def _shows_running(symptom: Symptom, sign: Sign) -> bool:
        return (symptom.running and sign.shows == "present") or (symptom.id == "no_start" and sign.shows == "absent")

    def _check(self, check: Check) -> Sign | None:
        answered = self.symptom_signs.get(check.answers)
        best: Sign | None = None
        for event in self.log.findings:
            for number, outcome in enumerate(check.outcomes):
                verdicts = (
                    ("good", "noted", "bad") if check.combine == "each" else (("good",), ("bad", "noted"))[number > 0]
                )
                if outcome in check.heard and means(check.heard[outcome], event.fact, verdicts):
                    best = Sign("check", check.id, outcome, event, trust(event.fact))
        if (
            check.quantity
            and (measured := outcome_of(check, self.log))
            and (not best or measured[1].when > best.event.when)
        ):
            best = Sign("check", check.id, measured[0], measured[1], measured[2])
        if best and answered and answered.shows == "present" and answered.event.when >= best.event.when:
            return None
        return best

    def _look(self, fault: Fault) -> Sign | None:
        sign: Sign | None = None
        for event in self.log.events:
            if shows := self._shows(fault, event.fact):
                sign = Sign("look", fault.id, shows, event, trust(event.fact))
        if (
            fault.measure
            and (measured := judged(fault.measure, self.log))
            and (not sign or measured[1].when > sign.event.when)
        ):
            sign = Sign("look", fault.id, measured[0], measured[1], measured[2])
        return sign

    def _hunch(self, fault: Fault) -> Sign | None:
        seen = self.look_signs.get(fault.id)
        since = max(self.mended.get(fault.id, -1.0), seen.event.when if seen else -1.0)
        last = _last(e for e in self.log.suspects if isinstance(e.fact, Suspect) and is_cause(e.fact, fault.heard))
        if last and isinstance(last.fact, Suspect) and last.fact.standing == "suspected" and last.when > since:
            return Sign("hunch", fault.id, "suspected", last, TRUST_HUNCH)
        return None

    @staticmethod
    def _shows(fault: Fault, fact: Fact) -> str:
        if isinstance(fact, Suspect):
            if fact.standing in ("ruled out", "confirmed") and is_cause(fact, fault.heard):
                return "good" if fact.standing == "ruled out" else "bad"
            return ""
        if not isinstance(fact, Finding):
            return ""
        if means(fault.heard, fact, ("bad",)):
            return "bad"
        good = fact.verdict == "good" and is_part(fact.name, fact.part, fault.heard.parts)
        return "good" if good else ""


def _mends(work: Work, fault: Fault, ways: list[tuple[str, str]]) -> bool:
    if work.action in MENDS and is_part(work.name, work.part, fault.heard.parts):
        return True
    return any(work.action == action and is_part(work.name, work.part, (part,)) for action, part in ways)


def _last(events: Iterable[Event]) -> Event | None:
    return max(events, key=lambda e: e.when, default=None)
