"""Suspects: what could be the cause of the trouble, what is ruled out, and what it was."""

from __future__ import annotations

from worklog_tui.extract.matching import Match
from worklog_tui.extract.scene import Draft, Scene


def draft(match: Match, scene: Scene) -> Draft | None:
    """The suspect of a match: a cause of the vocabulary, a part, or a part with its state."""
    gives = match.rule.gives
    slots = [match.slots[s.strip("<>")] for s in str(gives["cause"]).split() if s.strip("<>") in match.slots]
    if not slots:
        return None
    first, last = min(slots), max(slots)
    made = Draft("suspect", first, last, match.rule, {}, confidence=match.rule.confidence,
                 first_used=match.first, last_used=match.last - 1)  # fmt: skip
    token = scene.tokens[first]
    cause = token.sense("cause")
    thing = next((scene.tokens[k].thing for k in (first, last) if scene.tokens[k].thing), None)
    made.thing = thing
    name = cause.name if cause else (thing.name if thing else "")
    made.fields = {"cause": scene.said(first, last), "standing": gives["standing"], "name": name}
    return made
