"""Beliefs and likelihoods over sets of suspects, each set a number with one bit a suspect."""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence

from worklog_tui.diagnosis.noisy_or import Piece


def acting_sets(there: Sequence[float], links: Sequence[float]) -> list[float]:
    """From the chance of every set of faults that is there to that of every set that brings the complaint about."""
    acting = list(there)
    for n, link in enumerate(links):
        bit = 1 << n
        for bits in range(len(acting)):
            if bits & bit:
                acting[bits ^ bit] += acting[bits] * (1 - link)
                acting[bits] *= link
    return acting


def has(n: int, there: bool) -> Callable[[int], float]:
    """The likelihood of seeing one suspect, or of not seeing it."""
    return lambda bits: float(bool(bits >> n & 1) is there)


def over(piece: Piece, where: dict[int, int], none: int, rest: float) -> Callable[[int], float]:
    """The likelihood of a piece over sets of suspects (bits): `rest` for the bit that stands for none of them."""
    terms = [(c, [(1 << where[i], v) for i, v in values.items() if i in where]) for c, values in piece.terms]

    def likelihood(bits: int) -> float:
        if bits == none:
            return rest
        return sum(c * math.prod(v for bit, v in values if bits & bit) for c, values in terms)

    return likelihood


def normal(likelihoods: Sequence[Callable[[int], float]], size: int) -> list[Callable[[int], float]]:
    """Likelihoods whose outcomes add up to 1 for every set; a check whose faults each move the odds needs it."""
    rows = [[max(f(bits), 0.0) for bits in range(size)] for f in likelihoods]
    sums = [sum(row[bits] for row in rows) or 1.0 for bits in range(size)]
    return [lambda bits, row=row: row[bits] / sums[bits] for row in rows]  # type: ignore[misc]


def folded(piece: Piece, mine: Sequence[int], rest: dict[int, float]) -> Piece:
    """A piece over the suspects alone: each other fault counts by its prior; suspects are numbered as in `mine`."""
    at = {i: n for n, i in enumerate(mine)}
    terms = []
    for c, values in piece.terms:
        for i, p in rest.items():
            if i in values:
                c *= 1 - p + p * values[i]
        terms.append((c, {at[i]: v for i, v in values.items() if i in at}))
    return Piece(tuple(terms))
