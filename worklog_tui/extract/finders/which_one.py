"""A clause with `that` tells which thing is meant: `the bracket that carries the lamp is cracked`."""

from __future__ import annotations

from worklog_tui.extract.matching import Match
from worklog_tui.extract.scene import Scene

THAT = frozenset({"that", "which"})
THATS = frozenset("thats that which whichs thatll".split())
WITHIN = 5
"Tokens of such a clause, up to the thing at its end."
OWNERS = frozenset({"part", "joint", "control"})


def told_by_that(scene: Scene, k: int) -> int:
    """The thing that the clause with the thing at token k at its end tells of; k where it stands in none."""
    for i in range(k - 1, max(scene.clause(k).start, k - WITHIN), -1):
        token, before = scene.tokens[i], scene.tokens[i - 1]
        if token.low in THAT and before.thing is not None and before.thing.kind in OWNERS:
            return i - 1 if i + 1 < k else k
        if token.kind == "comma" or token.thing is not None or token.sense("copula", "break", "person"):
            return k
    return k


def tells_which(match: Match, scene: Scene) -> bool:
    """Whether the words only tell which thing is meant: `the spring that holds the roller`."""
    first, after = match.first, scene.tokens[match.last : match.last + 2]
    if not first or scene.tokens[first].low not in THAT or scene.tokens[first - 1].thing is None:
        return False
    return len(after) == 2 and bool(after[0].sense("article")) and after[1].thing is not None


def told_in_clause(scene: Scene, first: int) -> int | None:
    """The thing of which a clause with `that` tells: of `it's the spring that's weak`, the spring."""
    if (
        not first
        or scene.tokens[first].low not in THATS
        or scene.tokens[first].clause != scene.tokens[first - 1].clause
    ):
        return None
    return first - 1 if scene.tokens[first - 1].kind == "thing" else None
