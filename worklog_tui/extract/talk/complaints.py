"""Complaints: what is told to be wrong with a machine before anybody looked: `the driver says it judders`."""

from __future__ import annotations

from worklog_tui.extract.scene import Scene
from worklog_tui.extract.tokens import Token

TELLING = ("complains", "reported", "tells")


def complains(scene: Scene) -> bool:
    """Whether the sentence tells a complaint: by its own words, or as what somebody says."""
    if scene.complaint is None:
        scene.complaint = scene.holds(*TELLING) and _complains(scene.tokens)
    return scene.complaint


def _complains(tokens: list[Token]) -> bool:
    for k, token in enumerate(tokens):
        if token.classes.isdisjoint(TELLING):
            continue
        sense = token.sense(*TELLING)
        if sense is not None and (sense.cls != "tells" or _speaks(tokens, k)):
            return True
    return False


def _speaks(tokens: list[Token], k: int) -> bool:
    """`The teacher says`, `porters told me`: a word that names nothing of a machine before a verb of telling."""
    if not k:
        return False
    before = tokens[k - 1]
    return before.kind == "word" and not before.senses and before.low.isalpha() and len(before.low) > 3
