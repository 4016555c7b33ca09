"""What is planned over: the suspects of one complaint, the belief over every set of them, and what each takes."""

from __future__ import annotations

import math
from functools import cached_property

from worklog_tui.diagnosis.network import Network
from worklog_tui.diagnosis.order import Part, belief_over, cover_bits
from worklog_tui.diagnosis.signs import Signs
from worklog_tui.diagnosis.suspect_sets import acting_sets, folded
from worklog_tui.rulebook.faults import FaultBook, Job, Symptom

SUSPECTS = 10
"How many of the likeliest faults are planned over; the others are folded into the evidence."
DEEPER = 120.0
"Minutes of the deeper inspection when it is none of the suspects (judgement)."
LEAST = 0.01
"Below this chance a fault is no suspect."
DEAR = 20.0
"A repair that costs more than this in parts is not made without a look first (minutes of work)."


class Field:
    """The suspects of a complaint, the belief over every set of them, and the work that each is."""

    def __init__(
        self, book: FaultBook, signs: Signs, network: Network, symptom: Symptom, vetoed: frozenset[str],
        opened: frozenset[str] = frozenset(),
    ) -> None:  # fmt: skip
        self.book, self.signs, self.network, self.symptom, self.vetoed = book, signs, network, symptom, vetoed
        self.sign = signs.symptom_signs.get(symptom.id)
        linked = [f for f in symptom.causes if f in signs.faults]
        ranked = sorted(linked, key=lambda f: (-network.chance(f), f))
        self.ranked = ranked
        self.covers = sorted(book.access)
        self.minutes = [0.0 if c in opened else book.access[c].minutes for c in self.covers]
        self.opened = opened
        self.suspects = [f for f in ranked if network.chance(f) >= LEAST][:SUSPECTS]

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
    def idle(self) -> dict[str, float]:
        """The minutes of mending that a look at each suspect brings on average, though the fault plays no part."""
        found = {}
        for n, name in enumerate(self.suspects):
            acting = sum(b for bits, b in enumerate(self.belief) if bits >> n & 1)
            repair = self.signs.faults[name].repair
            found[name] = max(0.0, self.network.chance(name) - acting) * (repair.minutes + repair.parts_cost)
        return found

    @cached_property
    def parts(self) -> list[Part]:
        """The suspects as work: minutes, covers, and whether they may be mended unseen."""
        found: list[Part] = []
        for name in self.suspects:
            fault = self.signs.faults[name]
            covers = self._covers(fault.repair) | (self._covers(fault.look) if fault.look else 0)
            dear = fault.repair.parts_cost > DEAR
            look = fault.look.minutes if fault.look else None
            look = None if look is None else look + self.idle[name]
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
