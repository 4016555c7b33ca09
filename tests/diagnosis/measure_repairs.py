"""Simulated repairs with the shipped fault files: what following the advice costs beside simpler ways.

Run as a program: `python -m tests.diagnosis.measure_repairs [repairs]`. Faults are drawn from the priors until the
complaint comes up; checks answer by their likelihoods, looks see what is there, and each repair is proved by trying the
machine.
"""

from __future__ import annotations

import random
import sys
from collections.abc import Callable, Sequence
from dataclasses import replace

from tests.diagnosis.workshop import PUMP
from tests.diagnosis.workshop import Log as Told
from worklog_tui import places
from worklog_tui.diagnosis.engine import Engine, standing_signs
from worklog_tui.diagnosis.log import Event, Log
from worklog_tui.diagnosis.network import Network
from worklog_tui.diagnosis.signs import Sign, Signs
from worklog_tui.rulebook.faults import FaultBook, Job, load_faults

PATIENCE = 60
DEEPER = 180.0
"Minutes for what is in no list: the deeper inspection that every way of going about it ends with."


class Repair:
    """One machine with its true faults, and the minutes spent on it."""

    def __init__(self, book: FaultBook, signs: Signs, complaint: str, faults: set[str], rng: random.Random) -> None:
        self.book, self.signs, self.faults, self.rng = book, signs, set(faults), rng
        self.symptom = signs.symptoms[complaint]
        self.minutes, self.opened, self.cured = 0.0, set[str](), False

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
        """Repairs one fault and tries the machine: cured when none of the causes is left."""
        self.pay(self.signs.faults[fault].repair)
        self.faults.discard(fault)
        self.cured = not self.faults & set(self.symptom.causes)

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


def by_advice(repair: Repair) -> None:
    """Takes the first step of the advice until the machine works."""
    signs, clock = repair.signs, 1.0
    start = signs.symptom_signs[repair.symptom.id]

    def event() -> Event:
        return Event(clock, start.event.fact, start.event.place)

    for _ in range(PATIENCE):
        if repair.cured:
            return
        clock += 1
        signs.symptom_signs[repair.symptom.id] = replace(start, event=event(), trust=0.95)
        network = Network(signs)
        engine = Engine(repair.book, signs, network, repair.symptom, frozenset())
        options = engine.options()
        if not options:
            break
        step = options[0]
        if step.sort == "check":
            repair.pay(step.job)
            pieces = [network.check_piece(signs.checks[step.id], k, 1.0, clock) for k in range(len(step.after))]
            present = [network.index[f] for f in sorted(repair.faults)]
            weights = [max(p.likelihood(present), 0.0) for p in pieces]
            outcome = repair.rng.choices(signs.checks[step.id].outcomes, weights)[0]
            signs.check_signs[step.id] = Sign("check", step.id, outcome, event(), 0.9)
        elif step.sort == "look":
            bad = repair.look(step.id)
            if bad:
                signs.mended[step.id] = clock
            else:
                signs.look_signs[step.id] = Sign("look", step.id, "good", event(), 0.95)
        else:
            repair.mend(step.id)
            signs.mended[step.id] = clock
    if not repair.cured:
        in_order([f for f in repair.symptom.causes if f in signs.faults])(repair)


def fresh_signs(book: FaultBook, complaint: str) -> Signs:
    symptom = book.symptoms[complaint]
    state = symptom.heard.states[0]
    return Signs(Log(Told(PUMP).found(symptom.heard.parts[0], state, state=state).history()), book)


def drawn(signs: Signs, complaint: str, rng: random.Random) -> set[str]:
    """Faults drawn from the priors until they bring the complaint about."""
    causes = signs.symptoms[complaint].causes
    while True:
        faults = [f.id for f in signs.faults.values() if rng.random() < f.prior]
        shows = [f for f in faults if f in causes and rng.random() < causes[f]]
        if shows:
            return set(shows)


def main(count: int) -> None:
    """Prints the mean cost of each way, as shares."""
    book, rng = load_faults([places.grammars()]), random.Random(29)
    for complaint in ("no_start", "hunting", "no_spark"):
        signs = fresh_signs(book, complaint)
        assert standing_signs(signs)
        linked = [f for f in signs.symptoms[complaint].causes if f in signs.faults]
        prior = {f: signs.faults[f].prior * signs.symptoms[complaint].causes[f] for f in linked}

        def looking(f: str, signs: Signs = signs) -> float:
            fault = signs.faults[f]
            job = fault.look or fault.repair
            return job.minutes + sum(book.access[a].minutes for a in job.access)

        ways: dict[str, Callable[[Repair], None]] = {
            "advice": by_advice,
            "checklist in file order": in_order(linked),
            "likeliest first": in_order(sorted(linked, key=lambda f: -prior[f])),
            "chance over cost, no checks": in_order(sorted(linked, key=lambda f: -prior[f] / looking(f))),
        }
        costs: dict[str, float] = dict.fromkeys(ways, 0.0)
        for _ in range(count):
            faults = drawn(signs, complaint, rng)
            for name, way in ways.items():
                repair = Repair(book, fresh_signs(book, complaint), complaint, faults, random.Random(5))
                way(repair)
                costs[name] += repair.minutes
        print(f"{complaint}: advice {costs['advice'] / count:.0f} minutes a repair, of", end=" ")
        print(*(f"{name}: {costs['advice'] / c:.0%}" for name, c in costs.items() if name != "advice"), sep="; ")


if __name__ == "__main__":
    main(int(sys.argv[1]) if len(sys.argv) > 1 else 100)
