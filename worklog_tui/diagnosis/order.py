"""In which order to look and repair, and what a check would save, in minutes of expected work.

The base is the exact best fixed order of look-and-repair for several faults with shared covers; a check is worth what
it saves over that base (one step of look-ahead). Minutes stand for all costs.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass

from worklog_tui.diagnosis.noisy_or import Piece


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


def belief_over(off: Sequence[float], on: Sequence[float], pieces: Sequence[Piece]) -> list[float]:
    """The chance of every set of faults (bit i: fault i present) from their weights and the pieces of evidence."""
    size = 1 << len(off)
    belief = []
    for bits in range(size):
        faults = [i for i in range(len(off)) if bits >> i & 1]
        weight = 1.0
        for i in range(len(off)):
            weight *= on[i] if bits >> i & 1 else off[i]
        for piece in pieces:
            weight *= piece.likelihood(faults)
        belief.append(max(weight, 0.0))
    whole = sum(belief)
    return [b / whole for b in belief] if whole > 0 else belief


def best_order(belief: Sequence[float], parts: Sequence[Part], covers: Sequence[float], opened: int = 0) -> Plan:
    """The cheapest fixed order that clears all faults, stopping as soon as the machine works.

    f(P) = min over i of [look: pf(P)(access + look) + m_i repair, repair: pf(P)(access + repair)] + f(P and i), with
    pf(P) = the chance that a fault remains outside P (a subset sum) and m_i = the chance of fault i. O(n 2^n).
    """
    n = len(parts)
    full = (1 << n) - 1
    within = subset_sums(belief)
    chance = [sum(b for bits, b in enumerate(belief) if bits >> i & 1) for i in range(n)]
    total = within[full]
    minutes = _Minutes(covers)
    open_by: list[int] = [opened] * (full + 1)
    for bits in range(1, full + 1):
        low = bits & -bits
        open_by[bits] = open_by[bits ^ low] | parts[low.bit_length() - 1].covers
    value = [0.0] * (full + 1)
    choice: list[tuple[int, str]] = [(-1, "")] * (full + 1)
    for done in range(full - 1, -1, -1):
        failing = total - within[done]
        if failing <= 1e-12:
            continue
        best = float("inf")
        for i in range(n):
            if done >> i & 1:
                continue
            part, rest = parts[i], value[done | 1 << i]
            way = minutes(part.covers & ~open_by[done])
            mend = failing * (way + part.repair) + rest if part.blind or part.look is None else float("inf")
            seen = (
                failing * (way + part.look) + chance[i] * part.repair + rest if part.look is not None else float("inf")
            )
            if min(mend, seen) < best - 1e-12:
                best = min(mend, seen)
                choice[done] = (i, "look" if seen < mend else "repair")
        value[done] = best
    return Plan(value[0], tuple(_path(choice)))


def _path(choice: Sequence[tuple[int, str]]) -> list[tuple[int, str]]:
    steps, done = [], 0
    while choice[done][0] >= 0:
        steps.append(choice[done])
        done |= 1 << choice[done][0]
    return steps


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
        for bits in range(len(sums)):
            if bits & bit:
                sums[bits] += sums[bits ^ bit]
        bit <<= 1
    return sums


@dataclass(frozen=True, slots=True)
class Look:
    """What a step may show: for every outcome the likelihood with a set of faults (by bits)."""

    minutes: float
    covers: int
    outcomes: tuple[Callable[[int], float], ...]


def expected_after(look: Look, belief: Sequence[float], base: Callable[[list[float], int], float], opened: int,
                   covers: Sequence[float]) -> float:  # fmt: skip
    """The expected minutes when a check is made first and the best order is followed after it: Q(a)."""
    cost = look.minutes + sum(m for k, m in enumerate(covers) if look.covers >> k & 1 and not opened >> k & 1)
    for likelihood in look.outcomes:
        joint = [b * likelihood(bits) for bits, b in enumerate(belief)]
        mass = sum(joint)
        if mass > 1e-9:
            cost += mass * base([j / mass for j in joint], opened | look.covers)
    return cost


def after_repair(belief: Sequence[float], part: int) -> list[float]:
    """The belief once a part was made good."""
    kept = [0.0] * len(belief)
    for bits, b in enumerate(belief):
        kept[bits & ~(1 << part)] += b
    return kept


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
