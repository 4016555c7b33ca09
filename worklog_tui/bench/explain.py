"""Why a line is read as it is: its words, the facts with the patterns that made them, and what was let go."""

from __future__ import annotations

from typing import TYPE_CHECKING

from worklog_tui.model import Machine

if TYPE_CHECKING:
    from worklog_tui.extract import Trail
    from worklog_tui.rulebook import Rulebook


def trail(book: Rulebook, machine: Machine, words: str) -> tuple[str, ...]:
    """The trail of a line, as lines of text."""
    from worklog_tui.extract import explain
    from worklog_tui.notes.cleaning import sanitise

    found = explain(book, machine, " ".join(sanitise(words).split()))
    return (*_words(found), *_facts(found), *_dropped(found))


def _words(found: Trail) -> list[str]:
    if not found.words:
        return ["No word of it is known."]
    width = min(max(len(said) for said, _ in found.words), 28)
    return ["Words", *(f"  {said:{width}}  {meaning}" for said, meaning in found.words)]


def _facts(found: Trail) -> list[str]:
    from worklog_tui.extract import CONFIDENCE_LINE
    from worklog_tui.reports.sentence import sentence

    if not found.read:
        return ["", "Nothing is read from it."]
    lines = ["", "Read"]
    for one in found.read:
        doubt = ", to be asked about" if one.fact.confidence < CONFIDENCE_LINE else ""
        lines += [f"  {sentence(one.fact)}{doubt}", f"    from \u201c{one.words}\u201d; {'; '.join(one.steps)}"]
    return lines


def _dropped(found: Trail) -> list[str]:
    reasons = [reason for reason in found.dropped if "gives way" not in reason]
    return ["", "Let go", *(f"  {reason}" for reason in reasons)] if reasons else []
