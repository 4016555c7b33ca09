"""Loads and checks the grammar files; the one unit registry."""

from worklog_tui.rulebook.book import Met, Rulebook, is_kept, load, unknown_names
from worklog_tui.rulebook.mistakes import GrammarMistake, Mistake
from worklog_tui.rulebook.senses import Sense

__all__ = [
    "GrammarMistake", "Met", "Mistake", "Rulebook", "Sense", "is_kept", "load", "unknown_names",
]  # fmt: skip
