"""Rules as patterns over signs, found by the steps that must be met."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from typing import Any

from worklog_tui.rulebook.signs import Signs
from worklog_tui.rulebook.steps import Joined, Step, Steps


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
        self._of_kind: dict[str, int] = {"": 0}

    def triggered(self, signs: str, without: str = "") -> list[Pattern]:
        """The rules that could match somewhere in the signs, in the order of the files, `without` those of one kind."""
        if without not in self._of_kind:
            numbers = [n for n, pattern in enumerate(self.all) if pattern.rule.gives["kind"] == without]
            self._of_kind[without] = self._steps.only(numbers)
        return [self.all[n] for n in self._steps.met(signs, self._of_kind[without])]
