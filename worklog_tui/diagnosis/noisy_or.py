"""How likely each fault is when several may be present at once.

Noisy-OR networks (the two-level form of QMR) solved by Quickscore (Heckerman, 1989): the likelihood of a piece of
evidence is a short sum of products over the faults, and sums of products multiply out. Exact for up to twelve pieces
that touch several faults; beyond that the weakest are left out, and named.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from decimal import Decimal, localcontext
from typing import Any

MOST_BRANCHES = 4096
"2 to the power of 12: the exact limit."
SMALL = 1e-7
"Below this share of its terms an alternating sum has lost too many digits, and is done again with more of them."
DIGITS = 60


@dataclass(frozen=True, slots=True)
class Piece:
    """One piece of evidence: its likelihood with the faults F is the sum of c times the product of v[i] over i in F."""

    terms: tuple[tuple[float, Mapping[int, float]], ...]

    def touches(self) -> set[int]:
        """The faults that move it."""
        return {i for _, values in self.terms for i, v in values.items() if v != 1}

    def likelihood(self, faults: Iterable[int]) -> float:
        """Its likelihood with exactly these faults."""
        present = list(faults)
        return math.fsum(c * math.prod(values.get(i, 1.0) for i in present) for c, values in self.terms)


@dataclass(frozen=True, slots=True)
class Posterior:
    """The chance of each fault, the chance of the evidence, and the numbers of the pieces that were left out."""

    chances: tuple[float, ...]
    evidence: float
    left_out: tuple[int, ...] = ()


def present(links: Mapping[int, float], leak: float, trust: float = 1.0, base: float = 0.5) -> Piece:
    """A finding that is there: 1 - (1 - leak) times the product of (1 - q), mixed with its base rate by trust."""
    return Piece((
        (trust + (1 - trust) * base, {}),
        (-trust * (1 - leak), {i: 1 - q for i, q in links.items()}),
    ))  # fmt: skip


def absent(links: Mapping[int, float], leak: float, trust: float = 1.0, base: float = 0.5) -> Piece:
    """A finding that is not there."""
    kept = (trust * (1 - leak), {i: 1 - q for i, q in links.items()})
    return Piece((kept,) if trust == 1 else (kept, ((1 - trust) * (1 - base), {})))


def outcome(rows: Mapping[int, Sequence[float]], base: Sequence[float], seen: int, trust: float, rate: float) -> Piece:
    """An outcome of a check with ordered outcomes, best first (noisy-MAX): the worst that the faults make of it.

    `rows` gives each fault's chances of the outcomes when it is alone, `base` those without any, `rate` the fixed base
    rate that an untrusted outcome falls back on.
    """
    worse, better = _ratios(rows, base, seen), _ratios(rows, base, seen - 1)
    terms = [(trust * math.fsum(base[: seen + 1]), worse)]
    if seen > 0:
        terms.append((-trust * math.fsum(base[:seen]), better))
    if trust < 1:
        terms.append(((1 - trust) * rate, {}))
    return Piece(tuple(t for t in terms if t[0] != 0))


def _ratios(rows: Mapping[int, Sequence[float]], base: Sequence[float], upto: int) -> dict[int, float]:
    whole = math.fsum(base[: upto + 1])
    if upto < 0 or whole <= 0:
        return {}
    return {i: min(1.0, math.fsum(row[: upto + 1]) / whole) for i, row in rows.items()}


def posterior(priors: Sequence[float], pieces: Sequence[Piece], limit: int = MOST_BRANCHES) -> Posterior:
    """The chance of every fault given all pieces; a ValueError when they cannot all be true."""
    off = [1.0 - p for p in priors]
    on = [float(p) for p in priors]
    scale, joint = 1.0, []
    for number, piece in enumerate(pieces):
        touched = piece.touches()
        if len(touched) <= 1 or len(piece.terms) == 1:
            scale *= _absorb(piece, touched, off, on)
        else:
            joint.append((number, piece, touched))
    chances = [b / (a + b) if a + b > 0 else 0.0 for a, b in zip(off, on, strict=True)]
    whole, left_out = scale, []
    alone = set(range(len(priors)))
    for faults, group in _groups(joint):
        alone -= set(faults)
        kept, dropped = _within_limit(group, chances, limit)
        left_out += dropped
        mass, shares = _solve(faults, kept, off, on)
        whole *= mass
        for i, share in zip(faults, shares, strict=True):
            chances[i] = share
    whole *= math.prod(off[i] + on[i] for i in alone)
    if not whole > 0:
        raise ValueError("the evidence contradicts itself: no set of faults explains it")
    return Posterior(tuple(chances), whole, tuple(sorted(left_out)))


def _absorb(piece: Piece, touched: set[int], off: list[float], on: list[float]) -> float:
    """Moves a piece of one fault, or of one product, into the weights of the faults; gives its constant."""
    if len(piece.terms) == 1:
        constant, values = piece.terms[0]
        for i, v in values.items():
            on[i] *= v
        return constant
    for i in touched:
        off[i] *= piece.likelihood(())
        on[i] *= piece.likelihood((i,))
        return 1.0
    return piece.likelihood(())


Joint = list[tuple[int, Piece, set[int]]]


def _groups(joint: Joint) -> list[tuple[list[int], Joint]]:
    """The pieces in groups that share no fault; groups are independent of one another."""
    groups: list[tuple[set[int], Joint]] = []
    for entry in joint:
        faults, members = set(entry[2]), [entry]
        apart = []
        for other, theirs in groups:
            if other & faults:
                faults |= other
                members = theirs + members
            else:
                apart.append((other, theirs))
        groups = [*apart, (faults, members)]
    return [(sorted(faults), members) for faults, members in groups]


def _within_limit(group: Joint, chances: Sequence[float], limit: int) -> tuple[list[Piece], list[int]]:
    """The strongest pieces whose sums multiply out to no more than the limit, and the numbers of the others."""
    if math.prod(len(piece.terms) for _, piece, _ in group) <= limit:
        return [piece for _, piece, _ in group], []
    strength = {number: _strength(piece, touched, chances) for number, piece, touched in group}
    kept, dropped, branches = [], [], 1
    for number, piece, _ in sorted(group, key=lambda e: -strength[e[0]]):
        if branches * len(piece.terms) <= limit:
            branches *= len(piece.terms)
            kept.append(piece)
        else:
            dropped.append(number)
    return kept, dropped


def _strength(piece: Piece, touched: set[int], chances: Sequence[float]) -> float:
    """How far a piece can move a fault by itself: the greatest log likelihood ratio, weighed by the fault's chance."""
    without = max(piece.likelihood(()), 1e-12)
    return max(abs(math.log(max(piece.likelihood((i,)), 1e-12) / without)) * chances[i] for i in touched)


