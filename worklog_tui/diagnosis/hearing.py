"""Which facts mean what in the fault files, and how far each can be trusted."""

from __future__ import annotations

from collections.abc import Iterable

from worklog_tui.diagnosis.words import SIDES, holds, tokens
from worklog_tui.model import Fact, Finding, Reading

TRUST_LOOK = 0.8
TRUST_TEST = 0.9
TRUST_UNSURE = 0.4
TRUST_HUNCH = 0.6
TRUST_MOST = 0.95
TRUST_WRONGLY_DONE = 0.3
NOT = frozenset({"no", "not", "never", "nothing", "without", "isnt", "aint", "dont", "doesnt", "didnt", "wont"})
UNSURE = (
    "maybe", "might", "inconclusive", "not sure", "couldnt swear", "doubtful", "i think", "seems", "guess", "probably",
    "perhaps",
)  # fmt: skip
"""Trust of findings and readings: judgement, after the table of weights in the specification of the engine."""


def is_part(name: str, words: str, parts: Iterable[str]) -> bool:
    """Whether a fact is about one of the parts: by its name, or by its words where it has none."""
    if name:
        return name in parts
    said = tokens(words)
    bare = tuple(w for w in said if w not in SIDES) or said
    return any((wanted := tokens(p)) and bare[-len(wanted) :] == wanted for p in parts)


def is_whole(name: str, words: str, wholes: Iterable[str]) -> bool:
    """Whether a fact is about the machine itself: by its name or by exactly these words (a water pump is no pump)."""
    bare = tuple(w for w in tokens(words) if w not in SIDES)
    return name in wholes or (not name and any(bare == tokens(w) for w in wholes))


def is_state(name: str, words: str, states: Iterable[str]) -> bool:
    """Whether a condition is one of the states, by its name or by its words."""
    said, named = tokens(words), tokens(name)
    for state in states:
        wanted = tokens(state)
        if name == state or (wanted and named == wanted):
            return True
        if wanted and wanted[0] in said and holds(said, wanted) and not _denied(said, wanted):
            return True
    return False


def _denied(said: tuple[str, ...], wanted: tuple[str, ...]) -> bool:
    """Whether the words are denied just before they are said: 'not a pop' is no pop."""
    at = next(i for i in range(len(said)) if said[i : i + len(wanted)] == wanted)
    return bool(NOT.intersection(said[max(0, at - 1) : at])) and not NOT.intersection(wanted)


def denies(condition: str, states: Iterable[str]) -> bool:
    """Whether good words deny what a complaint is heard as: 'it has not died' for dying."""
    said = condition.lower().replace("'", "").replace("’", "").split()
    if not NOT.intersection(said):
        return False
    stems = {_stem(w) for w in said}
    return any(_stem(s) in stems for s in states if " " not in s)


def _stem(word: str) -> str:
    """A word without its ending: dies, died and dying are one."""
    for end in ("ing", "ied", "ies", "ed", "es", "s", "ie", "y", "e"):
        if word.endswith(end) and len(word) > len(end) + 1:
            return word[: -len(end)]
    return word


def trust(fact: Fact) -> float:
    """How far a fact can be believed, from 0 (disowned) to 1."""
    sure = min(1.0, 0.4 + 0.6 * fact.confidence)
    if isinstance(fact, Reading):
        if fact.doubtful:
            return TRUST_WRONGLY_DONE
        return (0.95 if fact.condition else 0.8) * sure
    if isinstance(fact, Finding):
        text = " ".join(tokens(f"{fact.condition}"))
        if any(" ".join(tokens(w)) in text for w in UNSURE if tokens(w)):
            return TRUST_UNSURE
        return TRUST_LOOK * sure
    return TRUST_TEST * sure
