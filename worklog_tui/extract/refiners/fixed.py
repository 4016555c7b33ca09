"""What a person fixed at a figure: what is locked behind it was set, and so was a pressure that was put on to see
whether it holds.
"""

from __future__ import annotations

from worklog_tui.extract.scene import Draft, Scene
from worklog_tui.extract.tokens import Token

SETTABLE = frozenset({"gap", "angle", "speed", "length", "turns", "pressure"})
BEHIND, HELD_BEHIND = 7, 4
"Tokens behind a figure in which it is locked, or in which the test goes on."
PUT_ON = frozenset("on into in through to".split())


def refine(drafts: list[Draft], scene: Scene) -> list[Draft]:
    """The readings; those that were fixed or put on as set."""
    amounts = {d.main for d in drafts if d.kind == "reading"}
    for draft in drafts:
        if draft.kind != "reading" or draft.fields["role"] != "measured":
            continue
        if draft.fields["quantity"] in SETTABLE and _locked(draft.main, amounts, scene):
            draft.fields["role"] = "set"
            draft.trail.append("set: it was locked there")
        elif draft.fields["quantity"] in BROUGHT and (_there(draft.main, scene) or _moved_before(draft.main, scene)):
            draft.fields["role"] = "set"
            draft.trail.append("set: it was brought there")
        elif draft.fields["quantity"] == "pressure" and draft.fields["unit"] and _put_on(draft.main, amounts, scene):
            draft.fields["role"] = "set"
            draft.trail.append("set: a pressure put on to see whether it holds")
    return drafts


def _locked(i: int, amounts: set[int], scene: Scene) -> bool:
    """`Twelve thou, and lock it down`, `.001, locked`: nothing else is told between the figure and the locking."""
    tokens = scene.tokens
    for k in range(i + 1, min(i + 1 + BEHIND, len(tokens))):
        if tokens[k].kind == "stop" or k in amounts or tokens[k].sense("bad", "book", "copula"):
            return False
        if set(tokens[k].low.split()[:1]) & scene.book.lists["locks"]:
            thing = tokens[k].thing
            return thing is None or thing.kind == "unknown"
    return False


def _there(i: int, scene: Scene) -> bool:
    """`There we go, fifteen thou`, `okay, there, eighteen`: said when it is right; not `down there, ten`."""
    tokens, first = scene.tokens, max(scene.clause(i).start - 3, 0)
    for k in range(i - 1, max(first, i - 5) - 1, -1):
        if tokens[k].sense("reads", "copula", "book", "did", "bad") or tokens[k].thing is not None:
            return False
        if tokens[k].low in ("there", "there we go", "there you go", "there we are", "there she is"):
            before = tokens[k - 1] if k else None
            return before is None or before.kind in ("comma", "stop") or before.low in ("and", "okay", "so", "right")
    return False


def _moved_before(i: int, scene: Scene) -> bool:
    """`Pulled the belt up. Ten mil of give.`: the sentence before only moves something, and this one begins with the
    figure.
    """
    if any(not t.sense("about", "article", "filler") and t.kind != "comma" for t in scene.tokens[:i]):
        return False
    words = scene.context.said.lower().replace("'", "").strip(" .?!:").split()
    if not words or len(words) > FEW or not scene.book.lists["moved_a_little"] & set(words[:4]) or ROUND & set(words):
        return False
    return not any(w[0].isdigit() or w in scene.book.numerals.starts for w in words)


FEW = 7
"Words of a sentence that does nothing but move something."
BROUGHT = frozenset({"gap", "angle", "length", "turns"})
"What is moved until the figure is right."
ROUND = frozenset("over round around engine crank handle out off apart cover head wheel".split())
"What is turned over is measured at another place; what is pulled out or off was taken away."


def _put_on(i: int, amounts: set[int], scene: Scene) -> bool:
    """`7 psi held 7 min`, `twelve pounds on the case and it fell to nine`: no verb of reading stands before it."""
    tokens, span = scene.tokens, scene.clause(i)
    before = tokens[span.start : i]
    if any(t.sense("copula") or _reads(t) for t in before) or any(k in amounts for k in range(span.start, i)):
        return False
    return _tested(before) or _held(i, scene)


def _held(i: int, scene: Scene) -> bool:
    """`Held seven minutes`, `dropped to nine`: behind the word of holding stands how long, or what was left."""
    for k in range(i + 1, min(i + 1 + HELD_BEHIND, len(scene.tokens))):
        if scene.tokens[k].kind == "stop":
            return False
        if set(scene.tokens[k].low.split()) & scene.book.lists["keeps_pressure"]:
            return any(t.kind in ("amount", "number") for t in scene.tokens[k + 1 : k + 4])
    return False


def _reads(token: Token) -> bool:
    return bool(token.sense("reads")) and token.low not in ("on", "at")


def _tested(before: list[Token]) -> bool:
    """`Pressure on the housing, 10`, `pressure tester on it, thirteen pounds`: the test is put on."""
    named = [k for k, t in enumerate(before) if {"pressure", "tester", "test"} & set(t.low.split())]
    return bool(named) and any(t.low.lstrip("…") in PUT_ON for t in before[named[-1] + 1 : named[-1] + 3])
