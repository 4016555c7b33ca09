"""What a person brought to a figure, or left at one: `filed them to twenty-four`, `left the points at eighteen`."""

from __future__ import annotations

from worklog_tui.extract.scene import Scene
from worklog_tui.extract.tokens import Token

SETTABLE = frozenset({"gap", "pressure", "speed", "angle", "voltage", "current", "length", "torque"})
"What is brought to a figure (common practice)."


def brought_to(i: int, scene: Scene) -> bool:
    """`Filed them to twenty-four`, `tyres to twenty-eight`, `ten turns and it's now 175`: the work of a person or a
    part alone before `to`, or what came of turning an adjuster.
    """
    tokens, first = scene.tokens, scene.clause(i).start
    before = tokens[first:i]
    comma = max((k for k, t in enumerate(before) if t.kind == "comma"), default=-1)
    before = before[comma + 1 :]
    if before and before[-1].low == "to" and not any(t.sense("reads", "copula") for t in before[-4:]):
        alone = len(before) > 1 and before[-2].thing is not None
        return (
            alone or _cut(before, scene) or any(s.cls == "did" and s.name in WORKED for t in before for s in t.senses)
        )
    if _got_to(i, scene) or _left_at(i, scene):
        return True
    if not any(t.low in ("now", "now at") for t in (*tokens[max(0, i - 4) : i], *tokens[i + 1 : i + 2])):
        return False
    if _done_behind(i, scene):
        return True
    turned = any(t.amount is not None and t.amount.unit == "turn" for t in tokens[max(0, i - TURNED) : i])
    return turned or any(
        s.cls == "did" and s.name == "adjust" for t in tokens[max(0, i - TURNED) : i] for s in t.senses
    )


def _cut(before: list[Token], scene: Scene) -> bool:
    """`Bored it to twenty`, `trimmed the strip back to`: brought to its size; one that somebody sent back bored was
    measured.
    """
    cut = [k for k, t in enumerate(before) if t.low.partition(" ")[0] in scene.book.lists["cut_to"]]
    return bool(cut) and cut[-1] < len(before) - 2 and not any(t.sense("plan", "must") for t in before)


def _got_to(i: int, scene: Scene) -> bool:
    """`Got the belt to thirteen`, `got it down to nine fifty`: a person brought it; not `it got to fifty-five`."""
    tokens, first = scene.tokens, scene.clause(i).start
    if i - 2 < first or tokens[i - 1].low not in ("to", "down to", "up to", "back to", "back down to", "back up to"):
        return False
    for k in range(i - 2, max(first, i - 8) - 1, -1):
        if tokens[k].low in GOT:
            what = tokens[k + 1 : i - 1]
            return any(t.thing is not None or t.low in ITSELF for t in what)
    return False


GOT = frozenset({"got", "get", "i got", "ive got", "brought", "bring", "have got", "weve got", "we got"})
ITSELF = frozenset("it them that her this".split())


def _left_at(i: int, scene: Scene) -> bool:
    """`I've left the points at eighteen`, `left them about twelve`: how a person left it."""
    tokens, first = scene.tokens, scene.clause(i).start
    for k in range(i - 1, max(first, i - 7) - 1, -1):
        if tokens[k].low not in ("left", "leave", "leaving", "left it", "left it at", "have"):
            continue
        if tokens[k].low == "have":
            return i - k == 2 and tokens[i - 1].low == "at" and k > first and tokens[k - 1].low == "i"
        by = tokens[k - 1] if k > first else None
        person = by is None or by.sense("person") or by.low in ("and", "so", "then", "i", "ive", "weve", "we")
        what = tokens[k + 1 : i]
        if what and not (what[0].sense("article", "all") or what[0].low in ITSELF):
            return False  # `left exhaust, two thou` names a side
        return person and bool(what) and any(t.thing is not None or t.low in ITSELF for t in what)
    return False


def _done_behind(i: int, scene: Scene) -> bool:
    """`It's down to three quarters now I've moved the wheel`: the work that brought it there stands behind."""
    after = scene.tokens[i + 1 : i + 6]
    now = [k for k, t in enumerate(after) if t.low == "now"]
    return bool(now) and any(s.cls == "did" for t in after[now[0] :] for s in t.senses)


WORKED = frozenset({"adjust", "repair", "make", "fill", "tighten", "clean"})
TURNED = 14
"Tokens back from a figure in which a turn of the adjuster explains it."
