"""What others did to it before: `somebody's had this gearbox apart before me`, `it has been rebored at some point`."""

from __future__ import annotations

from worklog_tui.extract.owed.clause import Clause
from worklog_tui.extract.said import opening, says
from worklog_tui.extract.scene import Draft, Scene
from worklog_tui.extract.shown.holder import made, may_hold, rule, subject
from worklog_tui.extract.shown.polarity import Said

BY, LONG_AGO = rule("by-others", 0.62), rule("long-ago", 0.62)
BEEN = frozenset("been was were had being got".split()) | {"has been", "have been", "had been"}
NEAR = 12
"Tokens within which it is told who did it, or when."


ASKS = frozenset("whether if me us asked asks asking wondered what why".split())
"Words of what was said or asked, and not done."


def may_tell(scene: Scene) -> list[int]:
    """The tokens with which it may be told who had hands on it before."""
    return opening(scene, "somebody", "before")


def others(clause: Clause, opens: list[int]) -> list[Draft]:
    """What a clause says that others did, from the tokens `opens` on."""
    scene = clause.scene
    for k in opens:
        if (n := says(scene, "somebody", k, 4)) and (draft := _by_others(clause, k, k + n)) is not None:
            return [draft]
        if (n := says(scene, "before", k, 4)) and (draft := _long_ago(clause, k, k + n - 1)) is not None:
            return [draft]
    return []


def _by_others(clause: Clause, k: int, after: int) -> Draft | None:
    scene = clause.scene
    things = [i for i in scene.things(range(after, clause.span.stop)) if may_hold(scene.tokens[i].thing)]
    if (n := says(scene, "meddled", after, 4)) and not things:
        return _meddled(clause, after, after + n - 1)
    deed = next((i for i in range(after, min(after + 4, clause.span.stop)) if _deed(scene, i)), None)
    if any(scene.tokens[i].low in ASKS for i in range(after, clause.span.stop)):
        return None  # `somebody asked me whether the wiring was original`, `somebody asked what blade that is`
    if deed is None or not things or things[0] > deed + 5:
        return None
    bad = any(says(scene, "botched", i, 4) for i in range(after, clause.span.stop))
    return made(clause, BY, Said("bad" if bad else "noted", deed, max(deed, min(things[0], deed + 4))), things[0])


def _meddled(clause: Clause, first: int, last: int) -> Draft | None:
    """`Somebody's been at it with a file`: what was talked of, and bad where the tool tells it."""
    scene = clause.scene
    rough = any(scene.tokens[i].low in scene.book.owed["rough_tools"] for i in range(last, clause.span.stop))
    return made(clause, BY, Said("bad" if rough else "noted", first, last), subject(clause, first))


def _deed(scene: Scene, i: int) -> bool:
    token = scene.tokens[i]
    if token.sense("did") is not None or token.low in scene.book.owed["others_did"]:
        return True
    if says(scene, "meddled", i, 4):
        return True
    unknown = token.kind == "word" and not token.senses and token.low.endswith("ed")
    return unknown or bool(says(scene, "botched", i, 4))


def _long_ago(clause: Clause, k: int, last: int) -> Draft | None:
    scene = clause.scene
    near = range(k - 1, max(clause.span.start, k - NEAR) - 1, -1)
    been = next((i for i in near if scene.tokens[i].low in BEEN), None)
    if been is None:
        return None
    if scene.tokens[been].low == "had" and (new := scene.things(range(been + 1, k))):
        return made(clause, LONG_AGO, Said("noted", been, last), new[0])  # `it's had a new gasket in its life`
    holder = subject(clause, been)
    if holder is None and not any(t.low in IT for t in scene.tokens[clause.span.start : been + 1]):
        return None
    if not any(_deed(scene, i) for i in range(been + 1, k)):
        return None
    bad = any(says(scene, "botched", i, 4) for i in range(been, k))
    return made(clause, LONG_AGO, Said("bad" if bad else "noted", been + 1, last), holder)


IT = frozenset("its it thats that theyve they this theyre hes shes".split())
