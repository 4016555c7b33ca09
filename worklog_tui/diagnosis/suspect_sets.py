"""Beliefs and likelihoods over sets of suspects: each a number with one bit a suspect, one more for none."""

from __future__ import annotations

from collections.abc import Sequence

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


def has(n: int, there: bool, size: int) -> list[float]:
    """For every set the likelihood of seeing one suspect, or of not seeing it."""
    return [float(bool(bits >> n & 1) is there) for bits in range(size)]


def over(piece: Piece, where: dict[int, int], rest: float = 1.0) -> list[float]:
    """The likelihood of a piece for every set of suspects, `rest` for none of them.

    `where`: which suspect a fault of the piece is. Sets with the last bit and others are never met: they get `rest`.
    """
    size = 1 << len(where)
    whole = [0.0] * size
    for c, values in piece.terms:
        at = {where[i]: v for i, v in values.items() if i in where}
        row = [c]
        for n in range(len(where)):
            v = at.get(n, 1.0)
            row += [x * v for x in row] if v != 1.0 else row
        whole = [a + b for a, b in zip(whole, row, strict=True)]
    return [*whole, *[rest] * size]


def normal(likelihoods: Sequence[Sequence[float]]) -> list[list[float]]:
    """Likelihoods whose outcomes add up to 1 for every set; a check whose faults each move the odds needs it."""
    rows = [[max(x, 0.0) for x in row] for row in likelihoods]
    sums = [sum(column) or 1.0 for column in zip(*rows, strict=True)]
    return [[x / whole for x, whole in zip(row, sums, strict=True)] for row in rows]


def folded(piece: Piece, mine: Sequence[int], rest: dict[int, float]) -> Piece:
    """A piece over the suspects alone: each other fault counts by its prior; suspects are numbered as in `mine`."""
    at = {i: n for n, i in enumerate(mine)}
    terms = []
    for c, values in piece.terms:
        for i, v in values.items():
            if i in rest:
                p = rest[i]
                c *= 1 - p + p * v
        terms.append((c, {at[i]: v for i, v in values.items() if i in at}))
    return Piece(tuple(terms))
