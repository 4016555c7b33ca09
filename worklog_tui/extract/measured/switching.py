"""Switch points: the pressure at which a compressor, a pump or a regulator cuts in or out."""

from __future__ import annotations

import re

from worklog_tui.extract.scene import Scene

_POINT = re.compile(r"\bcut(?:s|ting)?[ -]?(in|out)\b|\bkick(?:s|ed)?[ -](in|out)\b|\b(?:un(load)s|(load)s)\b")
REACH = 5
"Tokens before and after the number between which the word may stand."


POINTS = frozenset({"in", "out"})


def _switched(scene: Scene, k: int) -> bool:
    """`It cuts out at 181 and in at 121`: the verb stands once, before both."""
    first = scene.clause(k).start
    return any(_POINT.search(scene.tokens[n].low) for n in range(max(first, k - REACH), k))


def switch_point(scene: Scene, i: int) -> str:
    """`cut-in` or `cut-out` when such a word governs the number at token i; empty when none does."""
    span = scene.clause(i)
    before = range(i - 1, max(span.start, i - 1 - REACH) - 1, -1)
    after = range(i + 1, min(span.stop, i + 2))
    for k in (*before, *after):
        token = scene.tokens[k]
        if found := _POINT.search(token.low):
            return f"cut-{found[1] or found[2]}" if found[1] or found[2] else ""
        if token.kind in ("amount", "number", "comma") and k > i:
            break
        if k == i - 2 and token.low in POINTS and scene.tokens[i - 1].low == "at" and _switched(scene, k):
            return f"cut-{token.low}"
        if token.kind in ("amount", "number"):
            break
    return ""
