"""A state that follows another one, with no thing named between, is said of the same thing: `the radiator is packed
solid, you can't see daylight`.
"""

from __future__ import annotations

from worklog_tui.extract.finders.findings import senses_for
from worklog_tui.extract.scene import Draft, Scene


def refine(drafts: list[Draft], scene: Scene) -> list[Draft]:
    """The drafts, in place: findings whose thing was filled in take that of the finding before them."""
    last: Draft | None = None
    for draft in drafts:
        if draft.kind != "finding":
            continue
        if last is not None and _follows(last, draft, scene):
            draft.thing, draft.thing_at = last.thing, last.thing_at
            draft.trail.append("of the same thing as the state before it")
        last = draft
    return drafts


def _follows(first: Draft, second: Draft, scene: Scene) -> bool:
    if "part" not in second.filled or first.thing is None or first.thing.kind == "machine":
        return False
    between = scene.tokens[first.last + 1 : second.main]
    older = second.thing_at is None or (first.thing_at is not None and second.thing_at < first.thing_at)
    return (
        older
        and not any(t.kind in ("thing", "which") for t in between)
        and bool(senses_for(scene.tokens[second.main], first.thing))
    )
