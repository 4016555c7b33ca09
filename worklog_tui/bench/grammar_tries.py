"""Trying the grammar: which patterns a line meets, and what wordings a pattern means."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from worklog_tui.model import Machine
    from worklog_tui.rulebook import Rulebook

SAMPLES = 8
"Wordings that are shown of a pattern."
OWN = "own."
"What the ids of a person's own patterns begin with."
WIDEST = 40


class NoPattern(ValueError):
    """Neither the id of a pattern nor a pattern; the message says what is wrong with it."""


def tried(book: Rulebook, machine: Machine, words: str) -> list[str]:
    """The patterns that a line meets, one a line: the words, the pattern, and whether it was kept."""
    from worklog_tui.extract import patterns_met
    from worklog_tui.notes.cleaning import sanitise

    met = patterns_met(book, machine, " ".join(sanitise(words).split()))
    width = min(max((len(m.words) for m in met), default=0), WIDEST)
    return [f"{m.words:{width}}  {_name(m.rule)}: {m.came}" for m in met] or ["No pattern meets it."]


def sampled(book: Rulebook, machine: Machine, pattern: str) -> list[str]:
    """Wordings of a pattern, given by its id or as a `says`; of one with an id also whether each is read by it."""
    from worklog_tui.extract import patterns_met
    from worklog_tui.rulebook.samples import samples
    from worklog_tui.rulebook.says import SaysError

    known = {rule.id: says for rule, says in zip(book.rules, book.says, strict=True)}
    try:
        made = samples(known.get(pattern, pattern), book, SAMPLES)
    except SaysError as wrong:
        raise NoPattern(f"No pattern is called {pattern!r}, and as a pattern it cannot be read: {wrong}.") from wrong
    if pattern not in known:
        return made
    kept = [any(m.rule == pattern and m.kept for m in patterns_met(book, machine, said)) for said in made]
    return [f"{'read    ' if read else 'not read'}  {said}" for said, read in zip(made, kept, strict=True)]


def _name(rule: str) -> str:
    return f"{rule} (your own)" if rule.startswith(OWN) else rule
