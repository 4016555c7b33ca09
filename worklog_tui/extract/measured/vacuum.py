"""Inches on a vacuum gauge are of mercury: `vac 14in`, `vacuum at idle is eighteen inches` (common practice)."""

from __future__ import annotations

from worklog_tui.extract.scene import Scene
from worklog_tui.extract.talk.carry import of_mercury_last

MOST = 30.0
"Inches of mercury that the air of the sea's height holds up (standard atmosphere, 29.92)."
REACH = 8
"Tokens before the inches in which a vacuum is named."


def of_mercury(i: int, scene: Scene) -> bool:
    """Whether the inches at token i are those of a vacuum told before them, or of the one told last."""
    amount = scene.tokens[i].amount
    if amount is None or amount.unit != "in" or not 1 <= amount.high <= MOST:
        return False
    for k in range(i - 1, max(-1, i - 1 - REACH), -1):
        token = scene.tokens[k]
        if token.low in WORDS or (token.thing is not None and token.thing.name in GAUGES):
            return True
        if token.kind == "stop" or (token.thing is not None and "length" in token.thing.quantities):
            break
    return _goes_on(i, scene)


WORDS = frozenset({"vac", "vacuum"})
GAUGES = frozenset({"vacuum", "vacuum gauge", "manifold vacuum"})


def _goes_on(i: int, scene: Scene) -> bool:
    """`Now 11in`, where inches of mercury were the last figure told and nothing else is named before it."""
    return of_mercury_last(scene) and not any(t.thing is not None for t in scene.tokens[:i])
