"""The words by which is told what stays out of everything that is published, from `publishing.toml`."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, fields
from pathlib import Path

from worklog_tui.notes.cleaning import sanitise
from worklog_tui.rulebook.word_files import word_tables

FILE = "publishing.toml"


@dataclass(frozen=True, slots=True)
class PublishingWords:
    """The lists of the file, the shipped one first and the person's own after it."""

    private: tuple[str, ...] = ()
    "What makes a note private."
    never: tuple[str, ...] = ()
    "What is never published."
    money: tuple[str, ...] = ()
    "What makes the number before it a sum of money."
    paid: tuple[str, ...] = ()
    "What makes the bare number after it a sum of money."
    sold: tuple[str, ...] = ()
    "What makes the pounds before it a sum of money."
    starting: tuple[str, ...] = ()
    "What tells how a machine is started."
    stopping: tuple[str, ...] = ()
    "What tells how it is stopped."


def load_publishing_words(folders: Sequence[Path]) -> PublishingWords:
    """The words of all folders together; a GrammarMistake says what to mend."""
    rows: dict[str, list[str]] = {f.name: [] for f in fields(PublishingWords)}
    for table in word_tables(folders, FILE):
        for key, words in table.items():
            rows[key] += [one for word in words if (one := " ".join(sanitise(word).split()))]
    return PublishingWords(**{key: tuple(dict.fromkeys(words)) for key, words in rows.items()})


def alternatives(words: Sequence[str]) -> str:
    """A pattern that matches any of the words as whole words, the longest first; blanks may be hyphens or line ends."""
    longest = sorted(set(words), key=lambda word: (-len(word), word))
    return "|".join(_loosely(word) for word in longest) or "(?!)"


def _loosely(word: str) -> str:
    pieces = r"[\s_-]+".join(re.escape(piece) for piece in re.split(r"[\s_-]+", word) if piece)
    pieces = re.sub("['\u2019]", "['\u2019]", pieces)
    before = r"(?<!\w)" if word[:1].isalnum() else ""
    return before + pieces + (r"(?!\w)" if word[-1:].isalnum() else "")
