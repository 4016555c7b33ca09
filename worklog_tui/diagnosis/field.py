"""What is planned over: the causes of one complaint, the belief over every set of them, and what each takes."""

from __future__ import annotations

import math
from functools import cached_property

from worklog_tui.diagnosis.network import Network
from worklog_tui.diagnosis.noisy_or import Piece
from worklog_tui.diagnosis.order import Part, cover_bits
from worklog_tui.diagnosis.pieces import alone, folded, telling
from worklog_tui.diagnosis.signs import Signs
from worklog_tui.diagnosis.spread import CERTAIN, Spread, Term
from worklog_tui.rulebook.faults import FaultBook, Job, Symptom

SUSPECTS = 10
"How many of the likeliest faults are named as suspects."
PLANNED = 40
"How many of the likeliest causes are planned over; the others are folded into what is none of them."
SEEN_AS_NONE = 0.003
"Below this chance a cause is not planned for."
TERMS = 32
"So many products are kept at most; evidence beyond it moves each cause by itself."
DEEPER = 120.0
"Minutes of the deeper inspection when it is none of the suspects (judgement)."
LEAST = 0.01
"Below this chance a fault is no suspect."
DEAR = 20.0
"A repair that costs more than this in parts is not made without a look first (minutes of work)."


class Field:
    """The suspects and causes of a complaint, the belief over every set of causes, and the work that each is."""

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
    def causes(self) -> list[str]:
        """The causes that are planned over, the likeliest first; the others are folded into what is none of them."""
        able = [f for f in self.ranked if f not in self.vetoed and self.network.chance(f) >= SEEN_AS_NONE]
        return able[:PLANNED]

    @cached_property
    def spread(self) -> Spread:
        """The belief over every set of causes that brings the complaint about; the last is what is none of them.

        A fault that is there and plays no part in the complaint need not be found.
        """
        net, links = self.network, self.symptom.causes
        acts, idle = [], []
        for name in self.causes:
            p, link = net.priors[net.index[name]], links[name]
            apart = 1 - p * link
            acts.append(p * link / apart if apart > 0 else CERTAIN)
            idle.append(p * (1 - link) / apart if apart > 0 else 0.0)
        others = (net.chance(f) * links[f] for f in self.ranked if f not in self.causes and f not in self.vetoed)
        other = 1 - (1 - self.symptom.leak) * math.prod(1 - p for p in others)
        spread = Spread((Term(1.0, (*acts, other / (1 - other)), (*idle, 0.0)),))
        for piece in self._evidence():
            exact = len(piece.terms) * len(spread.terms) <= TERMS
            spread = spread.given(piece if exact else alone(piece))
        return spread.scaled() if spread.mass > 0 else spread

    def _evidence(self) -> list[Piece]:
        """The evidence but for the complaint itself over the causes, what tells most first."""
        kept = [self.fold(piece) for sign, piece in self.network.evidence if sign is not self.sign]
        return sorted(kept, key=lambda p: (len(p.terms) > 1, -telling(p)))

    def fold(self, piece: Piece) -> Piece:
        """A piece over the causes alone."""
        return folded(piece, self._mine, self._rest)

    @cached_property
    def _mine(self) -> list[int]:
        return [self.network.index[f] for f in self.causes]

    @cached_property
    def _rest(self) -> dict[int, float]:
        """The chance of each other fault, by what was seen of it alone."""
        mine = set(self._mine)
        rest = {i: p for i, p in enumerate(self.network.priors) if i not in mine}
        for _, piece in self.network.evidence:  # what was seen bad and mended explains the signs before it
            for i in piece.touches() if len(piece.touches()) == 1 else ():
                if i in rest:
                    there, apart = rest[i] * piece.likelihood((i,)), (1 - rest[i]) * piece.likelihood(())
                    rest[i] = there / (there + apart) if there + apart > 0 else rest[i]
        return rest

    @cached_property
    def idle(self) -> dict[str, float]:
        """The minutes of mending that a look at each cause brings on average, though the fault plays no part."""
        found, acting = {}, self.spread.chances
        for n, name in enumerate(self.causes):
            repair = self.signs.faults[name].repair
            found[name] = max(0.0, self.network.chance(name) - acting[n]) * (repair.minutes + repair.parts_cost)
        return found

    @cached_property
    def parts(self) -> list[Part]:
        """The causes as work: minutes, covers, and whether they may be mended unseen."""
        found: list[Part] = []
        for name in self.causes:
            fault = self.signs.faults[name]
            covers = self._covers(fault.repair) | (self._covers(fault.look) if fault.look else 0)
            dear = fault.repair.parts_cost > DEAR
            look = None if fault.look is None else fault.look.minutes + self.idle[name]
            found.append(Part(look, fault.repair.minutes + fault.repair.parts_cost, covers, blind=not dear))
        return [*found, Part(None, DEEPER)]

    def _covers(self, job: Job) -> int:
        return cover_bits(job.access, {a.id: a.needs for a in self.book.access.values()}, self.covers)

    def way(self, covers: int) -> float:
        """The minutes to open some covers."""
        return sum(m for k, m in enumerate(self.minutes) if covers >> k & 1)
