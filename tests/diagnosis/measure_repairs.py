"""Simulated repairs with the shipped fault files: what following the advice costs beside simpler ways, and whether its
chances come true.

Faults are drawn from the priors until the complaint comes up: each brings it about by the chance of its link, so that
some faults that are there play no part in it. Checks answer by their likelihoods, looks see what is there, and each
repair is proved by trying the machine, which is cured when nothing is left that brings the complaint about.
Seeds are fixed. `python -m tests.diagnosis.measures` prints it.
"""

from __future__ import annotations

import math
import random
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field, replace

from tests.diagnosis.workshop import PUMP
from tests.diagnosis.workshop import Log as Told
from worklog_tui.diagnosis.engine import Engine
from worklog_tui.diagnosis.log import Event, Log
from worklog_tui.diagnosis.network import Network
from worklog_tui.diagnosis.sign import Sign
from worklog_tui.diagnosis.signs import Signs
from worklog_tui.model import Machine
from worklog_tui.rulebook.faults import FaultBook, Job

CAR = Machine("Old van", "four-cylinder petrol van", "petrol", "battery", 4)
DIESEL = Machine("Ditch set", "two-cylinder diesel generator set", "diesel", "none", 2)
LOADER = Machine("Quarry loader", "four-cylinder diesel loader, hydraulic", "diesel", "none", 4)
MODELS: Mapping[str, Machine] = {
    "no_start": PUMP, "no_spark": PUMP, "hunting": PUMP, "lacks_power": CAR, "overheats": CAR, "low_compression": CAR,
    "misfire": CAR, "diesel_no_start": DIESEL, "hyd_weak": LOADER,
}  # fmt: skip
"Complaints of the shipped files with the machine that has them."
PATIENCE = 60
KNOWING = ("the priors alone", "the complaint", "every check there is, once and without error")
"What the error of the chances is measured with; every look and check together would leave none."
MEASURED = 0.95
"The trust of a check in these repairs, known to the advice: one in twenty says nothing."


@dataclass
class Tally:
    """What the ways cost in all, and each chance that was given beside the truth."""

    minutes: dict[str, float] = field(default_factory=dict)
    chances: list[tuple[float, float, bool]] = field(default_factory=list)
    "(prior chance, chance given, whether the fault was there), for every suspect after every step."
    least: float = 0.0
    "Minutes of mending what brings the complaint about, known beforehand."
    knowing: list[float] = field(default_factory=lambda: [0.0] * len(KNOWING))
    "Summed squared errors of the chances, for each of KNOWING."


@dataclass(frozen=True)
class Drawn:
    """The faults of one machine, and those of them that bring the complaint about."""

    there: frozenset[str]
    acting: frozenset[str]


class Repair:
    """One machine with its true faults, and the minutes spent on it."""

    def __init__(self, book: FaultBook, signs: Signs, complaint: str, drawn: Drawn, rng: random.Random) -> None:
        self.book, self.signs, self.rng = book, signs, rng
        self.faults, self.acting = set(drawn.there), set(drawn.acting)
        self.symptom = signs.symptoms[complaint]
        self.minutes, self.opened = 0.0, set[str]()
        self.cured = False

    def pay(self, job: Job) -> None:
        """Minutes of a job, with the covers that are not off yet."""
        waiting = list(job.access)
        while waiting:
            cover = waiting.pop()
            if cover not in self.opened:
                self.opened.add(cover)
                self.minutes += self.book.access[cover].minutes
                waiting += self.book.access[cover].needs
        self.minutes += job.minutes + job.parts_cost

    def mend(self, fault: str) -> None:
        """Repairs one fault and tries the machine: cured when nothing is left that brings the complaint about."""
        self.pay(self.signs.faults[fault].repair)
        self.faults.discard(fault)
        self.acting.discard(fault)
        self.cured = not self.acting

    def look(self, fault: str) -> bool:
        """A look at one fault; repaired at once when it is there."""
        job = self.signs.faults[fault].look
        if job is not None:
            self.pay(job)
            if fault not in self.faults:
                return False
        self.mend(fault)
        return True


def in_order(order: Sequence[str]) -> Callable[[Repair], None]:
    """Goes through a list of faults one after another."""

    def follow(repair: Repair) -> None:
        for fault in order:
            if repair.cured:
                return
            repair.look(fault)

    return follow


def by_advice(repair: Repair, believed: FaultBook, seen: list[tuple[float, float, bool]]) -> None:
    """Takes the first step of the advice until the machine works; `believed` is what the advice is worked out from."""
    signs, clock = repair.signs, 1.0
    start = signs.symptom_signs[repair.symptom.id]
    for _ in range(PATIENCE):
        if repair.cured:
            return
        clock += 1
        event = Event(clock, start.event.fact, start.event.place)
        signs.symptom_signs[repair.symptom.id] = replace(start, event=event, trust=0.95)
        network = Network(signs)
        engine = Engine(
            believed, signs, network, signs.symptoms[repair.symptom.id], frozenset(), frozenset(repair.opened)
        )
        seen += [(signs.faults[f].prior, network.chance(f), f in repair.faults) for f in engine.ranked]
        options = engine.options()
        if not options:
            break
        _take(repair, options[0].sort, options[0].id, network, clock, event)
    if not repair.cured:
        in_order([f for f in repair.symptom.causes if f in signs.faults])(repair)


