"""Rules made into patterns over signs, and found by the steps that must be met."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, field
from typing import Any

from worklog_tui.rulebook.says import Edge, Element, Gap, One, classes, parse
from worklog_tui.rulebook.signs import Signs
from worklog_tui.rulebook.steps import ENDS, Joined, Step, Steps, joined, steps_of


@dataclass(frozen=True, slots=True)
class Rule:
    """One rule of grammars/sayings."""

    id: str
    says: str
    "Empty in a rulebook, which holds them together."
    gives: dict[str, Any]
    examples: tuple[dict[str, Any], ...]
    never: tuple[str, ...]
    confidence: float
    file: str = ""


Slots = tuple[tuple[int, str], ...]
"Number of a group, name of its slot."


@dataclass(slots=True)
class Pattern:
    """A rule as a pattern over signs."""

    rule: Rule
    slots: Slots
    texts: Sequence[str]
    "The expressions of many patterns, and which of them is its own."
    nth: int = 0
    steps: tuple[Step, ...] = ()
    "What must be there, in its order; of a pattern that was kept they stand among those of all rules only."
    expression: re.Pattern[str] | None = field(default=None, repr=False)

    @property
    def text(self) -> str:
        """The expression as it is written."""
        return self.texts[self.nth]

    def matches(self, signs: str) -> Iterator[re.Match[str]]:
        """Where the pattern stands in a string of signs."""
        return (self.expression or self.compiled()).finditer(signs)

    def compiled(self) -> re.Pattern[str]:
        """The pattern as an expression, made when it is first asked for."""
        self.expression = re.compile(self.text)
        return self.expression


def compile_rule(rule: Rule, signs: Signs) -> Pattern:
    """The pattern of a rule; a SaysError for a `says` that cannot be understood."""
    slots: list[str] = []
    elements = parse(rule.says)
    text = "".join(_text(e, signs, slots) for e in elements)
    return Pattern(rule, tuple(enumerate(slots, 1)), (text,), steps=steps_of(elements, signs))


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


class Patterns:
    """All rules; those are tried on a text whose steps are all met in it."""

    def __init__(self, patterns: Sequence[Pattern], signs: Signs, steps: Joined | None = None) -> None:
        """`steps` are those of all, as they were kept."""
        self.all = patterns
        self._steps = Steps(steps or joined([pattern.steps for pattern in patterns], signs), signs)
        self._of_kind: dict[str, int] = {"": 0}

    def triggered(self, signs: str, without: str = "") -> list[Pattern]:
        """The rules that could match somewhere in the signs, in the order of the files, `without` those of one kind."""
        if without not in self._of_kind:
            numbers = [n for n, pattern in enumerate(self.all) if pattern.rule.gives["kind"] == without]
            self._of_kind[without] = self._steps.only(numbers)
        return [self.all[n] for n in self._steps.met(signs, self._of_kind[without])]


def named_classes(rules: Iterable[Rule]) -> set[str]:
    """Every class that the rules name, literals as `=word`."""
    found: set[str] = set()
    for rule in rules:
        found |= classes(parse(rule.says))
    return found
