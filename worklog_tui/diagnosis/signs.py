"""The signs: what the log says for and against each fault, each with its moment and its trust."""

from __future__ import annotations

from dataclasses import replace

from worklog_tui.diagnosis.disturbed import disturbed, within_reach, works_between
from worklog_tui.diagnosis.found_good import without_found_good
from worklog_tui.diagnosis.hearing import TRUST_HUNCH, denies, is_state, trust
from worklog_tui.diagnosis.kinds import Kinds
from worklog_tui.diagnosis.log import Event, Log
from worklog_tui.diagnosis.makeup import makeup
from worklog_tui.diagnosis.measures import judged, outcome_of
from worklog_tui.diagnosis.part_index import PartIndex
from worklog_tui.diagnosis.sayings import Sayings
from worklog_tui.diagnosis.sign import Sign, repeated
from worklog_tui.diagnosis.told import sentences
from worklog_tui.diagnosis.told_gone import told_gone
from worklog_tui.diagnosis.told_signs import hints_in, merged, renewed, told_signs
from worklog_tui.diagnosis.voided import discoveries, voided
from worklog_tui.model import Finding, Suspect, Work
from worklog_tui.rulebook.faults import FaultBook, Heard, Symptom

MENDS = ("replace", "repair", "clean", "adjust", "free", "fit", "make", "tighten", "fill", "flush", "connect")


Heard_ = tuple[str, str, str, Heard]
"(sort, id, what it shows, what must be heard)."


