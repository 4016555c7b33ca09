"""Which valve a clearance is of: `number one inlet, four`, `two's exhaust is fourteen`, `left exhaust's now four`."""

from __future__ import annotations

from worklog_tui.extract.scene import Scene
from worklog_tui.extract.things.sides import side_behind_at
from worklog_tui.extract.tokens import Thing

SIDES = {
    "inlet": "inlet", "intake": "intake", "inlets": "inlet", "intakes": "intake", "exhaust": "exhaust",
    "exhausts": "exhaust",
}  # fmt: skip
OWNED = {"ones": "1", "twos": "2", "threes": "3", "fours": "4", "fives": "5", "sixs": "6"}
ENDS = frozenset("left right front rear back lh rh nearside offside".split())
REACH = 6
"Tokens before the number within which its valve is named."


def may_be_valve(thing: Thing | None) -> bool:
    """Whether a thing is a valve, what opens it, or named by a word that stands for one."""
    if thing is None:
        return True
    if "cover" in thing.name:
        return False
    return (
        thing.own.lower() in SIDES
        or bool(_numbered_name(thing.own))
        or any(word in thing.name for word in ("valve", "tappet", "rocker", "lash", "gap", "clearance"))
    )


def _numbered_name(own: str) -> str:
    """`Exhaust two's`: the cylinder in a name that is no more than a side and a number."""
    side, _, number = own.lower().replace("'", "").replace("\u2019", "").partition(" ")
    return OWNED.get(number, "") if side in SIDES else ""


def valve_at(scene: Scene, i: int) -> tuple[str, int] | None:
    """The valve of the clearance at token i in words, and the token that names it; None when none is named."""
    if side_behind_at(scene.tokens, i):
        return (_words(scene, i + 1), i + 1) if _side(scene, i + 1) else None
    if (told := _behind(scene, i)) is not None:
        return told
    span = scene.clause(i)
    for k in range(i - 1, max(span.start, i - REACH) - 1, -1):
        token = scene.tokens[k]
        if cylinder := numbered(scene, k):
            return f"cylinder {cylinder} {_side(scene, k - 1)} valve", k - 1
        if token.kind in ("amount", "number", "thread"):
            break
        if _side(scene, k):
            before = scene.tokens[k - 1] if k else None
            behind = before is not None and before.kind in ("amount", "number") and before.low not in OWNED
            return None if behind else (_words(scene, k), k)
    return None


def numbered(scene: Scene, k: int) -> str:
    """`Exhaust two's gone to nine thou`, `inlet 2 .010`: the cylinder whose number stands right behind the valve, with
    a verb or a figure behind it; empty where there is none.
    """
    token, after = scene.tokens[k], scene.tokens[k + 1] if k + 1 < len(scene.tokens) else None
    if k < 1 or not _side(scene, k - 1) or after is None:
        return ""
    if token.low in OWNED:
        return OWNED[token.low]
    cylinders = scene.machine.cylinders or 0
    whole = token.kind == "number" and token.value in range(1, cylinders + 1) and token.high is None
    told = after.kind in ("number", "amount") or after.sense("copula", "reads", "person")
    return f"{token.value:g}" if whole and told and token.value is not None else ""


def _behind(scene: Scene, i: int) -> tuple[str, int] | None:
    """`Fifteen thou on number three exhaust`, `four on the inlets`."""
    tokens, k = scene.tokens, i + 1
    if k >= len(tokens) or tokens[k].low not in ("on", "for", "at"):
        return None
    for k in range(i + 2, min(i + REACH, len(tokens))):
        if _side(scene, k):
            return _words(scene, k), k
        if not (tokens[k].sense("article", "side", "all") or tokens[k].kind == "which"):
            return None
    return None


def _side(scene: Scene, k: int) -> str:
    """`inlet` or `exhaust`, where token k is no more than that: no manifold, no valve seat."""
    token = scene.tokens[k]
    low = token.thing.own.lower() if token.thing is not None else token.low
    if _numbered_name(low):
        return SIDES[low.split()[0]]
    return SIDES.get(low.split()[-1], "") if len(low.split()) <= 2 and low.split() else ""


def _still_at(scene: Scene, k: int) -> str:
    """`Number one inlet, four, exhaust, five and a half`: the cylinder or the side that was told with the other valve
    of the sentence, nothing of the book behind it.
    """
    for n in range(k - 1, 0, -1):
        token = scene.tokens[n]
        if token.kind == "stop" or token.sense("book"):
            return ""
        if _side(scene, n):
            told = _words(scene, n).removeprefix("cylinder ").partition(" ")[0]
            return told if told.isdigit() or told in ENDS else ""
    return ""


def _words(scene: Scene, k: int) -> str:
    token = scene.tokens[k]
    owns = scene.text[max(0, token.end - 2) : token.end] in ("'s", "\u2019s")
    many = token.low.endswith("s") and not owns
    side, before = _side(scene, k), scene.tokens[k - 1] if k else None
    which = (_numbered_name(token.thing.own) or token.thing.which) if token.thing is not None else ""
    many = many and not which.isdigit()
    if before is not None and before.kind == "which" and before.which.isdigit():
        which = before.which
    elif before is not None and before.low in OWNED:
        which = OWNED[before.low]
    elif before is not None and before.low in ENDS:
        which = before.low
    elif not which and not many:
        which = _still_at(scene, k)
    if which.isdigit():
        return f"cylinder {which} {side} valve"
    return f"{which} {side} valve{'s' if many else ''}".strip()
