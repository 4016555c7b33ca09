"""Figures of tools and instruments, and of the place where something was measured: none of them is the machine's."""

from __future__ import annotations

from worklog_tui.extract.measured.number_form import fraction
from worklog_tui.extract.scene import Scene
from worklog_tui.extract.tokens import Token

LENGTHS = frozenset({"in", "mm", "ft"})
SCALES = frozenset({"range", "scale", "setting"})
FAR_LESS = 20
"How many times what is measured the place is away at which it was."


def after_it(scene: Scene, i: int, n: int = 1) -> list[Token]:
    """The next n tokens of the sentence behind token i."""
    return scene.tokens[i + 1 : i + 1 + n]


def where_taken(scene: Scene, i: int) -> bool:
    """`Two thou on a test bar at six inches`, `.0009 @ 6 in`, `clock six inches down`: where something was measured."""
    amount, before = scene.tokens[i].amount, scene.tokens[max(0, i - 12) : i]
    if amount is None or amount.unit not in LENGTHS or not before:
        return False
    if before[-1].low in ("at", "@"):
        return any(
            t.amount is not None and t.amount.unit in LENGTHS and t.amount.low * FAR_LESS <= amount.low for t in before
        )
    after = after_it(scene, i)
    along = bool(after) and after[0].low in ("down", "along", "out", "up", "down it")
    return along and any(t.thing is not None and t.thing.system == "instruments and gauges" for t in before[-3:])


def of_a_tool(scene: Scene, i: int) -> bool:
    """`a seventeen mil wrench`, `half-inch socket`, `found the 10 mm.`"""
    token, after = scene.tokens[i], after_it(scene, i)
    if not after:
        return False
    tool = scene.book.lists["tools_by_size"] & set(after[0].low.split()[-1:])
    if tool and (token.amount is None or token.amount.unit in LENGTHS):
        return token.amount is not None or fraction(scene.said(i, i))
    looked_for = any(t.low in ("found", "lost", "dropped", "where's", "wheres", "grab", "fetch", "pass") for t in
                     scene.tokens[max(0, i - 3) : i])  # fmt: skip
    if token.amount is not None and token.amount.unit in LENGTHS and after[0].thing is not None and (
        after[0].thing.kind == "fastener"
    ):  # fmt: skip
        return True  # `8 mil nuts`
    article = i > 0 and scene.tokens[i - 1].low == "the"
    return looked_for and article and token.amount is not None and token.amount.unit in LENGTHS


def in_the_hand(scene: Scene, i: int) -> bool:
    """`that little spanner, the quarter Whitworth`: the thread of a tool."""
    near = [*scene.tokens[max(0, i - 4) : i], *after_it(scene, i)]
    tools = scene.book.lists["tools_by_size"] - {"tap", "taps", "key", "stand"}
    return any(tools & set(t.low.split()[-1:]) for t in near)


def of_a_meter(scene: Scene, i: int) -> bool:
    """`on the twenty volt range`, `this gauge goes to a thousand`."""
    if any(t.low in SCALES for t in after_it(scene, i)):
        return True
    if not i or not scene.tokens[i - 1].low.endswith(("to", "of", "to a", "a")):
        return False
    before = " ".join(t.low for t in scene.tokens[max(0, i - 4) : i])
    return before.endswith(
        (
            "count to",
            "counting to",
            "counted to",
            "count of",
            "goes to",
            "goes up to",
            "reads up to",
            "goes to a",
            "range of",
            "only goes to",
        )
    )
