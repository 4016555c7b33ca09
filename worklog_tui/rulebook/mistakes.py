"""A mistake in a grammar file: which file, which line, what is wrong and what mends it."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
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


def no_toml(file: str, error: Exception) -> Mistake:
    """A file that is no TOML, with the line that the reader of TOML gave up at."""
    line = re.search(r"line (\d+)", str(error))
    cure = 'mend that line: a key, =, and what stands behind it in quotes: said = ["one", "two"]'
    return Mistake(file, int(line[1]) if line else 0, f"it is not TOML ({error})", cure)


def placed(mistake: Mistake, paths: Mapping[str, Path]) -> Mistake:
    """The mistake with the file and line where the first that it speaks of has its table, else where it is in quotes.

    `paths` are the files by their names within their folders; one that stands for all of a folder is looked up in them.
    """
    if mistake.line:
        return mistake
    texts = {name: path.read_text(encoding="utf-8", errors="replace").splitlines() for name, path in paths.items()}
    mine = {mistake.file: texts[mistake.file]} if mistake.file in texts else {}
    for word in re.findall(r"[\w./-]*\w", mistake.says):
        for name, lines in (mine | texts).items():
            opens = ('id = "{}"', 'tag = "{}"', *(['"{}"'] if name == mistake.file else ()))
            if line := line_in(lines, *(opening.format(word) for opening in opens)):
                return replace(mistake, file=name, line=line)
    return mistake


def line_in(lines: Sequence[str], *words: str, after: int = 0) -> int:
    """The first line, from line `after` on, that holds the first of the words that any line holds; 0 if none does."""
    for word in words:
        for number, line in enumerate(lines[max(after - 1, 0) :], max(after, 1)):
            if word in line:
                return number
    return 0
