"""Rules made into patterns over signs, and found by the signs that must be there."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, field
from typing import Any

from worklog_tui.rulebook.says import Choice, Edge, Element, Gap, One, classes, parse
from worklog_tui.rulebook.signs import Signs

ENDS = ("stop", "break", "comma")


@dataclass(frozen=True, slots=True)
class Rule:
    """One rule of grammars/sayings."""

    id: str
    says: str
    gives: dict[str, Any]
    examples: tuple[dict[str, Any], ...]
    never: tuple[str, ...]
    confidence: float
    file: str = ""


Row = tuple[str, tuple[tuple[int, str], ...], tuple[frozenset[str], ...]]
"A pattern without its rule, as it is kept: text, slots, needs."


@dataclass(slots=True)
class Pattern:
    """A rule as a pattern over signs."""

    rule: Rule
    text: str
    slots: tuple[tuple[int, str], ...]
    "Number of a group, name of its slot."
    needs: tuple[frozenset[str], ...]
    "For each element that must be there, the classes that it can be."
    _compiled: re.Pattern[str] | None = field(default=None, repr=False)

    @property
    def row(self) -> Row:
        """Without its rule."""
        return self.text, self.slots, self.needs

    def matches(self, signs: str) -> Iterator[re.Match[str]]:
        """Where the pattern stands in a string of signs."""
        if self._compiled is None:
            self._compiled = re.compile(self.text)
        return self._compiled.finditer(signs)


def pattern_of(rule: Rule, row: Row) -> Pattern:
    """The pattern of a rule, of which the rest was kept."""
    return Pattern(rule, *row)


def compile_rule(rule: Rule, signs: Signs) -> Pattern:
    """The pattern of a rule; a SaysError for a `says` that cannot be understood."""
    slots: list[str] = []
    elements = parse(rule.says)
    text = "".join(_text(e, signs, slots) for e in elements)
    return Pattern(rule, text, tuple(enumerate(slots, 1)), tuple(dict.fromkeys(_needs(elements, signs))))


def _set(chars: str, denied: bool = False) -> str:
    return f"[{'^' if denied else ''}{_runs(chars)}]" if chars else ("." if denied else "(?!)")


def _runs(chars: str) -> str:
    """Characters as an expression takes them, those that follow one another as from-to: they are read sooner so."""
    runs: list[list[str]] = []
    for char in sorted(set(chars)):
        if runs and ord(char) == ord(runs[-1][1]) + 1:
            runs[-1][1] = char
        else:
            runs.append([char, char])
    return "".join(first if first == last else f"{first}-{last}" for first, last in runs)


def _text(e: Element, signs: Signs, slots: list[str]) -> str:
    if isinstance(e, Gap):
        shut = "".join(signs.having(c) for c in (("stop",) if e.wide else (*ENDS, "thing")))
        return f"{_set(shut, denied=True)}{{0,{e.most}}}?"
    if isinstance(e, Edge):
        ends = "".join(signs.having(c) for c in ENDS)
        return f"(?![^{ends}])" if e.end else f"(?<![^{ends}])"
    if isinstance(e, One):
        chars = signs.having(e.cls)
        if e.denied:
            return f"(?!{_set(chars)})"
        if not e.slot:
            return _set(chars)
        slots.append(e.slot)
        return f"({_set(chars)})"
    ways = "|".join("".join(_text(x, signs, slots) for x in way) for way in e.ways)
    return f"(?:{ways}){'?' if e.optional else ''}"


def _needs(elements: tuple[Element, ...], signs: Signs) -> list[frozenset[str]]:
    """For each element that must be there, the classes that it can be."""
    found: list[frozenset[str]] = []
    for e in elements:
        if isinstance(e, One) and not e.denied:
            found.append(frozenset({e.cls}))
        elif isinstance(e, Choice) and not e.optional:
            ways = [_needs(way, signs) for way in e.ways]
            if all(ways):
                found.append(frozenset().union(*(min(way, key=lambda need: _many(need, signs)) for way in ways)))
    return found


def _many(need: frozenset[str], signs: Signs) -> int:
    return sum(len(signs.having(cls)) for cls in need)


class Patterns:
    """All rules; those are tried on a text for which each element that must be there has its sign in it.

    That is told by bits. A rule has one bit in each of several rows of bits, a row for its first needed element, one
    for its second, and so on. A class sets the bits of the elements that it can be; of a rule with fewer elements the
    other bits are always set. Where all bits of a rule are set, it is tried.
    """

    def __init__(self, patterns: Sequence[Pattern], signs: Signs) -> None:
        self.all = patterns
        self._signs = signs
        self._tried = [p for p in patterns if p.needs]
        self._rows = max((len(p.needs) for p in self._tried), default=0)
        self._always = 0
        self._of_class: dict[str, int] = {}
        self._of_sign: dict[str, int] = {}
        for n, pattern in enumerate(self._tried):
            for row in range(self._rows):
                bit = 1 << (row * len(self._tried) + n)
                if row >= len(pattern.needs):
                    self._always |= bit
                else:
                    for cls in pattern.needs[row]:
                        self._of_class[cls] = self._of_class.get(cls, 0) | bit

    def triggered(self, signs: str) -> list[Pattern]:
        """The rules that could match somewhere in the signs, in the order of the files."""
        present = self._always
        for sign in set(signs):
            bits = self._of_sign.get(sign)
            present |= self._bits(sign) if bits is None else bits
        in_all = (1 << len(self._tried)) - 1
        for row in range(self._rows):
            in_all &= present >> (row * len(self._tried))
        found = []
        while in_all:
            lowest = in_all & -in_all
            found.append(self._tried[lowest.bit_length() - 1])
            in_all ^= lowest
        return found

    def _bits(self, sign: str) -> int:
        """The bits that a sign sets, worked out when it is first met."""
        bits = 0
        for cls in self._signs.classes(sign):
            bits |= self._of_class.get(cls, 0)
        self._of_sign[sign] = bits
        return bits


def named_classes(rules: Iterable[Rule]) -> set[str]:
    """Every class that the rules name, literals as `=word`."""
    found: set[str] = set()
    for rule in rules:
        found |= classes(parse(rule.says))
    return found
