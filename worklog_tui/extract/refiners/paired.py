"""What one of two figures of the same quantity tells of the other: one is wanted, the other was found."""

from __future__ import annotations

from itertools import pairwise

from worklog_tui.extract.measured.counted import IT_IS
from worklog_tui.extract.scene import Draft, Scene
from worklog_tui.model import Reading

NOTES = 4
"Notes back in which what the plate allows was measured."
APART = 9
"Tokens at most between two figures that are set beside each other."
BESIDE = frozenset("against|versus|vs|instead of|rather than|compared to|compared with|in place of".split("|"))
"Words behind which the figure stands that it should be."
FOUND = frozenset("measured measures reads read had has got have found get make getting".split())
"Words with which a person tells what he found, behind what it is said to be."
CHANGED = frozenset(
    "now then still cold hot warm wet dry idle idling load loaded running cranking at under with after down up".split()
)
"What makes the second figure one taken otherwise, or at another time."


def refine(drafts: list[Draft], scene: Scene) -> list[Draft]:
    """Measured figures that are set beside another one which was found, as what it should be."""
    told = sorted((d for d in drafts if d.kind == "reading"), key=lambda d: d.main)
    for first, second in pairwise(told):
        if first.fields["quantity"] != second.fields["quantity"] or second.main - first.main > APART:
            continue
        if first.fields["role"] == second.fields["role"] == "measured":
            if _is_and_found(first, second, scene):
                _wanted(first)
            elif _set_beside(second, scene):
                _wanted(second)
    for draft in told:
        of_plate = draft.fields["role"] == "rated" and draft.fields["quantity"] == "pressure"
        if of_plate and _was_taken(draft, told, scene):
            _wanted(draft)
    return drafts


def _wanted(draft: Draft) -> None:
    draft.fields["role"] = "specified"
    draft.trail.append("specified: set beside what was found")


def _is_and_found(first: Draft, second: Draft, scene: Scene) -> bool:
    """`The gap is fifteen and it's fourteen`, `ten is the level, and it measured twelve`: of what a thing is said to be
    and what `it is` behind that, the second was found.
    """
    tokens = scene.tokens
    before, between = tokens[scene.clause(first.main).start : first.main], tokens[first.main + 1 : second.main]
    if not any(t.sense("copula") for t in before[-2:]) or any(t.low in IT_IS or t.low in FOUND for t in before):
        return False
    said = {w for t in between for w in t.low.split()}
    if not said & (IT_IS | FOUND) or said & CHANGED or not any(t.low in ("and", "but") for t in between):
        return False
    if any(t.thing is not None or t.kind in ("which", "number", "amount") for t in between[2:]):
        return False
    behind = tokens[second.main + 1] if second.main + 1 < len(tokens) else None
    return behind is None or behind.kind in ("stop", "comma") or bool(behind.sense("good", "bad", "break"))


def _set_beside(second: Draft, scene: Scene) -> bool:
    """`Eleven amps, against six`, `seventy instead of ninety`."""
    before = scene.tokens[max(0, second.main - 3) : second.main]
    if any(t.low in ("it", "was", "were") for t in before[-2:]):
        return False
    return any(t.low in BESIDE for t in before)


def _was_taken(draft: Draft, told: list[Draft], scene: Scene) -> bool:
    """Whether the pressure that the plate gives was measured just before: so it is what it should come to."""
    if any(d.main < draft.main and d.fields["quantity"] == "pressure" and d.fields["role"] == "measured" for d in told):
        return True
    old = set(scene.context.notes[:-NOTES])
    last = next((f for f in reversed(scene.context.recent) if isinstance(f, Reading)), None)
    return last is not None and last.quantity == "pressure" and last.role == "measured" and last.main.note not in old
