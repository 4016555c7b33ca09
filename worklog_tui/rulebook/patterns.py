"""Rules as patterns over signs, found by the steps that must be met."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from typing import Any, TypeVar

from worklog_tui.rulebook.signs import Signs
from worklog_tui.rulebook.steps import Joined, Step, Steps

T = TypeVar("T")


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


class Patterns:
    """All rules; those are tried on a text whose steps are all met in it."""

    def __init__(self, patterns: Sequence[Pattern], signs: Signs, steps: Joined) -> None:
        """`steps` are those of all, as they are kept."""
        self.all = patterns
        self._steps = Steps(steps, signs)
        self._needing: dict[Any, dict[Any, int]] = {}

    def triggered(self, signs: str, without: int = 0) -> list[Pattern]:
        """The rules that could match somewhere in the signs, in the order of the files, `without` some of them."""
        return [self.all[n] for n in self._steps.met(signs, without)]

    def needing(self, needs: Callable[[Mapping[str, Any]], Iterable[T]]) -> dict[T, int]:
        """The rules that have each of the needs which a function tells by what a rule gives; asked once of each."""
        if (found := self._needing.get(needs)) is None:
            numbers: dict[T, list[int]] = {}
            for n, pattern in enumerate(self.all):
                for need in needs(pattern.rule.gives):
                    numbers.setdefault(need, []).append(n)
            found = self._needing[needs] = {need: self._steps.only(row) for need, row in numbers.items()}
        return found
