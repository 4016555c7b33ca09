"""Parts that are wanted in few words, known to the vocabulary or not: `tube wanted`, `spring to find`.

And the look that is put off: `see what it is like in the morning`.
"""

from __future__ import annotations

from worklog_tui.extract.owed.clause import Clause, named_before, opening, owed, put_off, rule, says, talked_of
from worklog_tui.extract.scene import Draft, Scene

WANTED, LOOK = rule("wanted", 0.58), rule("look-later", 0.56)

ASKED_FOR = frozenset({"wanted", "needed", "required"})


def may_want(scene: Scene) -> list[int]:
    """The tokens that may say that something is wanted, or is to be looked at."""
    looks = opening(scene, "looks")
    if ASKED_FOR.isdisjoint(scene.lows()) and not scene.holds("get"):
        return looks
    asks = [k for k, token in enumerate(scene.tokens) if token.low in ASKED_FOR or "get" in token.classes]
    return sorted({*asks, *looks})


def wanted(clause: Clause, opens: list[int]) -> list[Draft]:
    """What a clause says is wanted, or is to be looked at later, by the tokens `opens`."""
    if clause.against() or clause.asked():
        return []
    tokens = clause.scene.tokens
    for k in opens:
        ends = (
            k + 1 >= clause.span.stop or tokens[k + 1].kind in ("stop", "comma") or tokens[k + 1].low in ("and", "too")
        )
        if ends and (tokens[k].low in ASKED_FOR or _to_get(clause, k)):
            made = _part(clause, k - (tokens[k].low not in ASKED_FOR))
            return [made] if made is not None else []
        if says(clause.scene, "looks", k) and k + 1 < clause.span.stop and put_off(clause.scene, k + 1, events=False):
            made = _look(clause, k)
            return [made] if made is not None else []
    return []


def _to_get(clause: Clause, k: int) -> bool:
    return (
        k > clause.span.start and clause.scene.tokens[k - 1].low == "to" and bool(clause.scene.tokens[k].sense("get"))
    )


def _part(clause: Clause, k: int) -> Draft | None:
    """The part right before token k."""
    scene = clause.scene
    if k <= clause.span.start:
        return None
    thing = scene.tokens[k - 1].thing
    if thing is not None:
        return owed(scene, WANTED, k - 1, k, thing.words, thing, "part needed")
    name = named_before(scene, k, clause.span.start)
    return owed(scene, WANTED, *name, scene.said(*name), None, "part needed") if name is not None else None


def _look(clause: Clause, k: int) -> Draft | None:
    scene = clause.scene
    after = scene.tokens[k + 1]
    if not (says(scene, "asks", k + 1) or after.low in ("nxt", "next", "again", "tomorrow", "at", "it")):
        return None
    named = clause.things(k + 1, clause.span.stop)
    thing = scene.tokens[named[0]].thing if named else talked_of(scene, k)
    if thing is None:
        return None
    words = f"look at {thing.words}"
    return owed(scene, LOOK, k, named[0] if named else k, words, thing, "to do")
