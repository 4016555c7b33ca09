"""Marks: the words of a sentence that tell how the machine stands, or of a limit."""

from __future__ import annotations

from typing import NamedTuple

from worklog_tui.extract.scene import Scene

MOST = 7
"Tokens of which a mark may be made."
PARTICLE = "\u2026"
"Before a word that may belong to a verb: `with the clutch in`."


class Mark(NamedTuple):
    """A value of a slot, told by the tokens from `first` to `last`."""

    first: int
    last: int
    slot: str
    value: str


def marks(scene: Scene) -> list[Mark]:
    """The marks of a sentence, the longest at each token, in the order of the text."""
    return scene.once(("marks",), lambda: _marks(scene))


def _marks(scene: Scene) -> list[Mark]:
    taken, firsts = scene.book.taken, scene.firsts()
    if taken.starts.isdisjoint(firsts):
        return []
    found: list[Mark] = []
    after = 0
    for k, token in enumerate(scene.tokens):
        if k < after or token.low not in taken.begins:
            continue
        goes_on = k + 1 < len(firsts) and f"{token.low} {firsts[k + 1].removeprefix(PARTICLE)}" in taken.begins
        if (goes_on or token.low in taken.says) and (here := _at(scene, k)):
            found += here
            after = here[0].last + 1
    return found


def _at(scene: Scene, k: int) -> list[Mark]:
    """What the longest words of the file that begin at a token tell."""
    tokens, says, begins = scene.tokens, scene.book.taken.says, scene.book.taken.begins
    said = ""
    found: list[Mark] = []
    for last in range(k, min(k + MOST, len(tokens))):
        if tokens[last].kind in ("stop", "comma") or (last > k and tokens[last].kind in ("number", "amount")):
            break
        low = tokens[last].low.removeprefix(PARTICLE)
        said = f"{said} {low}" if said else low
        if said not in begins:
            break
        if said in says:
            found = [Mark(k, last, slot, value) for slot, value in says[said]]
    return found


def of_slot(scene: Scene, slot: str) -> list[Mark]:
    """The marks of one slot."""
    return [mark for mark in marks(scene) if mark.slot == slot]


def nearest(i: int, told: list[Mark], numbers: list[int], scene: Scene) -> Mark | None:
    """Which of the marks of one slot is of the number at token i.

    Where each number has its own behind it (`12.1 at rest, 9.0 cranking`) that one; else the last one before it; else
    one behind it, in its clause: `1.9, 1.8, 1.9, no load`.
    """
    told = [m for m in told if not m.first <= i <= m.last]
    behind = [m for m in told if m.first > i]
    before = [m for m in told if m.last < i]
    if behind and _is_own(i, behind[0], numbers, before, scene):
        return behind[0]
    if before:
        return before[-1]
    if not behind or _is_of_next(i, behind[0], numbers, scene):
        return None
    near = behind[0].first <= i + LATE and not any(i < n < behind[0].first for n in numbers)
    return behind[0] if near or behind[0].first in scene.clause(i) else None


def _is_own(i: int, mark: Mark, numbers: list[int], before: list[Mark], scene: Scene) -> bool:
    """Whether the mark stands right behind the number, no comma, number or stop between."""
    if mark.first > i + CLOSE or any(i < n < mark.first for n in numbers):
        return False
    if any(scene.tokens[k].kind in ("comma", "stop") for k in range(i + 1, mark.first)):
        return False
    return not before or mark.last + 1 not in numbers


def _is_of_next(i: int, mark: Mark, numbers: list[int], scene: Scene) -> bool:
    """`120, wet 138`: behind a comma and right before another number, the mark is of that one."""
    later = next((n for n in numbers if mark.last < n <= mark.last + AHEAD), None)
    if later is None or any(t.kind in ("comma", "stop") for t in scene.tokens[mark.last + 1 : later]):
        return False
    return any(t.kind in ("comma", "stop") for t in scene.tokens[i + 1 : mark.first])


LATE = 6
AHEAD = 3
"Tokens before a number within which a mark leads to it."
CLOSE = 4
"Tokens behind a number within which a mark is its own."
