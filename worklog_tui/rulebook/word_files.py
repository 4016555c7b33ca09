"""Reads a small file of words that one room uses: the shipped one, and the person's own after it."""

from __future__ import annotations

import re
import tomllib
from collections.abc import Sequence
from pathlib import Path
from typing import Any

from worklog_tui.rulebook.mistakes import GrammarMistake, Mistake


def word_tables(folders: Sequence[Path], name: str) -> list[dict[str, Any]]:
    """The file of that name of each folder that has one; a GrammarMistake with its line when one is not TOML."""
    return [_table(folder / name) for folder in folders if (folder / name).is_file()]


def mistake(name: str, says: str, cure: str, line: int = 0) -> GrammarMistake:
    """One thing to mend in such a file."""
    return GrammarMistake([Mistake(name, line, says, cure)])


def _table(path: Path) -> dict[str, Any]:
    try:
        return tomllib.loads(path.read_text(encoding="utf-8"))
    except (tomllib.TOMLDecodeError, UnicodeDecodeError) as error:
        line = re.search(r"line (\d+)", str(error))
        raise mistake(path.name, f"it is not TOML ({error})", "mend that line", int(line[1]) if line else 0) from None
