"""The steps of a rule: what must be there, in its order. They tell quickly which rules could stand in a text at all.

All rules are followed at once, token by token. Each step of each rule is one bit of a long number; a bit is set when
the steps up to it were met. A step that must follow right behind the one before asks for the bit of the last token, any
other step for a bit set anywhere before; the first step of a rule may ask for the beginning of a clause close by.
"""

from __future__ import annotations

from array import array
from collections.abc import Sequence
from typing import NamedTuple

from worklog_tui.rulebook.says import Choice, Edge, Element, Gap, One
from worklog_tui.rulebook.signs import Signs

ENDS = ("stop", "break", "comma")
ANYWHERE = 99
"As a distance: no matter how far."
FARTHEST = 12
"Tokens from the beginning of a clause that are told apart."

Step = tuple[frozenset[str], int]
"""The classes that a token can be, and how many tokens at most it stands behind the one before; of the first, behind
what ends a clause."""


def steps_of(elements: tuple[Element, ...], signs: Signs) -> tuple[Step, ...]:
    """The steps of a rule; none when nothing in it must be there."""
    found: list[Step] = []
    far = ANYWHERE
    for n, e in enumerate(elements):
        if isinstance(e, Edge):
            if n == 0 and not e.end:
                far = 1
            elif e.end and found and n == len(elements) - 1 and far < ANYWHERE:
                found.append((frozenset(ENDS), far))
            continue
        step = _step(e, signs)
        most = _most(e)
        if step is None:
            far = min(far + most, ANYWHERE)
        else:
            found.append((step, min(far + most - 1, ANYWHERE)))
            far = most  # the token that was met may be the first of them
    return tuple(found)


def _step(e: Element, signs: Signs) -> frozenset[str] | None:
    """The classes of which one must be there for an element; of a choice, the rarest of each way."""
    if isinstance(e, One) and not e.denied:
        return frozenset({e.cls})
    if isinstance(e, Choice) and not e.optional:
        ways = [[step for x in way if (step := _step(x, signs)) is not None] for way in e.ways]
        if all(ways):
            return frozenset().union(*(min(way, key=lambda step: _many(step, signs)) for way in ways))
    return None


def _many(step: frozenset[str], signs: Signs) -> int:
    return sum(len(signs.having(cls)) for cls in step)


def _most(e: Element) -> int:
    """The most tokens of an element."""
    if isinstance(e, Gap):
        return e.most
    if isinstance(e, Choice):
        return max(sum(map(_most, way)) for way in e.ways)
    return int(isinstance(e, One) and not e.denied)


class Joined(NamedTuple):
    """The steps of many rules as they are kept."""

    of_class: dict[str, bytes]
    "For each class the numbers of the bits of the steps that it is, two bytes each."
    right_behind: int
    later: int
    "The bits after which the next step must be met by the next token, and by any later one."
    begin: tuple[int, ...]
    "The first steps that may be met so many tokens from the beginning of a clause."
    rule_at: dict[int, int]
    "The number of the last bit of a rule -> the number of the rule."


def joined(rules: Sequence[tuple[Step, ...]]) -> Joined:
    """The steps of many rules, one bit each."""
    of_class: dict[str, list[int]] = {}
    first, at, right_behind, later = [0] * (FARTHEST + 1), 0, 0, 0
    rule_at = {}
    for number, steps in enumerate(rules):
        for n, (classes, far) in enumerate(steps):
            for cls in classes:
                of_class.setdefault(cls, []).append(at)
            if n == 0:
                first[min(far - 1, FARTHEST)] |= 1 << at
            elif far == 1:
                right_behind |= 1 << at >> 1
            else:
                later |= 1 << at >> 1
            at += 1
        if steps:
            rule_at[at - 1] = number
    begin = tuple(sum(first[n:]) for n in range(FARTHEST + 1))
    written = {cls: array("H", ats).tobytes() for cls, ats in of_class.items()}
    return Joined(written, right_behind, later, begin, rule_at)


class Steps:
    """The steps of many rules, followed together."""

    def __init__(self, kept: Joined, signs: Signs) -> None:
        self._signs = signs
        self._of_class, self._right_behind, self._later, self._begin, self._rule_at = kept
        self._of_sign: dict[str, int] = {}
        self._whole = sum(1 << at for at in self._rule_at)
        self._ends = {sign for cls in ENDS for sign in signs.having(cls)}
        self._end = 0
        for cls in ENDS:
            self._end |= self._bits_of(cls)

    def only(self, numbers: Sequence[int]) -> int:
        """The bits of some rules, for `met`."""
        wanted = set(numbers)
        return sum(1 << at for at, number in self._rule_at.items() if number in wanted)

    def met(self, signs: str, without: int = 0) -> list[int]:
        """The numbers of the rules whose steps are all met, in their order; a superset of those that match."""
        of_sign, right_behind, later, begin = self._of_sign, self._right_behind, self._later, self._begin
        met = last = inside = 0
        for sign in signs:
            bits = of_sign.get(sign)
            if bits is None:
                bits = self._bits(sign)
            last = (((last & right_behind) | (met & later)) << 1 | begin[inside]) & bits
            met |= last
            inside = 0 if sign in self._ends else inside + (inside < FARTHEST)
        met |= ((last & right_behind) | (met & later)) << 1 & self._end
        met &= self._whole & ~without
        found = []
        while met:
            lowest = met & -met
            found.append(self._rule_at[lowest.bit_length() - 1])
            met ^= lowest
        return found

    def _bits(self, sign: str) -> int:
        """The steps that a sign can be, worked out when it is first met."""
        bits = 0
        for cls in self._signs.classes(sign):
            bits |= self._bits_of(cls)
        self._of_sign[sign] = bits
        return bits

    def _bits_of(self, cls: str) -> int:
        return sum(1 << at for at in memoryview(self._of_class.get(cls, b"")).cast("H"))
