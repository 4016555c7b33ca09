"""The belief over every set of the causes of a complaint, as a short sum of products.

Faults come independently of one another, and evidence is a sum of products too (`noisy_or.Piece`), so the weight of
"just the causes A act" is the sum over terms of c times the product of x[i] over i in A, and that of "all acting causes
lie in B" the sum of c times the product of 1 + x[i] over i in B. It is exact for any number of causes at once, where a
table of all their sets would not be: forty causes have a million million sets.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import fsum, prod

from worklog_tui.diagnosis.noisy_or import Piece

CERTAIN = 1e9
"Odds that stand for certainty."


@dataclass(frozen=True, slots=True)
class Term:
    """One product: its factor, the odds of each cause to act, and the chance that one that does not act is there."""

    factor: float
    acts: tuple[float, ...]
    idle: tuple[float, ...]

    @property
    def whole(self) -> float:
        """Its weight over all sets of causes."""
        return self.factor * prod(1 + x for x in self.acts)

    def given(self, c: float, values: Sequence[tuple[int, float]]) -> Term:
        """The product times c and, for each cause that is there, acting or not, its value."""
        acts, idle, factor = list(self.acts), list(self.idle), self.factor * c
        for i, v in values:
            without = 1 - idle[i] + idle[i] * v
            factor *= without
            acts[i] = acts[i] * v / without if without > 0 else CERTAIN
            idle[i] = idle[i] * v / without if without > 0 else 0.0
        return Term(factor, tuple(acts), tuple(idle))

    def without(self, i: int, factor: float) -> Term:
        """The product once a cause plays no part any more."""
        return Term(self.factor * factor, (*self.acts[:i], 0.0, *self.acts[i + 1 :]), self.idle)


@dataclass(frozen=True, slots=True)
class Spread:
    """The belief; `failing`: whether the machine is known to fail still, so that some cause acts."""

    terms: tuple[Term, ...]
    failing: bool = True

    @property
    def mass(self) -> float:
        """The weight of all that may be so."""
        return max(0.0, fsum(t.whole - t.factor if self.failing else t.whole for t in self.terms))

    @property
    def chances(self) -> list[float]:
        """The weight of each cause to act."""
        whole = [(t.whole, t.acts) for t in self.terms]
        return [fsum(w * acts[i] / (1 + acts[i]) for w, acts in whole) for i in range(len(self.terms[0].acts))]

    def table(self) -> list[float]:
        """The weight of every set of causes by its bits, the empty set (nothing acts) first."""
        whole = [0.0] * (1 << len(self.terms[0].acts))
        for term in self.terms:
            row = [term.factor]
            for x in term.acts:
                row += [r * x for r in row]
            whole = [a + b for a, b in zip(whole, row, strict=True)]
        return [0.0 if self.failing else max(whole[0], 0.0), *(max(w, 0.0) for w in whole[1:])]

    def given(self, piece: Piece) -> Spread:
        """The belief with one more piece of evidence; its faults are numbered as the causes."""
        ways = [(c, list(values.items())) for c, values in piece.terms]
        return Spread(tuple(t.given(c, values) for t in self.terms for c, values in ways), self.failing)

    def found(self, i: int) -> Spread:
        """The belief once a cause was seen to act and was mended: the machine may be well now."""
        return Spread(tuple(t.without(i, t.acts[i]) for t in self.terms), failing=False)

    def cleared(self, i: int) -> Spread:
        """The belief once a cause was seen to play no part."""
        return Spread(tuple(t.without(i, 1.0) for t in self.terms), self.failing)

    def mended(self, i: int) -> Spread:
        """The belief once a cause was mended unseen: right for every set that still acts, not for the empty one."""
        return Spread(tuple(t.without(i, 1 + t.acts[i]) for t in self.terms), failing=False)

    def scaled(self) -> Spread:
        """The same belief with a mass of 1."""
        mass = self.mass
        return Spread(tuple(Term(t.factor / mass, t.acts, t.idle) for t in self.terms), self.failing)
