"""Pieces of evidence made smaller: over the causes of one complaint alone, or as one product."""

from __future__ import annotations

from collections.abc import Sequence

from worklog_tui.diagnosis.noisy_or import Piece

LEAST = 1e-9


def folded(piece: Piece, mine: Sequence[int], rest: dict[int, float]) -> Piece:
    """A piece over the causes alone: each other fault counts by its prior; causes are numbered as in `mine`."""
    at = {i: n for n, i in enumerate(mine)}
    terms = []
    for c, values in piece.terms:
        for i, v in values.items():
            if i in rest:
                p = rest[i]
                c *= 1 - p + p * v
        terms.append((c, {at[i]: v for i, v in values.items() if i in at}))
    return Piece(tuple(terms))


def alone(piece: Piece) -> Piece:
    """A piece as one product: each fault moves the odds as if it were the only one."""
    without = max(piece.likelihood(()), LEAST)
    return Piece(((1.0, {i: max(piece.likelihood((i,)), LEAST) / without for i in sorted(piece.touches())}),))


def telling(piece: Piece) -> float:
    """How far a piece can raise a fault; what raises several is kept whole longest: only one need be there."""
    without = max(piece.likelihood(()), LEAST)
    return max((piece.likelihood((i,)) / without for i in piece.touches()), default=0.0)
