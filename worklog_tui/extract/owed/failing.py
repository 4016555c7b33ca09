"""What is done if it goes on: `if the flame still drops out the sensor is to be changed`.

A condition that tells that something is bad yet, then what follows from it: a deed, a part or a cause.
"""

from __future__ import annotations

from worklog_tui.extract.owed.clause import owed, rule
from worklog_tui.extract.scene import Draft, Scene
from worklog_tui.extract.tokens import Token

FAILING = rule("failing", 0.6)
SHORTEST, FARTHEST, LONGEST = 3, 18, 9
"Tokens of a condition at least and at most, and of what follows from it."
DENIED = ("no ", "not ", "doesnt", "dont", "wont", "isnt", "aint", "didnt", "never")


def failing(scene: Scene) -> list[Draft]:
    """The fallbacks of a scene."""
    made: list[Draft] = []
    for k in [k for k, token in enumerate(scene.tokens) if token.low == "if"] if "if" in scene.lows() else ():
        token = scene.tokens[k]
        before = scene.tokens[k - 1] if k else None
        opens = before is None or before.kind in ("stop", "comma") or before.clause != token.clause
        opens = opens or before is None or before.low in scene.book.owed["before_if"]
        if opens and (draft := _fallback(scene, k)) is not None:
            made.append(draft)
    return made


def _fallback(scene: Scene, k: int) -> Draft | None:
    tokens = scene.tokens
    start = _consequence(scene, k)
    if start is None or not _bad_yet(scene, tokens[k + 1 : start]):
        return None
    first = start
    while first < len(tokens) and (tokens[first].low in scene.book.owed["leads"] or tokens[first].kind == "comma"):
        first += 1
    last = first
    while last < min(first + LONGEST, len(tokens)) and tokens[last].kind not in ("stop", "comma") and (
        last == first or tokens[last].clause == tokens[last - 1].clause
    ):  # fmt: skip
        last += 1
    others = scene.book.owed["not_ours"]
    if first == last or tokens[start].low == "but":
        return None
    if any(t.low in others or "would" in t.stances for t in tokens[start:last]):
        return None
    if not _leads_somewhere(tokens[first:last]):
        return None
    thing = next((t.thing for t in tokens[first:last] if t.thing is not None), None)
    return owed(scene, FAILING, first, last - 1, scene.said(first, last - 1), thing, "fallback")


def _consequence(scene: Scene, k: int) -> int | None:
    """The index at which the condition that begins at token k ends."""
    tokens, follows = scene.tokens, scene.book.owed["follows"]
    for i in range(k + SHORTEST, min(k + FARTHEST, len(tokens))):
        token = tokens[i]
        if token.kind == "stop":
            return None
        if token.kind == "comma" or token.low == "then":
            return i + 1
        if token.low in follows and tokens[i - 1].kind != "comma" and token.clause != tokens[i - 1].clause:
            return i
    return None


def _leads_somewhere(tokens: list[Token]) -> bool:
    """Whether words name a thing, a deed or a cause, or what nobody knows, but nothing that is good."""
    if any(t.thing is not None or t.sense("cause", "do", "doing", "did", "new", "split") for t in tokens):
        return not tokens[0].low.startswith("not")
    return not any(t.sense("good", "person") for t in tokens) and any(t.low.isalpha() and not t.senses for t in tokens)


def _bad_yet(scene: Scene, tokens: list[Token]) -> bool:
    """Whether a condition says that something is not put right: denied, still so, again so, bad, past a figure."""
    words = scene.book.owed
    if any(t.low in words["not_ours"] or t.low in words["people"] for t in tokens):
        return False
    if any(t.low in words["still"] or t.low.startswith(DENIED) for t in tokens):
        return True
    return any(t.kind == "amount" or t.sense("not", "bad", "refuses") for t in tokens)
