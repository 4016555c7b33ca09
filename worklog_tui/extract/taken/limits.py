"""Which limit a figure of the book is: `no more than two thou`, `sixty is as low as you can go`, `new at five`."""

from __future__ import annotations

from worklog_tui.extract.scene import Scene
from worklog_tui.extract.taken.marks import of_slot
from worklog_tui.rulebook.taken import LIMIT

REACH = 7
"Tokens from the number to the words of its limit."
ENDS_NEW = frozenset({"and", "but", "or", "so", "then", "when", "with"})


def limit(i: int, scene: Scene, amounts: set[int]) -> list[str]:
    """The limit told nearest to the number at token i: right behind it, before it with no other number between, or
    further behind.
    """
    told = [m for m in of_slot(scene, LIMIT) if m.first != i]
    numbers = sorted(k for k in amounts if k != i)
    before = [m for m in told if i - REACH <= m.last < i and not any(m.last < n < i for n in numbers)]
    behind = [m for m in told if i < m.first <= i + REACH and not any(i < n < m.first for n in numbers)]
    behind = [m for m in behind if m.last + 1 not in amounts]
    stops = [k for k, token in enumerate(scene.tokens) if token.kind == "stop"]
    before = [m for m in before if not any(m.last < s < i for s in stops)]
    if behind and (not before or behind[0].first == i + 1):
        return [behind[0].value]
    return [before[-1].value] if before else []


def worded(i: int, scene: Scene, bound: str = "") -> str:
    """Which limit the words before a number make it: `want it under three`, `<.1`, `I'd fret at seventy`;
    empty where they make it none.
    """
    if not (side := _side(i, scene, bound)):
        return ""
    lists = scene.book.taken.lists
    words: set[str] = set()
    for token in reversed(scene.tokens[max(scene.clause(i).start - 1, i - REACH, 0) : i]):
        if token.kind in ("stop", "number", "amount"):
            break
        words |= set(token.low.split())
    if words & lists["worry"]:
        return {"under": "minimum", "over": "maximum", "at": "limit"}[side]
    return {"under": "maximum", "over": "minimum", "at": ""}[side] if words & lists["wish"] else ""


def _side(i: int, scene: Scene, bound: str) -> str:
    """Whether what is told lies under the number, over it or at it."""
    sign = scene.text[: scene.tokens[i].start].rstrip()[-1:]
    if sign in ("<", ">"):
        return "under" if sign == "<" else "over"
    word = scene.tokens[i - 1].low.rpartition(" ")[2] if i else ""
    return SIDES.get(word, "") or (bound if bound in ("under", "over") else "")


SIDES = {
    "under": "under", "below": "under", "undr": "under", "beneath": "under", "over": "over", "above": "over",
    "past": "over", "beyond": "over", "at": "at",
}  # fmt: skip


def of_new(i: int, scene: Scene) -> list[str]:
    """`Sixteen new and scrap at eight`, `new at five`, `it's a hundred and eighteen new`."""
    after = scene.tokens[i + 1] if i + 1 < len(scene.tokens) else None
    before = [t.low for t in scene.tokens[max(0, i - 2) : i]]
    if after is not None and after.low in ("new", "when new", "from new", "brand new"):
        ends = scene.tokens[i + 2] if i + 2 < len(scene.tokens) else None
        return ["new"] if ends is None or ends.kind in ("stop", "comma") or ends.low in ENDS_NEW else []
    return ["new"] if before[:1] == ["new"] and before[1:] in (["at"], ["is"]) else []
