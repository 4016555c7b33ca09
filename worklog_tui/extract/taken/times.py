"""When it was taken: `from 90 it fell to 70 in five minutes`, `after the half hour`, `ten minutes, 60 degrees`."""

from __future__ import annotations

from worklog_tui.extract.scene import Draft, Scene

DRIFTING = frozenset({"pressure", "temperature", "length", "leakage"})
"Quantities that change while one waits."
REACH = 14
WAITED = "waited"
"The slot of a time that was waited before what is read next."


def is_time(k: int, scene: Scene) -> bool:
    """Whether the token is a length of time."""
    amount = scene.tokens[k].amount
    return amount is not None and "duration" in amount.quantities


def when(draft: Draft, drafts: list[Draft], scene: Scene) -> list[str]:
    """After how long, or at the start of a wait: from the times told in the clause, else before in the sentence."""
    i = draft.main
    if is_time(i, scene):
        return []
    if draft.fields["quantity"] in DRIFTING and _begins_a_wait(draft, drafts, scene):
        return ["at the start"]
    for k in scene.clause(i):
        if k != i and k and is_time(k, scene) and (found := _told_by(k, scene)):
            if draft.fields["quantity"] == "volume" and scene.tokens[k - 1].low in ("in", "about"):
                return [f"in {scene.said(k, k)}"]
            if draft.fields["quantity"] in DRIFTING or found[0].startswith(scene.tokens[k - 1].low):
                return found
    return _since(draft, scene) if draft.fields["role"] == "measured" else []


def _told_by(k: int, scene: Scene) -> list[str]:
    before = scene.tokens[k - 1].low
    after = scene.tokens[k + 1].low if k + 1 < len(scene.tokens) else ""
    if before in ("about", "around", "maybe", "the") and k > 1:
        before = scene.tokens[k - 2].low
    if before in ("after", "aft", "at"):
        return [f"{'at' if before == 'at' else 'after'} {scene.said(k, k).lower()}"]
    if after in ("later", "on") or before == "in":
        return [f"after {scene.said(k, k).lower()}"]
    return []


def _begins_a_wait(draft: Draft, drafts: list[Draft], scene: Scene) -> bool:
    """Of two figures of a wait the first is the one at its start: `10 -> 4 in 2 min`, `12, 5 min later 12`."""
    i, quantity = draft.main, draft.fields["quantity"]
    row = [d for d in drafts if d.kind == "reading" and d.fields["quantity"] == quantity]
    after = [d.main for d in row if i < d.main <= i + NEAR]
    before = [d.main for d in row if d.main < i]
    if before or len(after) != 1 or draft.fields["role"] == "specified":
        return False
    times = [k for k in range(i + 1, min(after[0] + NEAR, len(scene.tokens))) if is_time(k, scene)]
    stops = [k for k in range(i, max(times[:1] or [i])) if scene.tokens[k].kind == "stop"]
    return bool(times) and not stops and any(t.startswith("after") for t in _told_by(times[0], scene))


NEAR = 6


def _since(draft: Draft, scene: Scene) -> list[str]:
    """`Ten minutes, 138 degrees`, `that's the six minutes and it's on five and a half`: how long it took."""
    if draft.fields["quantity"] not in DRIFTING:
        return []
    for k in range(draft.main - 1, max(draft.main - REACH, 0) - 1, -1):
        if scene.tokens[k].kind == "stop":
            return []
        if is_time(k, scene):
            return [f"after {scene.said(k, k).lower()}"]
    return []
