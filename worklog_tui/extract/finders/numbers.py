"""Numbers that name a thing: serial, casting, part, plug, belt, bearing, tyre, oil grade. They measure nothing."""

from __future__ import annotations

from worklog_tui.extract.matching import Match
from worklog_tui.extract.scene import Draft, Scene
from worklog_tui.extract.shapes import shaped
from worklog_tui.extract.sources import source_at


def draft(match: Match, scene: Scene) -> Draft | None:
    """The number of a match; None when nothing beside the rule's words looks like one."""
    found = shaped(match, scene)
    if found is None:
        return None
    made = Draft("number", found.first, found.last, match.rule, {}, confidence=match.rule.confidence,
                 first_used=min(found.first, match.first), last_used=max(found.last, match.last - 1))  # fmt: skip
    made.fields = {"number": found.words, "of": match.rule.gives["of"], "source": source_at(scene, found.first)}
    return made