class Signs:
    """Finds the signs for all faults, checks and complaints that apply to the machine, in one pass over the log."""

    def __init__(self, log: Log, book: FaultBook) -> None:
        self.log = log
        self.makeup = makeup(log.history.machine, book.has.values(), log.names)
        self.machines, self.cured = tuple(book.words.get("machines", ())), tuple(book.words.get("cured", ()))
        self.faults = {k: f for k, f in book.faults.items() if self.makeup.fits(f.applies)}
        self.checks = {k: c for k, c in book.checks.items() if self.makeup.fits(c.applies)}
        self.symptoms = {k: s for k, s in book.symptoms.items() if self.makeup.fits(s.applies)}
        self.kinds = Kinds(book.kinds.values())
        own = (s for s in self.symptoms.values() if not s.general)
        self.of_the_trade = frozenset(f for s in own for f in s.causes)
        "Faults that a complaint of the machine's own trade can come from."
        self.mended = self._mended()
        self._ran = self._well()
        self._cause_index = self._causes()
        self.lines = sentences(log)
        told, hints = hints_in(told_signs(self.lines, self.faults, self.checks, self.symptoms))
        self.in_words = frozenset((s.of, s.event.place.order) for s in told if s.shows == "present")
        "Complaints with the notes that tell them in so many words."
        self._hinted = frozenset(s.event.place.order for s in hints.values())
        found = merged(self._heard(), told, self._proofs)
        self.symptom_signs = self._ended({of: sign for (sort, of), sign in found.items() if sort == "symptom"})
        self.look_signs = {of: sign for (sort, of), sign in found.items() if sort == "look"}
        self.check_signs = {of: sign for (sort, of), sign in found.items() if sort == "check"}
        renewed(self.symptom_signs, self.lines)
        troubles = tuple(book.words.get("heard", ()))
        self.symptom_signs = told_gone(self.symptom_signs, self._proofs, self.lines, troubles)
        wholes = ("engine", "motor", *self.machines)
        self.symptom_signs = without_found_good(self.symptom_signs, log, self._proofs, wholes)
        self._measure()
        self._answered()
        self._void(book)
        self.talk = Sayings(book.words.get("talk", {}))
        since = self.talk.pattern("since_then")
        reach = within_reach(self.faults, book.access)
        self.between = works_between(log, self.symptom_signs, self._proofs, since)
        "For each complaint the works between the proof that all was well and the trouble."
        self.disturbed = disturbed(self.between, self.symptoms, reach)
        self.hunch_signs = self._hunches()
        self.hint_signs = {of: s for of, s in hints.items() if s.event.when > self._settled(of)}

    def touched(self, fault: str) -> float:
        """The last moment at which a fault's parts were mended or disturbed; before everything when they were not."""
        work = self.disturbed.get(fault)
        return max(self.mended.get(fault, -1.0), work.when if work else -1.0)

    def _void(self, book: FaultBook) -> None:
        """Takes the trust from signs that a later discovery voids."""
        made = discoveries(self.log, book)
        for signs in (self.symptom_signs, self.look_signs, self.check_signs) if made else ():
            signs.update({of: voided(sign, made, self.checks) for of, sign in signs.items()})

    def causes(self, name: str, words: str) -> list[str]:
        """The faults that a thing is about."""
        return self._cause_index.find(name, words, fall_back=True)

    def all(self) -> list[Sign]:
        """Every sign, in the order of the log."""
        found = [*self.symptom_signs.values(), *self.check_signs.values(), *self.look_signs.values()]
        found += [*self.hunch_signs.values(), *self.hint_signs.values()]
        return sorted(found, key=lambda s: (s.event.when, s.sort, s.of))

    def _mended(self) -> dict[str, float]:
        """The last moment at which each fault's parts were worked on so that the fault should be gone."""
        index: PartIndex[tuple[str, str]] = PartIndex()
        for fault in self.faults.values():
            for action in MENDS:
                index.add(fault.heard.parts, (fault.id, action))
            for way in fault.mended_by:
                action, _, part = way.partition(" ")
                index.add((part,), (fault.id, action))
        found: dict[str, float] = {}
        for event in self.log.works:
            work = event.fact
            if isinstance(work, Work):
                found |= {f: event.when for f, action in index.find(work.name, work.part) if action == work.action}
        return found

    def _heard(self) -> dict[tuple[str, str], Sign]:
        """The last sign of every complaint, check and look that a finding or a settled suspicion gives."""
        found: dict[tuple[str, str], Sign] = {}
        self._proofs: dict[str, list[Event]] = {}
        index, causes = self._parts(), self._cause_index
        for event in self.log.events:
            fact = event.fact
            if isinstance(fact, Finding):
                meant = [m for m in index.find(fact.name, fact.part) if self._means(*m, fact)]
                complains = any((sort, shows) == ("symptom", "present") for sort, _, shows, _ in meant)
                for sort, of, shows, heard in meant:
                    if complains and sort == "look" and not heard.states:
                        continue  # what it does wrong does not say why: a dead starter may have no volts
                    sure = trust(fact)
                    if sort == "symptom":
                        if shows == "absent" and event.place.order in self._hinted:
                            continue  # 'half choke and it runs smooth' cures nothing
                        if shows == "present" and event.when < self._ran.get(event.place.order, -1.0):
                            continue  # 'pop, pop, runs': what came before it ran
                        sure = repeated(found.get((sort, of)), shows, sure)
                        if shows == "absent":
                            self._proofs.setdefault(of, []).append(event)
                    found[sort, of] = Sign(sort, of, shows, event, sure)
            elif isinstance(fact, Suspect) and fact.standing in ("ruled out", "confirmed"):
                shows = "good" if fact.standing == "ruled out" else "bad"
                for fault in causes.find(fact.name, fact.cause, fall_back=True):
                    found["look", fault] = Sign("look", fault, shows, event, trust(fact))
        return found

    def _well(self) -> dict[int, float]:
        """For every note in which the machine was last heard to do well: the moment."""
        found: dict[int, float] = {}
        for event in self.log.findings:
            fact = event.fact
            if isinstance(fact, Finding) and fact.name in ("engine", "motor", *self.machines):
                found[event.place.order] = event.when if fact.verdict == "good" else -1.0
        return found

    def _parts(self) -> PartIndex[Heard_]:
        index: PartIndex[Heard_] = PartIndex()
        for symptom in self.symptoms.values():
            if "engine" in symptom.heard.parts:
                index.add(self.machines, ("symptom", symptom.id, "present", symptom.heard))
                index.add(self.machines, ("symptom", symptom.id, "absent", symptom.cured))
            index.add(symptom.heard.parts, ("symptom", symptom.id, "present", symptom.heard))
            index.add(symptom.cured.parts, ("symptom", symptom.id, "absent", symptom.cured))
        for check in self.checks.values():
            for outcome, heard in check.heard.items():
                index.add(heard.parts, ("check", check.id, outcome, heard))
        for fault in self.faults.values():
            index.add(fault.heard.parts, ("look", fault.id, "good", Heard()))
            index.add(fault.heard.parts, ("look", fault.id, "bad", fault.heard))
        return index

    def _causes(self) -> PartIndex[str]:
        index: PartIndex[str] = PartIndex()
        for fault in self.faults.values():
            index.add(fault.heard.causes, fault.id, begins=True)
            index.add(fault.heard.parts, fault.id)
        return index

    def _means(self, sort: str, of: str, shows: str, heard: Heard, fact: Finding) -> bool:
        """Whether a finding about the right part means this; good findings clear, bad ones accuse."""
        verdicts: tuple[str, ...] = ("good",) if shows in ("absent", "good") else ("bad",)
        if sort == "check":
            check = self.checks[of]
            first = shows == check.outcomes[0]
            any_verdict = check.combine == "masks"
            verdicts = ("good", "noted", "bad") if any_verdict else ("good",) if first else ("bad", "noted")
        if (
            sort == "symptom"
            and shows == "absent"
            and fact.verdict == "good"
            and denies(fact.condition, self.symptoms[of].heard.states)
        ):
            return True
        if fact.verdict not in verdicts or (heard.verdicts and fact.verdict not in heard.verdicts):
            return False
        if sort == "symptom" and shows == "absent" and fact.state in self.cured:
            return True
        return not heard.states or is_state(fact.state, fact.condition, heard.states)

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
        starting = symptom.vague and symptom.ends_running
        return (symptom.running and sign.shows == "present") or (starting and sign.shows == "absent")

    def _measure(self) -> None:
        """Readings that say what a check or a look would, where they are later."""
        for check in self.checks.values():
            if check.quantity and (measured := outcome_of(check, self.log)):
                self._take(self.check_signs, Sign("check", check.id, *measured))
        for fault in self.faults.values():
            if fault.measure and (measured := judged(fault.measure, self.log)):
                self._take(self.look_signs, Sign("look", fault.id, *measured))

    @staticmethod
    def _take(signs: dict[str, Sign], sign: Sign) -> None:
        known = signs.get(sign.of)
        if known is None or known.event.when < sign.event.when:
            signs[sign.of] = sign

    def _answered(self) -> None:
        """Drops an outcome that a complaint heard since speaks of."""
        for check in self.checks.values():
            complaint, sign = self.symptom_signs.get(check.answers), self.check_signs.get(check.id)
            if complaint and sign and complaint.shows == "present" and complaint.event.when >= sign.event.when:
                del self.check_signs[check.id]

    def _hunches(self) -> dict[str, Sign]:
        """The person's suspicions that neither a look nor work has settled since."""
        last: dict[str, Event] = {}
        causes = self._cause_index
        for event in self.log.suspects:
            if isinstance(event.fact, Suspect):
                last |= dict.fromkeys(causes.find(event.fact.name, event.fact.cause, fall_back=True), event)
        found = {}
        for fault, event in last.items():
            if (
                isinstance(event.fact, Suspect)
                and event.fact.standing == "suspected"
                and event.when > self._settled(fault)
            ):
                found[fault] = Sign("hunch", fault, "suspected", event, TRUST_HUNCH)
        return found

    def _settled(self, fault: str) -> float:
        """The last moment at which a fault was looked at or worked on."""
        seen = self.look_signs.get(fault)
        return max(self.mended.get(fault, -1.0), seen.event.when if seen else -1.0)
