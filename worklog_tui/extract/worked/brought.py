"""`Closed them up a touch`, `wound the regulator up till it held six bar`: a thing that was brought somewhere, and by
how much or how far, was set.
"""

from __future__ import annotations

from collections.abc import Iterator

from worklog_tui.extract.matching import Match
from worklog_tui.extract.scene import Scene
from worklog_tui.extract.tokens import Token
from worklog_tui.extract.worked.clause import IT, by_me, match, object_of

SETTABLE = frozenset({"part", "joint", "fastener", "control", "electric", "quality"})
WHERE = frozenset("up down in out round around over off back along across open forward forwards".split())
"Where a setting is brought; behind the verb or behind its thing."
FAR = frozenset({"to", "till", "until", "so", "up to", "down to", "back to", "till i", "until i"})
JUST = frozenset("just about by roughly maybe another".split())
SMALL = frozenset("wee good little small tiny full quarter half".split())
NEAR = 4
"Tokens behind the thing and its particle within which the measure begins."


def brought(scene: Scene, k: int) -> Iterator[Match]:
    """The work of the verb at token k that brings a setting somewhere."""
    if not by_me(scene, k):
        return
    ahead = k + 1 if _where(scene, k + 1) else None
    thing = object_of(scene, ahead if ahead is not None else k)
    if thing is None and ahead is None:
        return
    last = thing if thing is not None else k + 1
    behind = last + 1 if ahead is None and _where(scene, last + 1) else None
    if (ahead is None and behind is None) or not _settable(scene, thing):
        return
    end = _measure(scene, (behind if behind is not None else last) + 1)
    if end is not None:
        yield match("brought", scene, k, end, k, thing, action="adjust")


def _where(scene: Scene, at: int) -> bool:
    """Whether a word of place stands at token `at`, that of a verb of two words too."""
    return at < len(scene.tokens) and scene.tokens[at].low.removeprefix("\u2026") in WHERE


def _settable(scene: Scene, at: int | None) -> bool:
    """Whether a thing may be set; what `it` stands for is asked later."""
    thing = scene.tokens[at].thing if at is not None else None
    return thing is None or thing.kind in SETTABLE


def _measure(scene: Scene, at: int) -> int | None:
    """The index of the token that tells by how much, or how far; None where nothing does."""
    tokens, steps = scene.tokens, scene.book.lists["steps_of_setting"]
    for k in range(at, min(at + NEAR, len(tokens))):
        token = tokens[k]
        if _is_step(token, steps) or (token.low in FAR and k + 1 < len(tokens) and _far(scene, k + 1)):
            return k
        if token.kind in ("amount", "number"):
            return k if _is_so_much(scene, k, steps) else None
        if not (token.low in JUST | SMALL or token.kind == "comma" or token.sense("article", "degree", "about")):
            return None
    return None


def _is_step(token: Token, steps: frozenset[str]) -> bool:
    """`A touch`, `one hole`, `two clicks`: what a setting is moved by."""
    return token.low in steps or (token.amount is not None and token.amount.unit == "turn")


def _is_so_much(scene: Scene, k: int, steps: frozenset[str]) -> bool:
    """Whether a number counts steps, or is where it stands now: behind a comma, alone or before `now`."""
    after = scene.tokens[k + 1] if k + 1 < len(scene.tokens) else None
    if after is not None and after.low in steps:
        return True
    now = after is None or after.kind in ("stop", "comma") or after.low in ("now", "and")
    return scene.tokens[k - 1].kind == "comma" and now


def _far(scene: Scene, k: int) -> bool:
    """Whether how far it was brought is told behind `to`, `till`: a figure, or what it does then."""
    near = scene.tokens[k : k + NEAR]
    return any(t.kind in ("amount", "number") or t.low in IT or t.low in REACHED for t in near)


REACHED = frozenset("just barely its theyre theres ive kisses kiss drags touches".split())
