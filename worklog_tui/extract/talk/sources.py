"""Where something was learnt that is said of the machine: off its plate, from a book, from a person, or guessed."""

from __future__ import annotations

from worklog_tui.extract.scene import Scene

PLATE = frozenset({"plate", "nameplate", "data plate", "stamped", "badge", "brass plate", "tag", "transfer"})
SIMILAR = frozenset({"similar", "sister", "nearest", "lookalike"})


def source_at(scene: Scene, i: int) -> str:
    """plate, own handbook, handbook of a similar machine, person, guess; empty when nothing is said of it."""
    stances = scene.tokens[i].stances
    words = {w for k in scene.clause(i) for w in scene.tokens[k].low.split()}
    if words & PLATE:
        return "plate"
    if "book" in stances or words & {"handbook", "manual", "book"}:
        return "handbook of a similar machine" if words & SIMILAR else "own handbook"
    if "reported" in stances:
        return "person"
    return "guess" if doubted(scene, i) else ""


BACK, ON = 4, 3
"Tokens before and after the words among which a word of doubt speaks of them."


def doubted(scene: Scene, i: int) -> bool:
    """Whether the speaker is not sure of it."""
    if scene.tokens[i].stances & {"maybe", "doubt"}:
        return True
    near = scene.tokens[max(0, i - BACK) : i + ON + 1]
    return any(t.sense("maybe", "doubt", "suspicion") for t in near)
