"""Traits: what the machine is, such as its firing order, its earth side, or which way a control moves."""

from __future__ import annotations

from worklog_tui.extract.matching import Match
from worklog_tui.extract.scene import Draft, Scene
from worklog_tui.extract.shapes import Shaped, shaped
from worklog_tui.extract.talk.sources import doubted, source_at


def draft(match: Match, scene: Scene) -> Draft | None:
    """The trait of a match: its value as the rule names it, else the words that have the rule's shape."""
    gives = match.rule.gives
    found: Shaped | None = None
    if "shape" in gives:
        found = shaped(match, scene)
        if found is None:
            return None
    first, last = (found.first, found.last) if found else (match.first, match.last - 1)
    made = Draft("trait", first, last, match.rule, {}, confidence=match.rule.confidence,
                 first_used=min(first, match.first), last_used=max(last, match.last - 1))  # fmt: skip
    value = str(gives.get("value", "")) or (found.words if found else scene.said(first, last))
    made.fields = {
        "trait": gives["trait"], "value": value, "source": str(gives.get("source", "")) or source_at(scene, first),
        "doubtful": doubted(scene, first),
    }  # fmt: skip
    return made
