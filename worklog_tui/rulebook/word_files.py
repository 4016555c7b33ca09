"""Reads a small file of words that one room uses: the shipped one, and the person's own after it."""

from __future__ import annotations

import tomllib
from collections.abc import Sequence
from pathlib import Path
from typing import Any, NamedTuple

from worklog_tui.rulebook.mistakes import GrammarMistake, Mistake, line_in, no_toml
from worklog_tui.rulebook.reading_keys import of_file


class WordFile(NamedTuple):
    """One such file: its name, with own/ before it when it is the person's, its lines and what it says."""

    name: str
    lines: Sequence[str]
    table: dict[str, Any]

    def mistake(self, says: str, cure: str, *words: str) -> GrammarMistake:
        """One thing to mend in it, on the first line that holds the words."""
        return GrammarMistake([Mistake(self.name, line_in(self.lines, *words), says, cure)])


def word_files(folders: Sequence[Path], name: str) -> list[WordFile]:
    """The file of that name of each folder that has one; a GrammarMistake with the lines of what must be mended."""
    paths = [("own/" * bool(n) + name, folder / name) for n, folder in enumerate(folders)]
    return [_read(called, path) for called, path in paths if path.is_file()]


def word_tables(folders: Sequence[Path], name: str) -> list[dict[str, Any]]:
    """What those files say."""
    return [file.table for file in word_files(folders, name)]


def _read(name: str, path: Path) -> WordFile:
    try:
        text = path.read_text(encoding="utf-8-sig")
        table = tomllib.loads(text)
    except UnicodeDecodeError:
        raise GrammarMistake([Mistake(name, 0, "it is not UTF-8 text", "save it as UTF-8")]) from None
    except tomllib.TOMLDecodeError as error:
        raise GrammarMistake([no_toml(name, error)]) from None
    if mistakes := list(of_file(name, table, text, {})):
        raise GrammarMistake(mistakes)
    return WordFile(name, text.splitlines(), table)
