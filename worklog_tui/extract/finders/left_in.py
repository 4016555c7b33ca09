"""What was left in a bath, on charge or under oil: it is waited for, and come back to, but it is no stop-gap."""

from __future__ import annotations

from collections.abc import Sequence

from worklog_tui.extract.scene import Scene
from worklog_tui.extract.tokens import Token

LEFT = frozenset("sat sits sit sitting stood stands standing left leave leaving".split())
IN = frozenset("in under on".split())
NEAR_BY = 2
"Tokens from the word of place to the bath."
WAITS = frozenset({"soak", "charge"})


def left_in(scene: Scene, at: int) -> bool:
    """Whether the clause tells that something soaks, charges or lies in a bath: `the head's in the dip`."""
    span, baths = scene.clause(at), scene.book.lists["planned_baths"]
    tokens = [scene.tokens[k] for k in span]
    if any(s.cls in ("did", "doing") and s.name in WAITS for t in tokens for s in t.senses):
        return True
    fluid = any(t.thing is not None and t.thing.kind == "fluid" for t in tokens)
    if fluid and any(not LEFT.isdisjoint(t.low.split()) for t in tokens):
        return True
    return any(_bath(t, tokens[max(n - NEAR_BY, 0) : n], baths) for n, t in enumerate(tokens))


def _bath(token: Token, before: Sequence[Token], baths: frozenset[str]) -> bool:
    """Whether a word names a bath, a word of place in it or before it: `on charge`, `in the dip`."""
    words = token.low.split()
    placed = words[0] in IN or any(t.low in IN for t in before)
    return placed and not baths.isdisjoint(words)
