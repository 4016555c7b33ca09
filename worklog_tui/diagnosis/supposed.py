"""What was only supposed: `I reckon the brushes are stuck` is no look at the brushes."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Sequence

from worklog_tui.diagnosis.words import tokens
from worklog_tui.model import Fact, Finding, Suspect


def without_supposed(facts: Iterable[Fact]) -> list[Fact]:
    """The facts without the bad findings that only repeat, in the same words, what a suspicion says."""
    all_of_them = list(facts)
    thoughts: dict[str, list[Suspect]] = defaultdict(list)
    for fact in all_of_them:
        if isinstance(fact, Suspect) and fact.standing == "suspected":
            thoughts[fact.main.note].append(fact)
    return [f for f in all_of_them if not _is_supposed(f, thoughts.get(f.main.note, ()))]


def _is_supposed(fact: Fact, thoughts: Sequence[Suspect]) -> bool:
    if not isinstance(fact, Finding) or fact.verdict != "bad":
        return False
    said = set(tokens(f"{fact.part} {fact.condition}"))
    return any(
        t.main.start <= fact.main.start and fact.main.end <= t.main.end and said <= set(tokens(t.cause))
        for t in thoughts
    )
