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


def of_new(i: int, scene: Scene) -> list[str]:
    """`Sixteen new and scrap at eight`, `new at five`, `it's a hundred and eighteen new`."""
    after = scene.tokens[i + 1] if i + 1 < len(scene.tokens) else None
    before = [t.low for t in scene.tokens[max(0, i - 2) : i]]
    if after is not None and after.low in ("new", "when new", "from new", "brand new"):
        ends = scene.tokens[i + 2] if i + 2 < len(scene.tokens) else None
        return ["new"] if ends is None or ends.kind in ("stop", "comma") or ends.low in ENDS_NEW else []
    return ["new"] if before[:1] == ["new"] and before[1:] in (["at"], ["is"]) else []
