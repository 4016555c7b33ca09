"""How a part was put before a figure was read, in a clause without a verb: `Plunger right up, six thou of shake`."""

from __future__ import annotations

from worklog_tui.extract.scene import Scene
from worklog_tui.extract.taken.marks import Mark
from worklog_tui.extract.tokens import Token

LEFT, PLACED = "left", "placed"
"The slots: of all that is measured electrically or by a gauge, and of clearances too."
OPENERS = frozenset("and now then right so okay ok well with next the a an all both my same".split())
DEGREE = frozenset("right hard fully full all the way wide well still back half tight straight held propped".split())
POSITIONS = frozenset("up down in forward home extended retracted raised lowered engaged".split())
"Positions of a part in which it is rocked or clocked."
MOST = 6
"Tokens of such a clause."


def left_as(scene: Scene) -> list[Mark]:
    """The clauses of a sentence that tell nothing but how a part is."""
    if scene.book.taken.lists["left_so"].isdisjoint(scene.words()) and "against" not in scene.words():
        return []
    found, first = [], 0
    tokens = scene.tokens
    for k in range(len(tokens) + 1):
        if k < len(tokens) and tokens[k].kind not in ("stop", "comma"):
            continue
        if 1 < k - first <= MOST + 2 and (mark := _put(first, k - 1, scene)) is not None:
            found.append(mark)
        first = k + 1
    return found


def _put(first: int, last: int, scene: Scene) -> Mark | None:
    """What the tokens from first to last tell, where they name a part and how it is put, and nothing else."""
    tokens = scene.tokens
    while first < last and tokens[first].low in OPENERS:
        first += 1
    part, so = tokens[first], _how_long(first, last, scene)
    if not so or not _is_part(part) or last - first >= MOST or {"not", "plan", "asked", "if"} & part.stances:
        return None
    if any(not set(t.low.split()) <= DEGREE for t in tokens[first + 1 : so]):
        return None
    slot = PLACED if so != last or tokens[last].low.rpartition(" ")[2] in POSITIONS else LEFT
    return Mark(first, last, slot, scene.said(first, last).lower())


def _is_part(token: Token) -> bool:
    thing = token.thing
    return thing.kind not in ("machine", "tool") if thing is not None else token.sense("part") is not None


def _how_long(first: int, last: int, scene: Scene) -> int:
    """The token with which the words of how it is put begin: the last one, or `against the stop`; 0 for none."""
    tokens = scene.tokens
    for k in range(first + 1, last):
        if tokens[k].low == "against":
            return k
    if " and " in tokens[last].low:
        return 0  # `spindle up and down`: it is moved
    low = tokens[last].low.rpartition(" ")[2]
    return last if last > first and low in scene.book.taken.lists["left_so"] else 0
