"""With what a bare number was taken, told some words behind it: `ninety-one at the housing with the infra red`."""

from __future__ import annotations

from worklog_tui.extract.scene import Scene, announced
from worklog_tui.extract.tokens import Token

WITH = frozenset("with by on using off".split())
FAR = 9
"Tokens behind a number in which the instrument is told."
TELL = frozenset({"speed", "temperature"})
"What an instrument measures alone."


def gauge(i: int, scene: Scene) -> list[Token]:
    """The tokens right behind the number at token i that may name the instrument: `sixty on the gauge`."""
    if i + 2 >= len(scene.tokens) or scene.tokens[i + 1].low not in WITH:
        return []
    return scene.tokens[i + 2 : i + 5]


def taken_with(i: int, scene: Scene) -> str:
    """What the instrument measures that is told behind the number at token i; empty where none is, or another number
    stands before it.
    """
    tokens = scene.tokens
    if near := next((found for t in gauge(i, scene) if (found := announced(scene.book, t)) in TELL), ""):
        return near
    for k in range(i + 1, min(i + FAR, len(tokens))):
        if tokens[k].kind in ("stop", "number", "amount") or "break" in tokens[k].classes:
            return ""
        if tokens[k].low not in WITH:
            continue
        named = tokens[k + 1 : k + 4]
        found = next((f for t in named if (f := announced(scene.book, t)) in TELL), "")
        if found and any(t.sense("article") or announced(scene.book, t) for t in named[:1]):
            return found
    return ""
