"""How a try went: `Pull. Pull. There!`, `hit the button and she's away`, `kick it over, nothing`; of the engine, or of
the spark where that is what was tried.
"""

from __future__ import annotations

from worklog_tui.extract.owed.clause import Clause
from worklog_tui.extract.said import opening, says
from worklog_tui.extract.scene import Draft, Scene
from worklog_tui.extract.shown.holder import made, rule
from worklog_tui.extract.shown.polarity import Said
from worklog_tui.extract.talk.trying import ENGINE, SPARK, tried_here, under_way
from worklog_tui.extract.tokens import Thing, Token

TRIED = rule("tried", 0.62)
TOLD = {
    ENGINE: (("took", "good"), ("balked", "bad")),
    SPARK: (("sparked", "good"), ("balked", "bad"), ("took", "good")),
}
"What was tried -> the lists that tell how it went, and the verdict; what goes away is the engine, whatever was tried."
SMALL = ("filler", "break", "pronoun", "degree", "nth", "article")
"Classes of words that may stand between a try and how it went."
LESS = frozenset("and but then just still only again oh ah ooh ha yeah yes a couple more it or".split())
POINTS = "there"
AFTER = frozenset(
    "and but now then again so at there on straight right first though this all with by in after or".split()
)


def may_tell(scene: Scene) -> list[int]:
    """The tokens that may tell how a try went, where one is under way."""
    said = opening(scene, "took", "balked", "sparked")
    return said if said and (under_way(scene.context) or tried_here(scene)) else []


def outcomes(clause: Clause, opens: list[int]) -> list[Draft]:
    """How the tries of a clause, or the one before it, went: what each verdict was told with first."""
    scene = clause.scene
    drafts: dict[str, Draft] = {}
    for k in opens:
        what = _under_way(clause, k)
        for name, verdict in TOLD.get(what, ()):
            n = says(scene, name, k, 5)
            if n and verdict not in drafts and _alone(clause, k + n):
                thing = Thing(SPARK, SPARK, "quality") if what == SPARK and name != "took" else scene.engine()
                if (draft := made(clause, TRIED, Said(verdict, k, k + n - 1), None, thing)) is not None:
                    drafts[verdict] = draft
    return list(drafts.values())


def _under_way(clause: Clause, k: int) -> str:
    """What was tried right before token k; empty where other words stand between."""
    scene, here = clause.scene, tried_here(clause.scene)
    at = max((last for _, last, _ in here if last < k), default=-1)
    first = max(at + 1, clause.span.start)
    if at < 0 and not under_way(scene.context):
        return ""
    if not all(_is_small(scene, i) for i in range(first, k)):
        return ""
    if at < 0 and scene.context.tried_age and scene.tokens[k].low.startswith(POINTS):
        return ""  # `There. Look at that.`
    return next((what for _, last, what in here if last == at), under_way(scene.context))


def _is_small(scene: Scene, i: int) -> bool:
    token = scene.tokens[i]
    return token.kind in ("comma", "number", "which", "stop") or token.low in LESS or bool(token.sense(*SMALL))


def _alone(clause: Clause, after: int) -> bool:
    """Whether no more is said in one breath with it: `nothing`, not `nothing in the bowl`."""
    if after >= clause.span.stop:
        return True
    token: Token = clause.scene.tokens[after]
    tries = any(first == after for first, _, _ in tried_here(clause.scene))
    return tries or token.kind in ("comma", "stop", "number", "which") or token.low in AFTER or bool(token.sense("nth"))
