"""Rules made into patterns over signs, and found by the signs that must be there."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
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


@dataclass(slots=True)
class Pattern:
    """A rule as a pattern over signs."""

    rule: Rule
    text: str
    slots: tuple[tuple[int, str], ...]
    "Number of a group, name of its slot."
    needs: tuple[str, ...]
    "For each element that must be there, the signs that it can be."
    _compiled: re.Pattern[str] | None = field(default=None, repr=False)

    def matches(self, signs: str) -> Iterator[re.Match[str]]:
        """Where the pattern stands in a string of signs."""
        if self._compiled is None:
            self._compiled = re.compile(self.text)
        return self._compiled.finditer(signs)


def compile_rule(rule: Rule, signs: Signs) -> Pattern:
    """The pattern of a rule; a SaysError for a `says` that cannot be understood."""
    slots: list[str] = []
    elements = parse(rule.says)
    text = "".join(_text(e, signs, slots) for e in elements)
    return Pattern(rule, text, tuple(enumerate(slots, 1)), tuple(dict.fromkeys(_needs(elements, signs))))


def _set(chars: str, denied: bool = False) -> str:
    return f"[{'^' if denied else ''}{chars}]" if chars else ("." if denied else "(?!)")


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


def _needs(elements: tuple[Element, ...], signs: Signs) -> list[str]:
    """For each element that must be there, the signs that it can be; an empty text where nothing can be it."""
    found: list[str] = []
    for e in elements:
        if isinstance(e, One) and not e.denied:
            found.append(signs.having(e.cls))
        elif isinstance(e, Choice) and not e.optional:
            ways = [_needs(way, signs) for way in e.ways]
            if all(ways):
                found.append("".join(min(way, key=len) for way in ways))
    return found


class Patterns:
    """All rules; those are tried on a text for which each element that must be there has its sign in it.

    That is told by bits. A rule has one bit in each of several rows of bits, a row for its first needed element, one
    for its second, and so on. A sign sets the bits of the elements that it can be; of a rule with fewer elements the
    other bits are always set. Where all bits of a rule are set, it is tried.
    """

    def __init__(self, rules: Iterable[Rule], signs: Signs) -> None:
        self.all = [compile_rule(rule, signs) for rule in rules]
        self._tried = [p for p in self.all if p.needs]
        self._rows = max((len(p.needs) for p in self._tried), default=0)
        self._always = 0
        self._bits: dict[str, int] = {}
        for need, bits in self._needed().items():
            for sign in set(need):
                self._bits[sign] = self._bits.get(sign, 0) | bits

    def _needed(self) -> dict[str, int]:
        """For the signs that an element can be, the bits that they set."""
        found: dict[str, int] = {}
        for n, pattern in enumerate(self._tried):
            for row in range(self._rows):
                bit = 1 << (row * len(self._tried) + n)
                if row < len(pattern.needs):
                    found[pattern.needs[row]] = found.get(pattern.needs[row], 0) | bit
                else:
                    self._always |= bit
        return found

    def triggered(self, signs: str) -> list[Pattern]:
        """The rules that could match somewhere in the signs, in the order of the files."""
        present = self._always
        for sign in set(signs):
            present |= self._bits.get(sign, 0)
        set_in_all = (1 << len(self._tried)) - 1
        for row in range(self._rows):
            set_in_all &= present >> (row * len(self._tried))
        found = []
        while set_in_all:
            lowest = set_in_all & -set_in_all
            found.append(self._tried[lowest.bit_length() - 1])
            set_in_all ^= lowest
        return found


def named_classes(rules: Iterable[Rule]) -> set[str]:
    """Every class that the rules name, literals as `=word`."""
    found: set[str] = set()
    for rule in rules:
        found |= classes(parse(rule.says))
    return found
