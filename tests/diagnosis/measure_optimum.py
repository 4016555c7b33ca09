"""What the best of all plans would cost in the simulated repairs, where that can be worked out.

The likeliest causes of each complaint and the checks that tell most between them make a small network of the shipped
numbers. Every plan that can be followed in it is tried (dynamic programming over all beliefs that can be reached), and
its minutes are held against those of the advice on the same machines. A cause is absent, there without acting, or
acting; looks see what is there, checks err as in the simulated repairs, and may be made again once something
was mended.
"""

from __future__ import annotations

import math
import random
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from itertools import product

from tests.diagnosis.measure_repairs import (
    MEASURED,
    Repair,
    by_advice,
    drawn,
    fresh_signs,
    ways_of,
)  # fmt: skip
from worklog_tui.diagnosis.network import Network
from worklog_tui.diagnosis.signs import Signs
from worklog_tui.rulebook.faults import Check, FaultBook, Job

CAUSES, CHECKS = 4, 2
"How large the small networks are: all their plans are tried."
Machine = tuple[int, int]
"(the faults that are there, those of them that act), one bit each."
Belief = tuple[tuple[Machine, float], ...]
Step = tuple[str, int]
"(check, look or repair; its number)."


def cut_down(book: FaultBook, complaint: str) -> FaultBook:
    """The book with only the likeliest causes of a complaint, and the checks that tell most between them."""
    signs = fresh_signs(book, complaint)
    symptom = signs.symptoms[complaint]
    linked = sorted((f for f in symptom.causes if f in signs.faults),
                    key=lambda f: (-signs.faults[f].prior * symptom.causes[f], f))[:CAUSES]  # fmt: skip
    small = replace(
        book, faults={f: book.faults[f] for f in linked}, checks={},
        symptoms={complaint: replace(book.symptoms[complaint], causes={f: symptom.causes[f] for f in linked})},
    )  # fmt: skip
    telling = {c.id: _telling(c.likelihood, c.base, linked) / c.job.minutes for c in signs.checks.values()
               if not c.only_for or complaint in c.only_for}  # fmt: skip
    kept = sorted((c for c in telling if telling[c] > 0), key=lambda c: (-telling[c], c))[:CHECKS]
    return replace(small, checks={c: book.checks[c] for c in kept})


def _telling(rows: Mapping[str, tuple[float, ...]], base: tuple[float, ...], linked: list[str]) -> float:
    """How far apart the outcomes of a check are for the causes."""
    seen = [rows.get(f, base) for f in linked]
    return sum(max(row[k] for row in seen) - min(row[k] for row in seen) for k in range(len(base)))


