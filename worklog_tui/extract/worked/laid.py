"""`Put four litres of fresh oil in`, `smeared a bit of lube on the cam`, `pushed clean fluid through the lines`: what
was done with a fluid, the fluid and the way it went tell.
"""

from __future__ import annotations

from collections.abc import Iterator

from worklog_tui.extract.matching import Match
from worklog_tui.extract.scene import Scene
from worklog_tui.extract.tokens import Thing
from worklog_tui.extract.worked.clause import by_me, describes, match

WAYS = frozenset("in into on onto down through thru round around over along under up at inside".split())
THROUGH = frozenset("through thru".split())
INTO = frozenset("in into".split())
MEASURED = ("amount", "loose")
FAR, NEAR = 8, 5


def laid(scene: Scene, k: int) -> Iterator[Match]:
    """The work of the verb of pouring or smearing at token k."""
    at = _fluid(scene, k) if by_me(scene, k) else None
    if at is None:
        return
    fluid = scene.tokens[at].thing
    if fluid is None:  # `put two litres of oil in`
        yield match("laid", scene, k, at, k, None, action="fill", part="oil", it=False)
    elif fluid.of is not None and fluid.of.kind not in ("fluid", "tool"):
        action = _action(scene, fluid, fluid.of, frozenset(fluid.words.lower().split()) & WAYS)
        if action:
            yield match("laid", scene, k, at, k, at, action=action, onto=action != "fill")
    elif at + 1 < scene.clause(k).stop and _way(scene, at + 1) & WAYS:
        yield from _behind(scene, k, at, fluid)


def _behind(scene: Scene, k: int, at: int, fluid: Thing) -> Iterator[Match]:
    """The work where the way of the fluid at token `at`, and what it went on or into, stand behind it."""
    tokens, way = scene.tokens, at + 1
    ahead = range(way + 1, min(way + NEAR, scene.clause(k).stop))
    onto = next((n for n in ahead if tokens[n].kind == "thing"), None)
    if onto is not None and not all(describes(t) for t in tokens[way + 1 : onto]):
        onto = None
    action = _action(scene, fluid, tokens[onto].thing if onto is not None else None, _way(scene, way))
    if action == "fill":
        yield match("laid", scene, k, onto or way, k, at, action=action)
    elif action and onto is not None:
        yield match("laid", scene, k, onto, k, onto, action=action, used=scene.said(at, at))


def _way(scene: Scene, k: int) -> frozenset[str]:
    return frozenset({scene.tokens[k].low.removeprefix("\u2026")})


def _fluid(scene: Scene, k: int) -> int | None:
    """The index of the fluid that the verb at token k lays somewhere."""
    for at in range(k + 1, min(k + 1 + FAR, scene.clause(k).stop)):
        token = scene.tokens[at]
        if token.thing is not None:
            return at if token.thing.kind == "fluid" and token.thing.name not in ("air", "steam") else None
        if token.low == "oil in":
            return at
        if not (describes(token) or token.kind in MEASURED or token.low in DOSES or token.sense("do", "does")):
            return None
    return None


DOSES = frozenset("of a bit couple drop drops".split())


def _action(scene: Scene, fluid: Thing, onto: Thing | None, way: frozenset[str]) -> str:
    """What was done with a fluid that went that way; empty when it may be anything."""
    book = scene.book
    if way & THROUGH:
        return "clean" if fluid.name in book.lists["cleaners"] else "flush"
    if fluid.name in book.lists["penetrants"]:
        return "soak" if onto is not None else ""
    if fluid.name in book.lists["cleaners"]:
        return "clean" if onto is not None else ""
    holds = onto is None or "volume" in onto.quantities or onto.kind == "machine" or onto.name in book.lists["holds"]
    if way & INTO and holds:
        return "fill"
    if fluid.name in book.lists["oils"] and onto is not None and fluid.name != "fuel":
        return "lubricate"
    return ""
