"""The sizes that a bearing, a seal or a tube is bought by: `ten bore, thirty outside, nine wide`, `35 bore by 72`."""

from __future__ import annotations

from worklog_tui.extract.scene import Scene
from worklog_tui.extract.things.subjects import as_thing
from worklog_tui.extract.tokens import Thing

AXES = {
    "bore": "bore", "id": "bore", "inside": "bore", "i d": "bore", "inside diameter": "bore",
    "outside": "outside", "od": "outside", "o d": "outside", "outside diameter": "outside", "across": "outside",
    "wide": "width", "width": "width", "w": "width", "thick": "width", "deep": "width", "high": "width",
}  # fmt: skip
REACH = 4
"Tokens from one size to the next."
LEAST, MOST = 3.0, 500.0
"Millimetres between which the sizes of such parts lie (common practice)."


def sized(i: int, scene: Scene) -> str:
    """Which size the number is, `bore`, `outside` or `width`, where another one is told beside it; else empty."""
    token = scene.tokens[i]
    low = token.amount.low if token.amount is not None else token.value
    if low is None or not LEAST <= low <= MOST:
        return ""
    own = _axis(i, scene)
    if own and (_next(i + 2, scene) or _last(i, scene)):
        return own
    return "" if own else _by(i, scene)


def sized_part(i: int, scene: Scene) -> Thing | None:
    """The bearing, seal or bush that such sizes are of: named before them in the sentence, else talked of just now."""
    names = scene.book.lists["bought_by_sizes"]
    said = [t.thing for t in reversed(scene.tokens[:i]) if t.thing is not None]
    said += [as_thing(s) for s in scene.context.things if s.age <= FRESH]
    return next((t for t in said if t.name.rpartition(" ")[2] in names), None)


FRESH = 4
"Notes back in which the part may have been named."


def _axis(i: int, scene: Scene) -> str:
    """The size that the word right behind the number names, or right before it in shorthand: `od 80`."""
    after = scene.tokens[i + 1].low if i + 1 < len(scene.tokens) else ""
    return AXES.get(after, "")


def _next(first: int, scene: Scene) -> bool:
    """Whether another size begins within a few tokens."""
    for k in range(first, min(first + REACH, len(scene.tokens) - 1)):
        if scene.tokens[k].kind in ("number", "amount"):
            return bool(_axis(k, scene)) or scene.tokens[k - 1].low in ("by", "x")
        if scene.tokens[k].kind == "stop":
            return False
    return False


def _last(i: int, scene: Scene) -> bool:
    """Whether a size was told right before."""
    for k in range(i - 1, max(i - 1 - REACH, -1), -1):
        if scene.tokens[k].kind in ("number", "amount"):
            return bool(_axis(k, scene))
        if scene.tokens[k].kind == "stop":
            return False
    return False


def _by(i: int, scene: Scene) -> str:
    """`Thirty-five bore by seventy-two`: the second of two is the outside."""
    if i < 3 or scene.tokens[i - 1].low not in ("by", "x"):
        return ""
    return "outside" if _axis(i - 3, scene) == "bore" and scene.tokens[i - 3].kind in ("number", "amount") else ""
