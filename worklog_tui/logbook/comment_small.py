"""The small words of comments, each list with what it is for: the table `small` of `comments.toml`."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, fields
from typing import Any

from worklog_tui.logbook.words import FILLER, one_form


@dataclass(frozen=True, slots=True)
class Small:
    """Small words, by what they are for."""

    silent: frozenset[str] = frozenset()
    "They name nothing."
    links: frozenset[str] = frozenset()
    "They may stand within the name of a thing."
    borders: frozenset[str] = frozenset()
    "A clause ends at them."
    articles: frozenset[str] = frozenset()
    "A word before one of them is a deed: weld that tank."
    asked_of: frozenset[str] = frozenset()
    "What is asked of a thing."
    everywhere: frozenset[str] = frozenset()
    "Comments on anything hold them; in one form."
    openers: frozenset[str] = frozenset()
    "A sentence may begin with them."
    polite: frozenset[str] = frozenset()
    "No line need share them; in one form."
    vague: frozenset[str] = frozenset()
    "They make a suggestion no strange one; in one form."
    another: frozenset[str] = frozenset()
    "They suggest another size or kind of a thing."
    newness: frozenset[str] = frozenset()
    "Whether a thing is a new one, or the first."
    stuffs: frozenset[str] = frozenset()
    "What a thing is made of."
    no_deed: frozenset[str] = frozenset()
    "After did you, they name no deed of the work: did you get, did you think."
    quiet: frozenset[str] = frozenset()
    "The silent ones in one form: a line that shares them tells nothing more."


def small_words(tables: Sequence[Mapping[str, Any]]) -> Small:
    """The lists of all files together; those that are compared with words of the log in one form."""
    rows = [table.get("small", {}) for table in tables]
    held = {one.name: frozenset(" ".join(str(row.get(one.name, "")) for row in rows).split()) for one in fields(Small)}
    one_formed = {name: frozenset(map(one_form, held[name])) for name in ("everywhere", "polite", "vague")}
    silent = held["silent"] | FILLER
    return Small(**(held | one_formed | {"silent": silent, "quiet": frozenset(map(one_form, silent))}))
