"""Why a line is read as it is: the trail of patterns and steps."""

from __future__ import annotations

from typing import TYPE_CHECKING

from worklog_tui.model import Machine

if TYPE_CHECKING:
    from worklog_tui.rulebook import Rulebook


def trail(book: Rulebook, machine: Machine, words: str) -> tuple[str, ...]:
    """The trail of a line, one step a line of text."""
    from worklog_tui.extract import explain
    from worklog_tui.notes import sanitise

    return tuple(explain(book, machine, " ".join(sanitise(words).split())).lines)
