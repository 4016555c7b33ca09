"""What a word says of a part, wherever it stands: good, bad, or only how it is."""

from __future__ import annotations

from typing import NamedTuple

from worklog_tui.extract.finders.senses import senses_for
from worklog_tui.extract.said import opened_by, says
from worklog_tui.extract.scene import Scene
from worklog_tui.extract.tokens import Thing

TURNED = {"good": "bad", "bad": "good"}
DENIES = frozenset(
    (
        "not no never hardly barely scarcely nt isnt arent wasnt werent aint doesnt dont didnt hasnt havent hadnt wont "
        "wouldnt cant couldnt cannot neither nowhere nothing without"
    ).split()
) | {"no longer", "far from", "anything but", "nowhere near", "less than", "not exactly", "not very", "not all that"}
REACH = 4
"Tokens from a denial to what it denies."


class Said(NamedTuple):
    """A verdict and the tokens that tell it, both inclusive."""

    verdict: str
    first: int
    last: int


LISTS = (("plain", "noted"), ("ill", "bad"), ("fine", "good"))
LIST_NAMES = frozenset(name for name, _ in LISTS)


def said_at(scene: Scene, k: int, thing: Thing | None) -> Said | None:
    """What the words from token k on say of a thing; None when they say nothing of it."""
    token, best = scene.tokens[k], (0, "")
    if not opened_by(scene)[k].isdisjoint(LIST_NAMES):
        best = max(((says(scene, name, k, 5), verdict) for name, verdict in LISTS), key=lambda row: row[0])
    states = senses_for(token, thing) if token.thing is None else []
    if states and best[0] < 2 and not token.sense("position"):
        return Said(states[0].cls, k, k)
    return Said(best[1], k, k + best[0] - 1) if best[0] else _in_order(scene, k)


def _in_order(scene: Scene, k: int) -> Said | None:
    """`In lovely order`, `in a sorry state`: the verdict is in the word between."""
    if scene.tokens[k].low not in ("in", "in a", "in an", "in the"):
        return None
    verdict = ""
    for i in range(k + 1, min(k + 1 + REACH, len(scene.tokens))):
        if n := says(scene, "shape", i, 2):
            return Said(verdict, k, i + n - 1) if verdict else None
        for name, told in LISTS:
            if says(scene, name, i, 1):
                verdict = told
        if scene.tokens[i].sense("good", "bad") and not verdict:
            verdict = "good" if scene.tokens[i].sense("good") else "bad"
    return None


def denial(scene: Scene, k: int, first: int) -> int | None:
    """The index of the word that denies token k, from token `first` on."""
    for i in range(k - 1, max(first, k - REACH) - 1, -1):
        token = scene.tokens[i]
        if token.low in DENIES or token.low.partition(" ")[0] in DENIES:
            return i
        if token.kind in ("comma", "stop") or token.low in ("and", "but"):
            return None
    return None
