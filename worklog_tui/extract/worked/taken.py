"""`Took the slop out of the cable`, `ground the nicks out of the blade`, `blew the water out of the tank`: what was
taken out of a thing tells what was done to it.
"""

from __future__ import annotations

from collections.abc import Iterator

from worklog_tui.extract.matching import Match
from worklog_tui.extract.scene import Scene
from worklog_tui.extract.tokens import Token
from worklog_tui.extract.worked.clause import REACH, by_me, describes, match
from worklog_tui.rulebook import Rulebook

FROM = frozenset({"out of", "from", "off", "off of", "outta"})


def taken(scene: Scene, k: int) -> Iterator[Match]:
    """The work of the verb at token k that takes something out of a thing."""
    tokens, stop = scene.tokens, scene.clause(k).stop
    if not by_me(scene, k):
        return
    for at in range(k + 1, min(k + REACH, stop - 1)):
        if action := _action(tokens[at], scene.book):
            way = at + 1 + (tokens[at + 1].low.removeprefix("\u2026") == "out" and at + 2 < stop)
            said = " ".join(t.low for t in tokens[at + 1 : way + 1]).removeprefix("\u2026")
            if said not in FROM:
                return
            thing = _thing(scene, way, stop)
            if thing is not None:
                yield match("taken", scene, k, thing, k, thing, action=action)
            return
        if not describes(tokens[at]) and not tokens[at].sense("all", "degree"):
            return


def _thing(scene: Scene, way: int, stop: int) -> int | None:
    """The thing behind the word `way`, with nothing but what describes it between."""
    for at in range(way + 1, min(way + REACH, stop)):
        if scene.tokens[at].kind == "thing":
            return at
        if not describes(scene.tokens[at]):
            return None
    return None


def _action(token: Token, book: Rulebook) -> str:
    """What was done where such a thing was taken out; empty of other words."""
    low = token.low
    if token.thing is not None and token.thing.kind == "fluid":
        return "bleed" if token.thing.name == "air" else "drain"
    if low == "air" or low in ("bubbles", "bubble"):
        return "bleed"
    if low in book.lists["taken_adjust"]:
        return "adjust"
    if low in book.lists["taken_repair"]:
        return "repair"
    if low in book.lists["taken_free"]:
        return "free"
    if token.sense("foreign") is not None or low in book.lists["taken_clean"]:
        return "clean"
    cause = token.sense("cause")
    return "drain" if cause is not None and cause.name == "stale fuel" else ""
