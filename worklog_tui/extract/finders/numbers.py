"""Numbers that name a thing: serial, casting, part, plug, belt, bearing, tyre, oil grade. They measure nothing."""

from __future__ import annotations

import re

from worklog_tui.extract.matching import Match
from worklog_tui.extract.scene import Draft, Scene
from worklog_tui.extract.shapes import shaped
from worklog_tui.extract.talk.sources import source_at

_FIGURE = re.compile(r"\d")


def may_stand(scene: Scene) -> bool:
    """Whether a sentence has a figure; a number that is spoken in words only names nothing."""
    tokens = scene.tokens
    return bool(tokens) and _FIGURE.search(scene.text, tokens[0].start, tokens[-1].end) is not None


def draft(match: Match, scene: Scene) -> Draft | None:
    """The number of a match; None when nothing beside the rule's words looks like one."""
    found = shaped(match, scene)
    if found is None:
        return None
    made = Draft("number", found.first, found.last, match.rule, {}, confidence=match.rule.confidence,
                 first_used=min(found.first, match.first), last_used=max(found.last, match.last - 1))  # fmt: skip
    made.fields = {"number": found.words, "of": match.rule.gives["of"], "source": source_at(scene, found.first)}
    return made
