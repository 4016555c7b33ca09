"""What the fault files advise about an open complaint: the suspects, and the checks that save the most work."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass
from functools import cached_property

from worklog_tui.diagnosis.network import OTHER, Network
from worklog_tui.diagnosis.noisy_or import Piece
from worklog_tui.diagnosis.order import (
    Look,
    Part,
    after_repair,
    belief_over,
    best_order,
    cover_bits,
    expected_after,
)  # fmt: skip
from worklog_tui.diagnosis.sign import Sign
from worklog_tui.diagnosis.signs import Signs
from worklog_tui.rulebook.faults import Fault, FaultBook, Job, Symptom

SUSPECTS = 7
"How many of the likeliest faults are planned over; the others are folded into the evidence."
DEEPER = 120.0
"Minutes of the deeper inspection when it is none of the suspects (judgement)."
LEAST = 0.01
"Below this chance a fault is no suspect."
FREE_MINUTES, FREE_CHANCE = 2.0, 0.03
"A look that takes no more than this, at a suspect of at least this chance, comes first: it shifts the odds by far."
OUTSHONE = 0.25
"A free look at a suspect less likely than this share of the likeliest does not come first (judgement)."
NEAR = 2.0
"Within so many minutes of the best, the simple checks of the fault tables come first."
SLACK = 0.05
"What costs this share more than the best order without it is no worse than a part of that order."
TIE = 0.01
SURE, SEEN = 0.5, 0.2
"From these chances on a repair is named: without a look, and after one that showed it bad."
VOIDED = 0.15
"A sign that is trusted less was voided by a discovery: the look is worth making again."
DEAR = 20.0
"A repair that costs more than this in parts is not made without a look first (minutes of work)."


@dataclass(frozen=True, slots=True)
class Option:
    """One thing to do about the complaint, with the expected minutes to a working machine when it is done first."""

    sort: str
    "check, look or repair."
    id: str
    job: Job
    expected: float
    saves: float
    after: tuple[tuple[str, float, str], ...]
    "For each outcome: its name, its chance, and the likeliest fault after it."
    first: bool = False
    "A free look, or one of the simple checks that the tables name first."


class Engine:
    """The advice of the fault files for one complaint."""

    def __init__(
        self, book: FaultBook, signs: Signs, network: Network, symptom: Symptom, vetoed: frozenset[str],
        opened: frozenset[str] = frozenset(),
    ) -> None:  # fmt: skip
        self.book, self.signs, self.network, self.symptom, self.vetoed = book, signs, network, symptom, vetoed
        linked = [f for f in symptom.causes if f in signs.faults]
        ranked = sorted(linked, key=lambda f: (-network.chance(f), f))
        self.ranked = ranked
        self.suspects = [f for f in ranked if network.chance(f) >= LEAST][:SUSPECTS]
        self.covers = sorted(book.access)
        self.minutes = [0.0 if c in opened else book.access[c].minutes for c in self.covers]
        self.opened = opened

    @cached_property
    def top(self) -> float:
        """The chance of the likeliest fault."""
        return max((self.network.chance(f) for f in self.suspects), default=0.0)

    @cached_property
    def belief(self) -> list[float]:
        """The chance of every set of suspects, with all other faults folded into the evidence.

        The last bit stands for what is none of them: it is set where no suspect is there, for the machine still fails.
        """
        net = self.network
        mine = [net.index[f] for f in self.suspects]
        rest = {i: p for i, p in enumerate(net.priors) if i not in mine}
        pieces = [_folded(piece, mine, rest) for _, piece in net.evidence]
        priors = [net.priors[i] for i in mine]
        belief = belief_over([1 - p for p in priors], priors, pieces)
        return [0.0, *belief[1:], belief[0], *[0.0] * (len(belief) - 1)]

    @cached_property
    def parts(self) -> list[Part]:
        """The suspects as work: minutes, covers, and whether they may be mended unseen."""
        found = []
        for name in self.suspects:
            fault = self.signs.faults[name]
            covers = self._covers(fault.repair) | (self._covers(fault.look) if fault.look else 0)
            dear = fault.repair.parts_cost > DEAR
            look = fault.look.minutes if fault.look else None
            found.append(Part(look, fault.repair.minutes + fault.repair.parts_cost, covers, blind=not dear))
        return [*found, Part(None, DEEPER)]

    def _covers(self, job: Job) -> int:
        return cover_bits(job.access, {a.id: a.needs for a in self.book.access.values()}, self.covers)

    def unexplained(self) -> float:
        """How likely it is that none of the listed faults causes the complaint."""
        return self.network.chance(OTHER + self.symptom.id)

    def options(self) -> list[Option]:
        """What can be done about it, best first; empty when nothing is suspected."""
        if not self.suspects or not sum(self.belief) > 0:
            return []
        plan = best_order(self.belief, self.parts, self.minutes)
        found = [self._rated(*option, plan.cost) for option in self._candidates()]
        found = [o for o in found if o.saves >= -SLACK * plan.cost or o.sort == "repair"]
        if not found:
            return []
        best = min(o.expected for o in found)
        return sorted(found, key=lambda o: (not self._comes_first(o, best), *_rank(o, best)))

    def _candidates(self) -> Iterable[tuple[str, str, Job, tuple[tuple[str, Callable[[int], float]], ...]]]:
        where = {self.network.index[f]: n for n, f in enumerate(self.suspects)}
        for check in self.signs.checks.values():
            fits = not check.only_for or self.symptom.id in check.only_for
            if fits and self._worth(check.id) and any(f in self.suspects for f in check.likelihood):
                pieces = [self.network.check_piece(check, k, 1.0, math.inf) for k in range(len(check.outcomes))]
                chances = _normal([_over(piece, where) for piece in pieces], len(self.belief))
                yield "check", check.id, check.job, tuple(zip(check.outcomes, chances, strict=True))
        for n, name in enumerate(self.suspects):
            fault = self.signs.faults[name]
            if name in self.vetoed:
                continue
            if fault.look and self._worth(name):
                yield "look", name, fault.look, (("bad", _has(n, True)), ("good", _has(n, False)))
            if self._worth_mending(fault):
                yield "repair", name, fault.repair, ()

    def _worth(self, name: str) -> bool:
        """Whether a check or look was not made already since the thing was last worked on."""
        if name in self.vetoed:
            return False
        sign = self.signs.check_signs.get(name) or self.signs.look_signs.get(name)
        check = self.signs.checks.get(name)
        answered = self.signs.symptom_signs.get(check.answers) if check else None
        if answered and answered.shows == "present":
            return False
        return sign is None or sign.trust < VOIDED or sign.event.when < self._disturbed_at(name)

    def _disturbed_at(self, name: str) -> float:
        work = self.signs.disturbed.get(name)
        return work.when if work else -1.0

    def _worth_mending(self, fault: Fault) -> bool:
        """Whether a repair can be named at all: seen bad and still likely, or as good as sure and not dear."""
        sign = self.signs.look_signs.get(fault.id)
        chance = self.network.chance(fault.id)
        if sign is not None and sign.shows == "bad":
            return chance >= SEEN
        return chance >= SURE and fault.repair.parts_cost <= DEAR

    def _rated(
        self, sort: str, name: str, job: Job, outcomes: tuple[tuple[str, Callable[[int], float]], ...], base: float
    ) -> Option:
        covers = self._covers(job)

        def follow(belief: list[float], opened: int) -> float:
            return best_order(belief, self.parts, self.minutes, opened).cost

        if sort == "repair":
            n = self.suspects.index(name)
            way = sum(m for k, m in enumerate(self.minutes) if covers >> k & 1)
            expected = job.minutes + job.parts_cost + way + follow(after_repair(self.belief, n), covers)
        else:
            look = Look(job.minutes, covers, tuple(likelihood for _, likelihood in outcomes))
            expected = expected_after(look, self.belief, follow, 0, self.minutes)
        after = tuple((o, *self._after(likelihood)) for o, likelihood in outcomes)
        first = name in self.symptom.first
        return Option(sort, name, job, expected, base - expected, after, first)

    def _after(self, likelihood: Callable[[int], float]) -> tuple[float, str]:
        joint = [b * likelihood(bits) for bits, b in enumerate(self.belief)]
        mass = sum(joint)
        chances = [sum(j for bits, j in enumerate(joint) if bits >> n & 1) for n in range(len(self.suspects))]
        best = max(range(len(chances)), key=lambda n: chances[n])
        return mass, self.suspects[best]

    def _comes_first(self, option: Option, best: float) -> bool:
        return option.first and (self._is_free(option) or option.expected <= best + NEAR)

    def _is_free(self, option: Option) -> bool:
        """Whether an option takes no time to speak of and can still move the odds."""
        if option.sort == "repair" or option.job.minutes > FREE_MINUTES or option.job.access:
            return False
        if option.sort == "look":
            return self.network.chance(option.id) >= max(FREE_CHANCE, OUTSHONE * self.top)
        return len({fault for _, _, fault in option.after}) > 1


def _rank(option: Option, best: float) -> tuple[int, float, float, str]:
    """Options within a hundredth of each other are ties: the quicker one, then the one without parts, comes first."""
    ties = int((option.expected - best) / (TIE * best)) if best > 0 else 0
    return ties, option.job.minutes, option.job.parts_cost, option.id


def _has(n: int, there: bool) -> Callable[[int], float]:
    return lambda bits: float(bool(bits >> n & 1) is there)


def _over(piece: Piece, where: dict[int, int]) -> Callable[[int], float]:
    """The likelihood of a piece over sets of suspects (bits); other faults are taken as absent."""
    terms = [(c, [(1 << where[i], v) for i, v in values.items() if i in where]) for c, values in piece.terms]
    return lambda bits: sum(c * math.prod(v for bit, v in values if bits & bit) for c, values in terms)


def _normal(likelihoods: Sequence[Callable[[int], float]], size: int) -> list[Callable[[int], float]]:
    """Likelihoods whose outcomes add up to 1 for every set; a check whose faults each move the odds needs it."""
    rows = [[max(f(bits), 0.0) for bits in range(size)] for f in likelihoods]
    sums = [sum(row[bits] for row in rows) or 1.0 for bits in range(size)]
    return [lambda bits, row=row: row[bits] / sums[bits] for row in rows]  # type: ignore[misc]


def _folded(piece: Piece, mine: Sequence[int], rest: dict[int, float]) -> Piece:
    """A piece over the suspects alone: each other fault counts by its prior; suspects are numbered as in `mine`."""
    at = {i: n for n, i in enumerate(mine)}
    terms = []
    for c, values in piece.terms:
        for i, p in rest.items():
            if i in values:
                c *= 1 - p + p * values[i]
        terms.append((c, {at[i]: v for i, v in values.items() if i in at}))
    return Piece(tuple(terms))


def standing_signs(signs: Signs) -> list[Sign]:
    """The signs of complaints that are still there, the telling ones first, and of these the latest."""
    there = [s for s in signs.symptom_signs.values() if s.shows == "present"]
    return sorted(there, key=lambda s: (signs.symptoms[s.of].vague, -s.event.when))
