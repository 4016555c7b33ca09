"""States said in one breath of one thing are one finding: `cracked and perished`, `clean, no scoring`."""

from __future__ import annotations

from worklog_tui.extract.scene import Draft, Scene

REACH = 4


def refine(drafts: list[Draft], scene: Scene) -> list[Draft]:
    """Findings with neighbours of the same thing and verdict taken in."""
    kept: list[Draft] = []
    last: Draft | None = None
    for draft in drafts:
        if draft.kind != "finding":
            kept.append(draft)
            continue
        if last is not None and _one_breath(last, draft, scene):
            last.last = draft.last
            last.last_used = max(last.last_used, draft.last_used)
            last.trail.append(f"with {scene.said(draft.main, draft.last)}")
            continue
        kept.append(draft)
        last = draft
    return kept


def _one_breath(first: Draft, second: Draft, scene: Scene) -> bool:
    between = scene.tokens[first.last + 1 : second.main]
    return (
        first.fields["verdict"] == second.fields["verdict"]
        and first.thing is not None and second.thing is not None and first.thing.words == second.thing.words
        and scene.tokens[first.last].clause == scene.tokens[second.main].clause
        and len(between) <= REACH
        and not any(t.kind in ("stop", "thing", "amount", "number") or t.sense("did") for t in between)
    )  # fmt: skip
