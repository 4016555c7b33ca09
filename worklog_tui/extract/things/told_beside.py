"""Which one of several is told behind the number: `a hundred and nine on the left`, `one thirty on two`."""

from __future__ import annotations

from worklog_tui.extract.scene import Scene
from worklog_tui.extract.things.side_words import SIDES


def side_told_behind(scene: Scene, i: int) -> tuple[str, int] | None:
    """`a hundred and nine on the left, forty-six on the right`: a side that the sentence tells behind the number."""
    tokens = scene.tokens
    k = i + 1
    if k >= len(tokens) or tokens[k].low not in ("on", "at", "for"):
        return None
    k += 1
    while k < len(tokens) and tokens[k].sense("article"):
        k += 1
    first = k
    if tokens[i + 1].low == "on" and k < len(tokens) and (which := _numbered(scene, k)):
        return which, k
    while k < len(tokens) and tokens[k].sense("side") and tokens[k].low in SIDES:
        k += 1
    if k == first:
        return None
    end = k + (k < len(tokens) and tokens[k].low in ("one", "side", "hand"))
    ends = end >= len(tokens) or tokens[end].kind in ("stop", "comma") or tokens[end].low in ("and", "but", "so")
    return (" ".join(t.low for t in tokens[first:k]), k - 1) if ends else None


def _numbered(scene: Scene, k: int) -> str:
    """`One thirty-five on the first one, one thirty on two`: the number of one of several at token k, where nothing
    that is counted stands behind it.
    """
    token, after = scene.tokens[k], scene.tokens[k + 1] if k + 1 < len(scene.tokens) else None
    one = after is not None and after.low in ("one", "cylinder", "pot", "hole")
    if token.low in ORDINALS:
        return ORDINALS[token.low] if one else ""
    value = token.value if token.kind == "number" else float(token.which) if token.which.isdigit() else None
    value = 1.0 if token.low == "one" else value
    ends = after is None or after.kind in ("stop", "comma", "number", "amount") or after.low in ("and", "but", "so")
    return f"{value:g}" if ends and value is not None and value in range(1, 13) else ""


ORDINALS = {word: str(n) for n, word in enumerate("first second third fourth fifth sixth".split(), 1)}
