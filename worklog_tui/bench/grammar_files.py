"""Checks of the grammar files: what must be mended in them, with file, line and cure."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path


def mistakes(folders: Sequence[Path]) -> list[str]:
    """Every mistake in the folders, as sentences; empty when they are in order."""
    from worklog_tui.rulebook import GrammarMistake, load
    from worklog_tui.rulebook.faults import load_faults

    found: list[str] = []
    for reads in (load, load_faults, _comment_words, _publishing_words, _replies):
        try:
            reads(folders)
        except GrammarMistake as wrong:
            found += [str(m) for m in wrong.mistakes]
    return list(dict.fromkeys(found))


def warnings(folders: Sequence[Path]) -> list[str]:
    """What a pattern waits for in vain: a class or a name that no word of the vocabulary has."""
    from worklog_tui.rulebook import load, unknown_names

    return [
        f"{file}, pattern {rule}: nothing in the vocabulary is <{name}>; name what it has, or add it"
        for file, rule, name in unknown_names(load(folders))
    ]


def _comment_words(folders: Sequence[Path]) -> object:
    from worklog_tui.logbook.comment_words import load_comment_words

    return load_comment_words(folders)


def _publishing_words(folders: Sequence[Path]) -> object:
    from worklog_tui.reports.publishing_words import load_publishing_words

    return load_publishing_words(folders)


def _replies(folders: Sequence[Path]) -> object:
    from worklog_tui.reports.replies import load_replies

    return load_replies(folders)
