"""In which order to look and repair, and what a check would save, in minutes of expected work.

The base is the exact best fixed order of look-and-repair for several faults with shared covers; a check is worth what
it saves over that base (one step of look-ahead). Minutes stand for all costs.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from functools import lru_cache

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
    belief = [1.0]
    for without, there in zip(off, on, strict=True):
        belief = [*(b * without for b in belief), *(b * there for b in belief)]
    for piece in pieces:
        seen = [0.0] * len(belief)
        for c, values in piece.terms:
            row = [c]
            for i in range(len(off)):
                row += [x * values[i] for x in row] if i in values else row
            seen = [a + b for a, b in zip(seen, row, strict=True)]
        belief = [max(b * x, 0.0) for b, x in zip(belief, seen, strict=True)]
    whole = sum(belief)
    return [b / whole for b in belief] if whole > 0 else belief


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


@dataclass(frozen=True, slots=True)
class Look:
    """What a step may show: for every outcome its likelihood with each set of faults (by bits)."""

    minutes: float
    covers: int
    outcomes: tuple[Sequence[float], ...]


def expected_after(look: Look, belief: Sequence[float], base: Callable[[list[float], int], float], opened: int,
                   covers: Sequence[float]) -> float:  # fmt: skip
    """The expected minutes when a check is made first and the best order is followed after it: Q(a)."""
    cost = look.minutes + sum(m for k, m in enumerate(covers) if look.covers >> k & 1 and not opened >> k & 1)
    for likelihood in look.outcomes:
        joint = [b * x for b, x in zip(belief, likelihood, strict=True)]
        mass = sum(joint)
        if mass > 1e-9:
            cost += mass * base([j / mass for j in joint], opened | look.covers)
    return cost


def quick_cost(belief: Sequence[float], parts: Sequence[Part], covers: Sequence[float], opened: int = 0) -> float:
    """The expected minutes of one good fixed order: chance over cost, covers that come off counted once. O(2^n).

    Never below `best_order`, and equal to it where each fault is alone and no cover is shared: it sorts out which steps
    are worth the exact sum.
    """
    size = 1 << len(parts)
    chance = [sum(sum(belief[at + bit : at + 2 * bit]) for at in range(0, size, 2 * bit)) for bit in _bits(len(parts))]
    minutes, order, tries, mends = _Minutes(covers), [], [], []
    left = list(range(len(parts)))
    while left:
        best, pick = -1.0, (left[0], 0.0, 0.0)
        for i in left:
            part, way = parts[i], minutes(parts[i].covers & ~opened)
            blind = part.blind or part.look is None
            mends_if_seen = chance[i] * part.repair
            looks = part.look is not None and (not blind or part.look + mends_if_seen < part.repair)
            each = way + (part.look if looks and part.look is not None else part.repair)
            if chance[i] / max(each, 1e-9) > best:
                best, pick = chance[i] / max(each, 1e-9), (i, each, mends_if_seen if looks else 0.0)
        order.append(pick[0])
        tries.append(pick[1])
        mends.append(pick[2])
        left.remove(pick[0])
        opened |= parts[pick[0]].covers
    return _cost_in(order, tries, mends, belief)


def _cost_in(order: Sequence[int], tries: Sequence[float], mends: Sequence[float], belief: Sequence[float]) -> float:
    """The expected minutes of an order: each try is paid for as long as a fault remains."""
    last = [-1]
    place = {part: n for n, part in enumerate(order)}
    for i in range(len(order)):
        at = place[i]
        last += [max(n, at) for n in last]
    ends = [0.0] * (len(order) + 1)
    for n, b in zip(last, belief, strict=True):
        ends[n] += b
    cost, failing = 0.0, sum(ends) - ends[-1]
    for n in range(len(order)):
        cost += failing * tries[n] + mends[n]
        failing -= ends[n]
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