def _take(repair: Repair, sort: str, name: str, network: Network, clock: float, event: Event) -> None:
    signs = repair.signs
    if sort == "check":
        check = repair.book.checks[name]
        repair.pay(check.job)
        pieces = [network.check_piece(check, k, 1.0, math.inf) for k in range(len(check.outcomes))]
        present = [network.index[f] for f in sorted(repair.faults) if f in network.index]
        weights = [max(p.likelihood(present), 0.0) for p in pieces]
        outcome = repair.rng.choices(check.outcomes, weights)[0]
        if repair.rng.random() > MEASURED:
            outcome = repair.rng.choices(check.outcomes, check.base)[0]  # a reading that says nothing
        signs.check_signs[name] = Sign("check", name, outcome, event, MEASURED)
    elif sort == "look":
        bad = repair.look(name)
        signs.look_signs[name] = Sign("look", name, "bad" if bad else "good", event, 0.95)
        if bad:
            signs.mended[name] = clock + 0.5  # what was seen came before the mending
    else:
        repair.mend(name)
        signs.mended[name] = clock


def all_checks(signs: Signs, complaint: str, faults: frozenset[str], rng: random.Random) -> None:
    """Makes every check that speaks of a cause of the complaint, without error."""
    network, event = Network(signs), signs.symptom_signs[complaint].event
    present = [network.index[f] for f in sorted(faults) if f in network.index]
    for check in signs.checks.values():
        fits = not check.only_for or complaint in check.only_for
        if fits and not signs.symptoms[complaint].causes.keys().isdisjoint(check.likelihood):
            pieces = [network.check_piece(check, k, 1.0, math.inf) for k in range(len(check.outcomes))]
            outcome = rng.choices(check.outcomes, [max(p.likelihood(present), 0.0) for p in pieces])[0]
            signs.check_signs[check.id] = Sign("check", check.id, outcome, event, 1.0)


def knowing(book: FaultBook, complaint: str, faults: frozenset[str], rng: random.Random) -> list[float]:
    """The squared errors of the chances of one machine's causes, for each of KNOWING."""
    signs = fresh_signs(book, complaint)
    causes = [f for f in signs.symptoms[complaint].causes if f in signs.faults]
    heard = Network(signs)
    all_checks(signs, complaint, faults, rng)
    checked = Network(signs)
    ways: tuple[Callable[[str], float], ...] = (lambda f: signs.faults[f].prior, heard.chance, checked.chance)
    return [sum((way(f) - (f in faults)) ** 2 for f in causes) for way in ways]


def fresh_signs(book: FaultBook, complaint: str) -> Signs:
    """The signs of a log that holds the complaint and nothing else."""
    heard = book.symptoms[complaint].heard
    told = Told(MODELS[complaint]).found(heard.parts[0], heard.states[0], state=heard.states[0])
    return Signs(Log(told.history()), book)


def drawn(signs: Signs, complaint: str, rng: random.Random) -> Drawn:
    """Faults drawn from the priors until they bring the complaint about."""
    causes = signs.symptoms[complaint].causes
    while True:
        there = [f.id for f in signs.faults.values() if rng.random() < f.prior]
        acting = [f for f in there if f in causes and rng.random() < causes[f]]
        if acting:
            return Drawn(frozenset(there), frozenset(acting))


def ways_of(book: FaultBook, signs: Signs, complaint: str, rng: random.Random) -> dict[str, Callable[[Repair], None]]:
    """The ways of going about it without advice: fixed orders of looking and mending."""
    linked = [f for f in signs.symptoms[complaint].causes if f in signs.faults]
    weight = {f: signs.faults[f].prior * signs.symptoms[complaint].causes[f] for f in linked}

    def looking(f: str) -> float:
        job = signs.faults[f].look or signs.faults[f].repair
        return job.minutes + sum(book.access[a].minutes for a in job.access)

    return {
        "fixed checklist": in_order(sorted(linked)),
        "random order": in_order(rng.sample(linked, len(linked))),
        "most likely first": in_order(sorted(linked, key=lambda f: -weight[f])),
        "chance over cost, no checks": in_order(sorted(linked, key=lambda f: -weight[f] / looking(f))),
    }


def blurred(book: FaultBook, rng: random.Random, spread: float) -> FaultBook:
    """The book with every prior off by a random factor of that spread (standard deviation of its logarithm)."""
    faults = {k: replace(f, prior=min(0.5, f.prior * math.exp(rng.gauss(0, spread)))) for k, f in book.faults.items()}
    return replace(book, faults=faults)


def simulated(book: FaultBook, complaint: str, repairs: int, spread: float = 0.0) -> Tally:
    """So many repairs of one complaint, every way on the same faults."""
    rng, tally = random.Random(f"{complaint} 29"), Tally()
    believed = blurred(book, random.Random(31), spread) if spread else book
    for number in range(repairs):
        signs = fresh_signs(book, complaint)
        faults = drawn(signs, complaint, rng)
        for name, way in ways_of(book, signs, complaint, rng).items():
            repair = Repair(book, signs, complaint, faults, random.Random(number))
            way(repair)
            tally.minutes[name] = tally.minutes.get(name, 0.0) + repair.minutes
        repair = Repair(book, fresh_signs(believed, complaint), complaint, faults, random.Random(number))
        by_advice(repair, believed, tally.chances)
        tally.minutes["advice"] = tally.minutes.get("advice", 0.0) + repair.minutes
        known = Repair(book, signs, complaint, faults, random.Random(number))
        for fault in sorted(faults.acting):
            known.mend(fault)
        tally.least += known.minutes
        errors = knowing(book, complaint, faults.there, random.Random(number))
        tally.knowing = [a + b for a, b in zip(tally.knowing, errors, strict=True)]
    return tally
