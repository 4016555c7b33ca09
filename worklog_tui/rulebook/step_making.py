"""The steps of a rule worked out of what it says: of a choice those that are met least often."""

from __future__ import annotations

from array import array
from collections.abc import Sequence
from functools import lru_cache
from itertools import accumulate
from math import prod

from worklog_tui.rulebook.says import Choice, Edge, Element, Gap, One
from worklog_tui.rulebook.signs import Signs
from worklog_tui.rulebook.steps import ENDS, FARTHEST, Joined, Step

ANYWHERE = 99
"As a distance: no matter how far."
COMMON, OFTEN = (*ENDS, "article", "pronoun", "copula", "filler", "person", "degree"), 50
"Classes of the words of which every sentence is made, and how many other words one of them is met as often as."
EVERY = 500
"Words of which every sentence has one."


def steps_of(elements: tuple[Element, ...], signs: Signs) -> tuple[Step, ...]:
    """The steps of a rule; none when nothing in it must be there."""
    steps, _ = _sequence(elements, signs, last=True)
    if steps and not (isinstance(elements[0], Edge) and not elements[0].end):
        steps[0] = (steps[0][0], ANYWHERE)
    return tuple(steps)


def _sequence(elements: tuple[Element, ...], signs: Signs, last: bool) -> tuple[list[Step], int]:
    """The steps of elements, the first as far as it may be from where they begin, and how many tokens may stand
    behind the last step. Where nothing comes behind them, the end of a clause is a step too.
    """
    found: list[Step] = []
    far = 1
    needed = [n for n, e in enumerate(elements) if (isinstance(e, One) and not e.denied) or isinstance(e, Choice)]
    for n, e in enumerate(elements):
        steps, rest = _element(e, signs, last and not any(k > n for k in needed))
        if steps:
            found += [(steps[0][0], steps[0][1] + far - 1), *steps[1:]]
            far = 1
        far += rest
    return found, far - 1


def _element(e: Element, signs: Signs, last: bool) -> tuple[list[Step], int]:
    """The same of one element."""
    if isinstance(e, Gap):
        return [], e.most
    if isinstance(e, Edge):
        return ([(frozenset(ENDS), 1)] if e.end and last else []), 0
    if isinstance(e, One):
        return ([], 0) if e.denied else ([(frozenset({e.cls}), 1)], 0)
    ways = [_sequence(way, signs, last) for way in e.ways]
    most = 0 if e.optional else min(len(steps) for steps, _ in ways)
    sizes = range(most, 0, -1) if most else (0,)
    return min((_joint(ways, many, signs) for many in sizes), key=lambda joint: _chance(joint[0], signs))


def _joint(ways: list[tuple[list[Step], int]], many: int, signs: Signs) -> tuple[list[Step], int]:
    """So many steps for all ways of a choice together."""
    ways = [_fewer(steps, rest, many, signs) for steps, rest in ways]
    rows = zip(*(steps for steps, _ in ways), strict=True)
    steps = [(frozenset().union(*(c for c, _ in row)), max(far for _, far in row)) for row in rows]
    return steps, max(rest for _, rest in ways)


def _fewer(steps: list[Step], rest: int, many: int, signs: Signs) -> tuple[list[Step], int]:
    """So many of some steps, those that the most tokens can be left out, and the tokens behind the last of them."""
    kept = list(steps)
    while len(kept) > many:
        n = max(range(len(kept)), key=lambda k: _often(kept[k][0], signs))
        _, far = kept.pop(n)
        if n < len(kept):
            kept[n] = (kept[n][0], kept[n][1] + far)
        else:
            rest += far
    return kept, rest


def _chance(steps: list[Step], signs: Signs) -> float:
    """How likely it is, about, that some steps are met in a sentence: with so few of them the rarer ones decide."""
    return prod(min(1.0, _often(classes, signs) / EVERY) for classes, _ in steps)


def _often(classes: frozenset[str], signs: Signs) -> int:
    """How many words are of one of the classes, those that every sentence has counted as many."""
    return sum(_many(cls, signs) for cls in classes)


def _many(cls: str, signs: Signs) -> int:
    common = _in_every_sentence(signs)
    rows = [OFTEN if sign in common else 1 for sign in signs.having(cls)]
    return max(rows, default=0) if "=" in cls else sum(rows)  # a word by itself is one


@lru_cache(maxsize=2)
def _in_every_sentence(signs: Signs) -> frozenset[str]:
    return frozenset(sign for cls in COMMON for sign in signs.having(cls))


def joined(rules: Sequence[tuple[Step, ...]], signs: Signs) -> Joined:
    """The steps of many rules, one bit each."""
    of_class: list[list[int]] = [[] for _ in range(signs.many)]
    first, at, right_behind, later = [0] * (FARTHEST + 1), 0, 0, 0
    last, numbers = array("H"), array("H")
    for number, steps in enumerate(rules):
        for n, (classes, far) in enumerate(steps):
            for cls in classes:
                if (of := signs.number(cls)) is not None:
                    of_class[of].append(at)
            if n == 0:
                first[min(far - 1, FARTHEST)] |= 1 << at
            elif far == 1:
                right_behind |= 1 << at >> 1
            else:
                later |= 1 << at >> 1
            numbers.append(number)
            at += 1
        if steps:
            last.append(at - 1)
    begin = tuple(sum(first[n:]) for n in range(FARTHEST + 1))
    starts = array("I", accumulate(map(len, of_class), initial=0))
    bits = array("H", (bit for ats in of_class for bit in ats))
    return Joined(starts.tobytes(), bits.tobytes(), right_behind, later, begin, last.tobytes(), numbers.tobytes())
