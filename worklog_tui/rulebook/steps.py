"""The steps of a rule: what must be there, in its order. They tell quickly which rules could stand in a text at all.

All rules are followed at once, token by token. Each step of each rule is one bit of a long number; a bit is set when
the steps up to it were met. A step that must follow right behind the one before asks for the bit of the last token, any
other step for a bit set anywhere before; the first step of a rule may ask for the beginning of a clause close by.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

from worklog_tui.rulebook.signs import Signs

ENDS = ("stop", "break", "comma")
FARTHEST = 12
"Tokens from the beginning of a clause that are told apart."

Step = tuple[frozenset[str], int]
"""The classes that a token can be, and how many tokens at most it stands behind the one before; of the first, behind
what ends a clause."""


class Joined(NamedTuple):
    """The steps of many rules as they are kept."""

    starts: bytes
    bits: bytes
    """The numbers of the bits of the steps that a class is, two bytes each, one class after the other by their
    numbers; and where those of each begin, four bytes each."""
    right_behind: int
    later: int
    "The bits after which the next step must be met by the next token, and by any later one."
    begin: tuple[int, ...]
    "The first steps that may be met so many tokens from the beginning of a clause."
    last: bytes
    rules: bytes
    "The last bit of each rule that has steps, in their order; of each bit the number of its rule, two bytes each."


class Steps:
    """The steps of many rules, followed together."""

    def __init__(self, kept: Joined, signs: Signs) -> None:
        self._signs = signs
        starts, bits, self._right_behind, self._later, self._begin, last, rules = kept
        self._starts, self._steps = memoryview(starts).cast("I"), memoryview(bits).cast("H")
        self._last, self._rules = memoryview(last).cast("H"), memoryview(rules).cast("H")
        self._of_sign: dict[str, int] = {}
        self._whole = sum(1 << at for at in self._last)
        self._ends = {sign for cls in ENDS for sign in signs.having(cls)}
        self._end = 0
        for cls in ENDS:
            number = signs.number(cls)
            self._end |= self._bits_of(number) if number is not None else 0

    def only(self, numbers: Sequence[int]) -> int:
        """The bits of some rules, for `met`."""
        wanted = set(numbers)
        return sum(1 << at for at in self._last if self._rules[at] in wanted)

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
            found.append(self._rules[lowest.bit_length() - 1])
            met ^= lowest
        return found

    def _bits(self, sign: str) -> int:
        """The steps that a sign can be, worked out when it is first met."""
        bits = 0
        for number in self._signs.numbers(sign):
            bits |= self._bits_of(number)
        self._of_sign[sign] = bits
        return bits

    def _bits_of(self, number: int) -> int:
        """The steps that a class can be, by its number."""
        return sum(1 << at for at in self._steps[self._starts[number] : self._starts[number + 1]])
