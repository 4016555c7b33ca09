"""What is left to do costs so many minutes: the exact best order of a few causes, a good order of many.

Of many causes, those in the open go by chance over minutes, and what lies behind a cover waits until the best part of
it, taken together, is worth more than the cover and the minutes (the efficiency of a closed cluster: Ottosen and
Jensen, arXiv 1203.3502). The minutes of that order are exact.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import fsum

from worklog_tui.diagnosis.order import Part, best_order
from worklog_tui.diagnosis.spread import Spread

EXACT = 7
"Up to so many parts the best of all orders is worked out."
NOTHING = 1e-12
"A weight that is none."


def minutes_of(spread: Spread, parts: Sequence[Part], covers: Sequence[float], opened: int = 0) -> float:
    """The expected minutes until nothing acts any more, times the mass of the belief."""
    if len(parts) <= EXACT:
        return best_order(spread.table(), parts, covers, opened).cost
    whole = fsum(t.whole for t in spread.terms)
    reached = [t.factor for t in spread.terms]
    failing = still = whole - fsum(reached)
    if failing <= NOTHING:
        return 0.0
    chances = [max(c / failing, 0.0) for c in spread.chances]
    cost = 0.0
    for attempt in good_order(chances, parts, covers, opened):
        cost += max(still, 0.0) * attempt.minutes + failing * attempt.mends
        reached = [r * (1 + t.acts[attempt.part]) for r, t in zip(reached, spread.terms, strict=True)]
        still = whole - fsum(reached)
    return cost


@dataclass(frozen=True, slots=True)
class Attempt:
    """One try of an order: the part, its minutes with the covers that come off for it, and the mending it brings."""

    part: int
    minutes: float
    mends: float = 0.0
    "Minutes, times the chance that it acts while the machine fails."


def good_order(
    chances: Sequence[float], parts: Sequence[Part], covers: Sequence[float], opened: int = 0
) -> list[Attempt]:
    """The parts in order; `chances`: of each to act while the machine fails."""
    tries = [_attempt(i, part, chances[i]) for i, part in enumerate(parts)]
    worth = [chances[i] / max(tries[i].minutes, 1e-9) for i in range(len(parts))]
    left = sorted((i for i in range(len(parts)) if chances[i] > 0), key=lambda i: -worth[i])
    order: list[Attempt] = []
    while left:
        shut = {i: parts[i].covers & ~opened for i in left if parts[i].covers & ~opened}
        best, bits, group = max(
            (_behind(b, left, shut, chances, tries, covers) for b in set(shut.values())), default=(-1.0, 0, [])
        )
        free = [i for i in left if i not in shut and worth[i] >= best]
        taken = free or group
        for n, i in enumerate(taken):
            way = _minutes(bits, covers) if not free and n == 0 else 0.0
            order.append(Attempt(i, tries[i].minutes + way, tries[i].mends))
        opened |= 0 if free else bits
        gone = set(taken)
        left = [i for i in left if i not in gone]
    return order


def _attempt(i: int, part: Part, chance: float) -> Attempt:
    """Whether a part is looked at or mended unseen, whichever takes less."""
    if part.look is None or (part.blind and part.look + chance * part.repair >= part.repair):
        return Attempt(i, part.repair)
    return Attempt(i, part.look, chance * part.repair)


def _behind(
    bits: int, left: Sequence[int], shut: dict[int, int], chances: Sequence[float], tries: Sequence[Attempt],
    covers: Sequence[float],
) -> tuple[float, int, list[int]]:  # fmt: skip
    """The best share of chance over minutes behind some covers, and the parts that give it, best first."""
    best, count, chance, cost = -1.0, 0, 0.0, _minutes(bits, covers)
    members = [i for i in left if i in shut and not shut[i] & ~bits]
    for n, i in enumerate(members, 1):
        chance, cost = chance + chances[i], cost + tries[i].minutes
        if chance / cost > best:
            best, count = chance / cost, n
    return best, bits, members[:count]


def _minutes(bits: int, covers: Sequence[float]) -> float:
    return sum(m for k, m in enumerate(covers) if bits >> k & 1) if bits else 0.0
