"""From one figure to another: of typed `gap .012 -> .018`, of `end float .020 was, now .004` the first was found, and
the second is what a hand set, where a hand sets it; else it is what was measured afterwards.
"""

from __future__ import annotations

from itertools import pairwise

from worklog_tui.extract.scene import Draft, Scene
from worklog_tui.extract.tokens import ARROW

ALWAYS = frozenset({"gap", "turns", "angle", "torque", "ratio"})
"What only a hand changes (judgement): a gap, an adjuster, the timing."
ADJUSTABLE = frozenset({"length", "speed", "pressure"})
APART = 8
"Tokens at most from the one figure to the other."
BY_ITSELF = frozenset(
    "in after over under when per with hot cold warm wet dry load loaded overnight cranking later worn since".split()
)
"Words behind the second figure that tell why it is another one, or when."


def refine(drafts: list[Draft], scene: Scene) -> list[Draft]:
    """The readings; of two with an arrow between, or with `was` and `now`, the first as measured, the second as set."""
    told = sorted((d for d in drafts if d.kind == "reading"), key=lambda d: d.main)
    for first, second in pairwise(told):
        if second.main - first.main > APART or not _alike(first, second) or not _changes(first, second, scene):
            continue
        by_hand = _by_hand(first, second, scene)
        if by_hand:
            _as(first, "measured")
        _as(second, "set" if by_hand else "measured")
    return drafts


def _as(draft: Draft, role: str) -> None:
    if draft.fields["role"] in ("measured", "set", "planned") and draft.fields["role"] != role:
        draft.fields["role"] = role
        draft.trail.append(f"{role}: from one figure to another")


def _alike(first: Draft, second: Draft) -> bool:
    return bool(first.fields["quantity"] == second.fields["quantity"] and first.fields["unit"] == second.fields["unit"])


def _changes(first: Draft, second: Draft, scene: Scene) -> bool:
    tokens = scene.tokens
    between = tokens[first.main + 1 : second.main]
    if any(t.kind == "stop" or t.sense("book") for t in between):
        return False
    if any(t.low == ARROW for t in between):
        return scene.typed
    now = any(t.low in ("now", "now at", "is now", "now its") for t in between[-2:])
    was = any(t.low == "was" for t in (*tokens[max(0, first.main - 2) : first.main], *between[:1]))
    return now and (was or scene.typed)


def _by_hand(first: Draft, second: Draft, scene: Scene) -> bool:
    quantity = first.fields["quantity"]
    after = scene.tokens[second.main + 1 : second.main + 4]
    behind = next((t for t in after if t.kind != "comma"), None)
    if behind is not None and behind.kind != "stop" and behind.low.partition(" ")[0] in BY_ITSELF:
        return False
    if quantity in ALWAYS:
        return True
    named = {w for d in (first, second) for w in str(d.fields["subject"]).lower().split()}
    said = {w for t in scene.tokens[max(0, first.main - 4) : second.main + 4] for w in t.low.split()}
    return quantity in ADJUSTABLE and bool((named | said) & scene.book.lists["brought_by_hand"])