Weights = Sequence[float] | Sequence[Decimal]


def _solve(
    faults: Sequence[int], pieces: Sequence[Piece], off: Sequence[float], on: Sequence[float]
) -> tuple[float, list[float]]:
    """The mass of the pieces over the faults they touch, and each fault's share of it."""
    size, mass, shares = _sum(faults, pieces, off, on)
    if mass <= SMALL * size:
        with localcontext() as context:
            context.prec = DIGITS
            size, mass, shares = _sum(faults, pieces, [Decimal(x) for x in off], [Decimal(x) for x in on])
            shares = [s / mass for s in shares] if mass > 0 else shares
    else:
        shares = [s / mass for s in shares]
    if not mass > 0:
        raise ValueError("the evidence contradicts itself: no set of faults explains it")
    return float(mass), [float(s) for s in shares]


def _sum(faults: Sequence[int], pieces: Sequence[Piece], off: Weights, on: Weights) -> tuple[float, Any, list[Any]]:
    """The alternating sum over all branches: its size without signs, its value, and each fault's part of it."""
    exact = bool(off) and isinstance(off[0], Decimal)
    number: Any = Decimal if exact else float
    add: Any = sum if exact else math.fsum
    at = {i: n for n, i in enumerate(faults)}
    layers = [
        [(number(c), [(at[i], number(v)) for i, v in values.items() if i in at]) for c, values in piece.terms]
        for piece in pieces
    ]
    a: list[Any] = [off[i] for i in faults]
    totals: list[Any] = []
    parts: list[list[Any]] = []

    def branch(depth: int, coefficient: Any, with_fault: list[Any]) -> None:
        if depth == len(layers):
            sums = [x + y for x, y in zip(a, with_fault, strict=True)]
            whole = math.prod(sums, start=coefficient)
            totals.append(whole)
            parts.append([whole * y / s if s else whole for y, s in zip(with_fault, sums, strict=True)])
            return
        for c, values in layers[depth]:
            below = list(with_fault)
            for n, v in values:
                below[n] *= v
            branch(depth + 1, coefficient * c, below)

    branch(0, number(1), [on[i] for i in faults])
    size = math.fsum(abs(float(t)) for t in totals)
    return size, add(totals), [add(column) for column in zip(*parts, strict=True)]
