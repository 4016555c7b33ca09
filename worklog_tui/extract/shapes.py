"""Words that have a shape rather than a meaning, such as `4.00-8` or `one three four two`, found beside a match."""

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import lru_cache

from worklog_tui.extract.matching import Match
from worklog_tui.extract.scene import Scene

BEFORE, AFTER = 32, 72
"Characters before and after the words of a rule within which its shape may stand."


@dataclass(frozen=True, slots=True)
class Shaped:
    """The words of the group `is` of a shape, and the first and last token that they stand in."""

    words: str
    first: int
    last: int


def shaped(match: Match, scene: Scene) -> Shaped | None:
    """What the shape of the rule finds at its words; None when it finds nothing there."""
    tokens = scene.tokens
    start, end = tokens[match.first].start, tokens[match.last - 1].end
    low, high = max(start - BEFORE, tokens[0].start), min(end + AFTER, tokens[-1].end)
    for found in _pattern(str(match.rule.gives["shape"])).finditer(scene.text, low, high):
        if found.start() >= end or found.end() <= start or not found["is"]:
            continue
        inside = [k for k, t in enumerate(tokens) if t.start < found.end("is") and t.end > found.start("is")]
        if inside:
            return Shaped(" ".join(found["is"].split()), inside[0], inside[-1])
    return None


@lru_cache
def _pattern(shape: str) -> re.Pattern[str]:
    return re.compile(shape, re.IGNORECASE)
