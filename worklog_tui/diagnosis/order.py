"""The exact best fixed order of looking and repairing for a few faults with shared covers; costs are minutes."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import lru_cache


@dataclass(frozen=True, slots=True)
class Part:
    """One suspect as work: minutes to look (None when nothing can be seen), to repair, and the covers in the way."""

    look: float | None
    repair: float
    covers: int = 0
    "One bit a cover."
    blind: bool = True
    "May be repaired without a look; False where the repair is dear or cannot be undone."


@dataclass(frozen=True, slots=True)
class Plan:
    """The expected minutes of a plan, and its steps: (part, 'look' or 'repair')."""

    cost: float
    steps: tuple[tuple[int, str], ...]


def best_order(belief: Sequence[float], parts: Sequence[Part], covers: Sequence[float], opened: int = 0) -> Plan:
    """The cheapest fixed order that clears all faults, stopping as soon as the machine works.

    f(P) = min over i of [look: pf(P)(access + look) + m_i repair, repair: pf(P)(access + repair)] + f(P and i), with
    pf(P) = the chance that a fault remains outside P (a subset sum) and m_i = the chance of fault i. O(n 2^n).
    """
    n = len(parts)
    full = (1 << n) - 1
    within, minutes = subset_sums(belief), _Minutes(covers)
    total, never = within[full], float("inf")
    chance = [sum(sum(belief[at + bit : at + 2 * bit]) for at in range(0, full + 1, 2 * bit)) for bit in _bits(n)]
    look = [never if p.look is None else p.look for p in parts]
    mend = [p.repair if p.blind or p.look is None else never for p in parts]
    found = [c * p.repair for c, p in zip(chance, parts, strict=True)]
    over = [p.covers for p in parts]
    open_by = [opened]
    for part in parts:
        open_by += [bits | part.covers for bits in open_by]
    value, choice = [0.0] * (full + 1), [-1] * (full + 1)
    left = _left(n)
    for done in range(full - 1, -1, -1):
        failing = total - within[done]
        if failing <= 1e-12:
            continue
        best, here = never, ~open_by[done]
        for i, bit in left[done]:
            cost, blind = failing * look[i] + found[i], failing * mend[i]
            cost = value[done | bit] + (blind if blind < cost else cost)
            if over[i] & here:
                cost += failing * minutes(over[i] & here)
            if cost < best:
                best, choice[done] = cost, i
        value[done] = best
    steps, done = [], 0
    while (i := choice[done]) >= 0:
        failing = total - within[done]
        steps.append((i, "look" if failing * look[i] + found[i] < failing * mend[i] else "repair"))
        done |= 1 << i
    return Plan(value[0], tuple(steps))


def _bits(n: int) -> list[int]:
    return [1 << i for i in range(n)]


@lru_cache(maxsize=4)
def _left(n: int) -> list[list[tuple[int, int]]]:
    """For every set of parts those outside it, each with its bit."""
    return [[(i, bit) for i, bit in enumerate(_bits(n)) if not done & bit] for done in range(1 << n)]


class _Minutes:
    """The minutes to open a set of covers, looked up once for each set."""

    def __init__(self, covers: Sequence[float]) -> None:
        self._covers, self._known = covers, {0: 0.0}

    def __call__(self, bits: int) -> float:
        if bits not in self._known:
            self._known[bits] = sum(m for k, m in enumerate(self._covers) if bits >> k & 1)
        return self._known[bits]


def subset_sums(belief: Sequence[float]) -> list[float]:
    """For every set the belief in all its subsets together (the zeta transform)."""
    sums = list(belief)
    bit = 1
    while bit < len(sums):
        for at in range(0, len(sums), 2 * bit):
            lower = sums[at : at + bit]
            sums[at + bit : at + 2 * bit] = [a + b for a, b in zip(lower, sums[at + bit : at + 2 * bit], strict=True)]
        bit <<= 1
    return sums


def cover_bits(needed: Sequence[str], access: Mapping[str, Sequence[str]], order: Sequence[str]) -> int:
    """The covers that must be off for some access, with the covers that lie over them; bits in the given order."""
    bits, waiting = 0, list(needed)
    while waiting:
        name = waiting.pop()
        at = 1 << order.index(name)
        if not bits & at:
            bits |= at
            waiting += access.get(name, ())
    return bits
