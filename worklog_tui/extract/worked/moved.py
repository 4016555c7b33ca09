"""`Pressed the new bush in`, `knocked out the pin`, `hung the tank back on`: where a thing went, a particle tells,
whatever the verb.
"""

from __future__ import annotations

from collections.abc import Iterator

from worklog_tui.extract.matching import Match
from worklog_tui.extract.scene import Scene
from worklog_tui.extract.worked.clause import GAUGES, WORKED, by_me, match, object_of

ACTIONS = {
    "off": "remove", "out": "remove", "away": "remove", "oot": "remove", "apart": "strip", "in": "fit", "on": "fit",
    "home": "fit", "together": "fit", "onto": "fit", "into": "fit",
}  # fmt: skip
"What was done where a thing went off, out, in, on."
HOW = frozenset("straight right clean back all nicely".split())
BEHIND = 3
"Tokens behind the thing within which its particle stands."


def moved(scene: Scene, k: int) -> Iterator[Match]:
    """The work of the verb of moving at token k."""
    known = scene.tokens[k].low in scene.book.lists["moves"]
    if not by_me(scene, k) or (scene.tokens[k].sense("did", "split", "doing") and not known):
        return
    ahead = _particle(scene, k + 1)
    thing = object_of(scene, ahead if ahead is not None else k)
    if thing is None or (ahead is not None and scene.tokens[k].low == "put"):
        return  # nothing, or `put off the job`
    if scene.tokens[thing].kind != "thing" and (ahead is not None or not known):
        return  # `learned that in the army`
    behind = ahead if ahead is not None else _particle(scene, thing + 1)
    if behind is None or not _is_worked(scene, thing):
        return
    action = ACTIONS[scene.tokens[behind].low.removeprefix("\u2026").split()[-1]]
    if action == "fit" and _new(scene, k, thing):
        action = "replace"
    yield match("moved", scene, k, max(thing, behind), k, thing, action=action)


def _particle(scene: Scene, at: int) -> int | None:
    """The index of the particle at token `at`, or behind a word that only says how."""
    for k in range(at, min(at + BEHIND, len(scene.tokens))):
        low = scene.tokens[k].low
        if low.split()[-1] in ACTIONS and not scene.tokens[k].sense("did", "do", "doing", "bad", "good"):
            return k
        if low not in HOW and not scene.tokens[k].sense("side") and k == at:
            return None
    return None


def _new(scene: Scene, k: int, thing: int) -> bool:
    return any(t.sense("new") for t in scene.tokens[k + 1 : thing])


def _is_worked(scene: Scene, at: int) -> bool:
    """Whether a thing is one that is put on and taken off; a pronoun may be."""
    thing = scene.tokens[at].thing
    return thing is None or (thing.kind in WORKED and not thing.name.endswith(GAUGES))
