"""What is left, told as a bare list at the end of the talk: `So. Belt, bearing, stop box.`

Right after a word that only sums up (`so`, `right`) a sentence of nothing but names tells what is still to be done.
"""

from __future__ import annotations

import re

from worklog_tui.extract.owed.clause import owed, rule
from worklog_tui.extract.scene import Draft, Scene
from worklog_tui.extract.tokens import Token

SUMMED = rule("summed-up", 0.6)
TOLD = 4
"Notes of a session before which nothing is summed up: a list that opens it tells what is to come."
SHORT = 40
"Letters of a sentence that sums up, at most."
LEAST = 3
"Members of a list."
LONGEST = 4
"Tokens of a member."
WANTED = frozenset({"part", "joint", "fastener", "control"})
TALK = ("person", "pronoun", "did", "doing", "copula", "must", "want", "plan", "bad", "good", "noted", "not", "state")
"Classes of words that a bare list does not have."
_SUMS_UP = re.compile(r"(?:^|[.!?:]\s*)(?:(?:so|right|then|the|list|still|left|to do)\b[ ,]*){1,4}[.:!]\s*$")
"A sentence that only sums up stands right before."


def summed(scene: Scene) -> list[Draft]:
    """What a bare list after a word that sums up says is left."""
    if len(scene.context.notes) < TOLD or not scene.tokens or not _sums_up(scene):
        return []
    members = _members(scene)
    things = [_thing_of(scene, *member) for member in members]
    if len(members) < LEAST or 2 * sum(k is not None for k in things) <= len(members):
        return []
    return [_of(scene, *member) for member in members]


def _sums_up(scene: Scene) -> bool:
    """Whether the sentence before this one does nothing but sum up."""
    start = scene.tokens[0].start
    before = scene.text[max(0, start - SHORT) : start].lower()
    return bool(_SUMS_UP.search(before if start <= SHORT else f"-{before}"))


def _members(scene: Scene) -> list[tuple[int, int]]:
    """The members of the list; none where it is more than a list of names."""
    last = len(scene.tokens) - (scene.tokens[-1].kind == "stop")
    rows, start = [], 0
    for k in range(last + 1):
        ends = k == last or scene.tokens[k].kind == "comma" or scene.tokens[k].low == "and"
        if ends and k > start:
            if k - start > LONGEST or not _is_name(scene.tokens[start:k]):
                return []
            rows.append((start, k - 1))
        if ends:
            start = k + 1
    return rows


def _is_name(tokens: list[Token]) -> bool:
    return not any(t.thing is None and (t.sense(*TALK) or t.stances) for t in tokens) and any(
        t.thing is not None or (t.kind in ("word", "term") and t.low.isalpha()) for t in tokens
    )


def _thing_of(scene: Scene, first: int, last: int) -> int | None:
    """The index of the part that a member names, if any."""
    things = (k for k in range(first, last + 1) if (thing := scene.tokens[k].thing) and thing.kind in WANTED)
    return next(things, None)


def _of(scene: Scene, first: int, last: int) -> Draft:
    at = _thing_of(scene, first, last)
    thing = scene.tokens[at].thing if at is not None else None
    return owed(scene, SUMMED, first, last, thing.words if thing else scene.said(first, last), thing, "to do")
