"""What the fault files advise about an open complaint: the suspects, and the checks that save the most work."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable
from functools import cached_property

from worklog_tui.diagnosis.network import Network
from worklog_tui.diagnosis.option import Option, rank
from worklog_tui.diagnosis.order import (
    Look,
    Part,
    after_repair,
    belief_over,
    best_order,
    cover_bits,
    expected_after,
)  # fmt: skip
from worklog_tui.diagnosis.signs import Signs
from worklog_tui.diagnosis.suspect_sets import acting_sets, folded, has, normal, over
from worklog_tui.rulebook.faults import Check, Fault, FaultBook, Job, Symptom

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
STANDS_OUT, APART = 0.5, 1.6
"From this chance on, and so many times the next one, a suspect stands out: it is dealt with first (judgement)."
SURE, SEEN = 0.5, 0.2
"From these chances on a repair is named: unseen, and seen bad."
VOIDED = 0.15
"A sign that is trusted less was voided by a discovery: the look is worth making again."
DEAR = 20.0
"A repair that costs more than this in parts is not made without a look first (minutes of work)."


class Engine:
    """The advice of the fault files for one complaint."""

    def __init__(
        self, book: FaultBook, signs: Signs, network: Network, symptom: Symptom, vetoed: frozenset[str],
        opened: frozenset[str] = frozenset(),
    ) -> None:  # fmt: skip
        self.book, self.signs, self.network, self.symptom, self.vetoed = book, signs, network, symptom, vetoed
        self.sign = signs.symptom_signs.get(symptom.id)
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
        """The chance of every set of suspects that brings the complaint about, with all other faults folded in.

        A fault that is there and plays no part in the complaint need not be found. The last bit stands for what is none
        of the suspects: another cause, listed or not, which takes a deeper inspection.
        """
        net, links = self.network, self.symptom.causes
        mine = [net.index[f] for f in self.suspects]
        rest = {i: p for i, p in enumerate(net.priors) if i not in mine}
        now = (sign is not self.sign for sign, _ in net.evidence)
        pieces = [folded(piece, mine, rest) for (_, piece), kept in zip(net.evidence, now, strict=True) if kept]
        priors = [net.priors[i] for i in mine]
        there = belief_over([1 - p for p in priors], priors, pieces)
        acting = acting_sets(there, [links[f] for f in self.suspects])
        others = (net.priors[net.index[f]] * links[f] for f in self.ranked if f not in self.suspects)
        deeper = 1 - (1 - self.symptom.leak) * math.prod(1 - p for p in others)
        belief = [0.0, *acting[1:], acting[0] * deeper, *[0.0] * (len(acting) - 1)]
        whole = sum(belief)
        return [x / whole for x in belief] if whole > 0 else belief

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
        return [*found, Part(None, self._deeper())]

    @cached_property
    def rest(self) -> list[tuple[str, float]]:
        """The listed causes that are no suspects, each with its chance to bring the complaint about."""
        links = self.symptom.causes
        chances = ((f, self.network.chance(f) * links[f]) for f in self.ranked if f not in self.suspects)
        return [(f, chance) for f, chance in chances if f not in self.vetoed]

    def _deeper(self) -> float:
        """The minutes to find and mend what is none of the suspects: the rest in turn, else a long search."""
        spent, sum_, whole = 0.0, 0.0, 0.0
        for name, chance in sorted(self.rest, key=lambda r: -r[1] / self._looking(r[0])):
            spent += self._looking(name)
            repair = self.signs.faults[name].repair
            sum_, whole = sum_ + chance * (spent + repair.minutes + repair.parts_cost), whole + chance
        whole, sum_ = whole + self.symptom.leak, sum_ + self.symptom.leak * (spent + DEEPER)
        return sum_ / whole if whole > 0 else DEEPER

    def _looking(self, name: str) -> float:
        """The minutes to look at a fault, its covers with them."""
        fault = self.signs.faults[name]
        job = fault.look or fault.repair
        return job.minutes + sum(m for k, m in enumerate(self.minutes) if self._covers(job) >> k & 1)

    def _covers(self, job: Job) -> int:
        return cover_bits(job.access, {a.id: a.needs for a in self.book.access.values()}, self.covers)

    def options(self) -> list[Option]:
        """What can be done about it, best first; empty when nothing is suspected."""
        if not self.suspects or not sum(self.belief) > 0:
            return []
        plan = best_order(self.belief, self.parts, self.minutes)
        found = [self._rated(*option, plan.cost) for option in self._candidates()]
        top = self.standout
        found = [o for o in found if o.saves >= -SLACK * plan.cost or o.sort == "repair" or (o.sort, o.id) == top]
        if not found:
            return []
        best = min(o.expected for o in found)
        return sorted(found, key=lambda o: ((o.sort, o.id) != top, not self._comes_first(o, best), *rank(o, best)))

    @cached_property
    def standout(self) -> tuple[str, str]:
        """What to do about the one suspect that all points to: look at it, or mend what was seen or is cheap."""
        if not self.suspects:
            return "", ""
        chances = sorted((self.network.chance(f) for f in self.suspects), reverse=True)
        if chances[0] < STANDS_OUT or (len(chances) > 1 and chances[0] < APART * chances[1]):
            return "", ""
        name = next(f for f in self.suspects if self.network.chance(f) == chances[0])
        fault, seen = self.signs.faults[name], self.signs.look_signs.get(name)
        cheap = fault.look is None or fault.repair.minutes + fault.repair.parts_cost <= fault.look.minutes
        if (seen is None or seen.shows != "bad") and not cheap and self._worth(name):
            return "look", name
        return "repair", name

    def _candidates(self) -> Iterable[tuple[str, str, Job, tuple[tuple[str, Callable[[int], float]], ...]]]:
        where = {self.network.index[f]: n for n, f in enumerate(self.suspects)}
        for check in self.signs.checks.values():
            fits = not check.only_for or self.symptom.id in check.only_for
            if fits and self._worth(check.id) and any(f in self.suspects for f in check.likelihood):
                pieces = [self.network.check_piece(check, k, 1.0, math.inf) for k in range(len(check.outcomes))]
                among = self._among_rest(check)
                overs = [over(piece, where, 1 << len(where), r) for piece, r in zip(pieces, among, strict=True)]
                chances = normal(overs, len(self.belief))
                yield "check", check.id, check.job, tuple(zip(check.outcomes, chances, strict=True))
        for n, name in enumerate(self.suspects):
            fault = self.signs.faults[name]
            if name in self.vetoed:
                continue
            if fault.look and self._worth(name):
                yield "look", name, fault.look, (("bad", has(n, True)), ("good", has(n, False)))
            if self._worth_mending(fault):
                yield "repair", name, fault.repair, ()

    def _among_rest(self, check: Check) -> list[float]:
        """How likely each outcome of a check is when none of the suspects is the cause, but one of the rest is."""
        whole = self.symptom.leak + sum(chance for _, chance in self.rest)
        rows = [(check.likelihood.get(f, check.base), chance) for f, chance in self.rest]
        rows.append((check.base, self.symptom.leak))
        return [sum(row[k] * chance for row, chance in rows) / whole for k in range(len(check.outcomes))]

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
