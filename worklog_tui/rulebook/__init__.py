"""Loads and checks the grammar files; the one unit registry."""

from worklog_tui.rulebook.book import Met, Rulebook, is_kept, load, unknown_names
from worklog_tui.rulebook.lexicon import Sense
from worklog_tui.rulebook.mistakes import GrammarMistake, Mistake
from worklog_tui.rulebook.samples import samples
from worklog_tui.rulebook.says import SaysError

__all__ = [
    "GrammarMistake", "Met", "Mistake", "Rulebook", "SaysError", "Sense", "is_kept", "load", "samples", "unknown_names",
]  # fmt: skip
