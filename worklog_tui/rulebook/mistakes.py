"""A mistake in a grammar file: which file, which line, what is wrong and what mends it."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path


@dataclass(frozen=True, slots=True)
class Mistake:
    """One thing to mend in a grammar file."""

    file: str
    line: int
    "1-based; 0 when the whole file is meant."
    says: str
    cure: str

    def __str__(self) -> str:
        place = f"{self.file}, line {self.line}" if self.line else self.file
        return f"{place}: {self.says}; {self.cure}"


class GrammarMistake(Exception):
    """Grammar files that cannot be used, with every mistake found."""

    def __init__(self, mistakes: list[Mistake]) -> None:
        super().__init__("\n".join(map(str, mistakes)))
        self.mistakes = mistakes


def line_of(path: Path, words: str) -> int:
    """The first line of a file that holds the words, 0 if none does."""
    for number, line in enumerate(path.read_text(encoding="utf-8", errors="replace").splitlines(), 1):
        if words in line:
            return number
    return 0