@dataclass
class Best:
    """The best plan for one small network, worked out belief by belief."""

    book: FaultBook
    signs: Signs
    complaint: str

    def __post_init__(self) -> None:
        self.faults = list(self.signs.faults)
        self.checks = [c for c in self.signs.checks.values() if c.id in self.book.checks]
        network = Network(self.signs)
        masks = range(1 << len(self.faults))
        self.rows = [[self._row(network, c, mask) for mask in masks] for c in self.checks]
        self.known: dict[object, tuple[float, Step]] = {}

    def _row(self, network: Network, check: Check, mask: int) -> list[float]:
        """The chance of each outcome of a check with some faults there."""
        present = [network.index[f] for n, f in enumerate(self.faults) if mask >> n & 1]
        pieces = (network.check_piece(check, k, 1.0, math.inf) for k in range(len(check.outcomes)))
        plain = [max(piece.likelihood(present), 0.0) for piece in pieces]
        whole = sum(plain)
        return [MEASURED * p / whole + (1 - MEASURED) * b for p, b in zip(plain, check.base, strict=True)]

    @property
    def start(self) -> Belief:
        """The belief once the complaint is heard."""
        links = self.signs.symptoms[self.complaint].causes
        found: dict[Machine, float] = {}
        for kinds in product((0, 1, 2), repeat=len(self.faults)):
            chance, there, acting = 1.0, 0, 0
            for n, kind in enumerate(kinds):
                p, q = self.signs.faults[self.faults[n]].prior, links[self.faults[n]]
                chance *= (1 - p, p * (1 - q), p * q)[kind]
                there, acting = there | (kind > 0) << n, acting | (kind == 2) << n
            if acting and chance > 0:
                found[there, acting] = chance
        return scaled(found)

    def minutes(self, belief: Belief, opened: frozenset[str] = frozenset(), made: int = 0) -> float:
        """The minutes to a working machine by the best plan from here; `made`: the checks since the last mending."""
        return self.choice(belief, opened, made)[0]

    def choice(self, belief: Belief, opened: frozenset[str], made: int) -> tuple[float, Step]:
        """The best next step with the minutes that the plan takes from here."""
        key = (tuple((m, round(w, 9)) for m, w in belief), opened, made)
        if key not in self.known:
            self.known[key] = min(
                (cost + sum(chance * self.minutes(*after) for chance, after in follows), step)
                for step, cost, follows in self._steps(belief, opened, made)
            )
        return self.known[key]

    def _steps(
        self, belief: Belief, opened: frozenset[str], made: int
    ) -> Iterator[tuple[Step, float, list[tuple[float, tuple[Belief, frozenset[str], int]]]]]:
        """Every step with its minutes and what may follow; nothing follows a cure."""
        for n, fault in enumerate(self.faults):
            there = sum(w for (m, _), w in belief if m >> n & 1)
            if there <= 0:
                continue
            work = self.signs.faults[fault]
            mending, now = self._pays(work.repair, opened)
            rest = mended(belief, n)
            left = sum(rest.values())
            yield ("repair", n), mending, [(left, (scaled(rest), now, 0))] if left > 0 else []
            if work.look is not None and there < 1:
                looking, seen = self._pays(work.look, opened)
                more, both = self._pays(work.repair, seen)
                found = mended(tuple((m, w) for m, w in belief if m[0] >> n & 1), n)
                fine = {m: w for m, w in belief if not m[0] >> n & 1}
                bad, good = sum(found.values()), sum(fine.values())
                after = [(bad, (scaled(found), both, 0))] if bad > 0 else []
                yield ("look", n), looking + there * more, [*after, (good, (scaled(fine), seen, made))]
        for k, check in enumerate(self.checks):
            if not made >> k & 1:
                cost, now = self._pays(check.job, opened)
                ways = ({m: w * self.rows[k][m[0]][o] for m, w in belief} for o in range(len(check.outcomes)))
                after = [(sum(w.values()), (scaled(w), now, made | 1 << k)) for w in ways if sum(w.values()) > 0]
                yield ("check", k), cost, after

    def followed(self, repair: Repair) -> None:
        """Follows the best plan on one machine."""
        belief, opened, made = self.start, frozenset[str](), 0
        while not repair.cured:
            sort, n = self.choice(belief, opened, made)[1]
            if sort == "check":
                repair.pay(self.checks[n].job)
                row = self.rows[n][sum(1 << k for k, f in enumerate(self.faults) if f in repair.faults)]
                seen = repair.rng.choices(range(len(row)), row)[0]
                belief = scaled({m: w * self.rows[n][m[0]][seen] for m, w in belief})
                made |= 1 << n
            elif sort == "look" and not repair.look(self.faults[n]):
                belief = scaled({m: w for m, w in belief if not m[0] >> n & 1})
            else:
                if sort == "repair":
                    repair.mend(self.faults[n])
                else:
                    belief = tuple((m, w) for m, w in belief if m[0] >> n & 1)
                if not repair.cured:
                    belief, made = scaled(mended(belief, n)), 0
            opened = frozenset(repair.opened)

    def _pays(self, job: Job, opened: frozenset[str]) -> tuple[float, frozenset[str]]:
        """The minutes of a job, and what is open then."""
        spent, waiting, now = job.minutes + job.parts_cost, list(job.access), set(opened)
        while waiting:
            cover = waiting.pop()
            if cover not in now:
                now.add(cover)
                spent += self.book.access[cover].minutes
                waiting += self.book.access[cover].needs
        return spent, frozenset(now)


def mended(belief: Belief, n: int) -> dict[Machine, float]:
    """The machines that still fail once a fault was mended."""
    found: dict[Machine, float] = {}
    for (there, acting), weight in belief:
        if acting & ~(1 << n):
            after = (there & ~(1 << n), acting & ~(1 << n))
            found[after] = found.get(after, 0.0) + weight
    return found


def scaled(weights: Mapping[Machine, float]) -> Belief:
    """Weights as a belief: they sum to one, and nothing is in it that cannot be."""
    whole = sum(weights.values())
    return tuple(sorted((m, w / whole) for m, w in weights.items() if w > 0))


def beside_the_best(book: FaultBook, complaint: str, repairs: int) -> dict[str, float]:
    """The minutes of each way and of the best plan in a small network, on average of so many repairs."""
    small = cut_down(book, complaint)
    best = Best(small, fresh_signs(small, complaint), complaint)
    rng, minutes = random.Random(f"{complaint} 37"), dict[str, float]()
    for number in range(repairs):
        signs = fresh_signs(small, complaint)
        faults = drawn(signs, complaint, rng)

        def advised(repair: Repair) -> None:
            by_advice(repair, small, [])

        for name, way in ways_of(small, signs, complaint, rng).items():
            repair = Repair(small, signs, complaint, faults, random.Random(number))
            way(repair)
            minutes[name] = minutes.get(name, 0.0) + repair.minutes / repairs
        for name, follow in (("advice", advised), ("the best plan", best.followed)):
            repair = Repair(small, fresh_signs(small, complaint), complaint, faults, random.Random(number))
            follow(repair)
            minutes[name] = minutes.get(name, 0.0) + repair.minutes / repairs
    return minutes
