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
    slots: dict[str, str]
    "Name of a group -> name of its slot."
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
    slots: dict[str, str] = {}
    elements = parse(rule.says)
    text = "".join(_text(e, signs, slots) for e in elements)
    return Pattern(rule, text, slots, tuple(_needs(elements, signs)))


def _set(chars: str, denied: bool = False) -> str:
    return f"[{'^' if denied else ''}{chars}]" if chars else ("." if denied else "(?!)")


def _text(e: Element, signs: Signs, slots: dict[str, str]) -> str:
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
        group = f"g{len(slots)}"
        slots[group] = e.slot
        return f"(?P<{group}>{_set(chars)})"
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
    """All rules; those are tried on a text for which each element that must be there has its sign in it."""

    def __init__(self, rules: Iterable[Rule], signs: Signs) -> None:
        self.all = [compile_rule(rule, signs) for rule in rules]
        bits = {need: 1 << n for n, need in enumerate(dict.fromkeys(n for p in self.all for n in p.needs))}
        self._rows = [(sum({bits[need] for need in p.needs}), p) for p in self.all if p.needs]
        self._bits: dict[str, int] = {}
        for need, bit in bits.items():
            for sign in set(need):
                self._bits[sign] = self._bits.get(sign, 0) | bit

    def triggered(self, signs: str) -> list[Pattern]:
        """The rules that could match somewhere in the signs, in the order of the files."""
        present = 0
        for sign in set(signs):
            present |= self._bits.get(sign, 0)
        return [pattern for needed, pattern in self._rows if needed & present == needed]


def named_classes(rules: Iterable[Rule]) -> set[str]:
    """Every class that the rules name, literals as `=word`."""
    found: set[str] = set()
    for rule in rules:
        found |= classes(parse(rule.says))
    return found
