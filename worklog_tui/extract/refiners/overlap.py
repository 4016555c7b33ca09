"""Of several readings of the same words, the best one stays: the surer rule, the part said, the longer match."""

from __future__ import annotations

from worklog_tui.extract.scene import Draft, Scene


def refine(drafts: list[Draft], scene: Scene) -> list[Draft]:
    """At most one draft of a kind for each main token, in the order of the text."""
    best: dict[tuple[str, int, str], Draft] = {}
    for draft in drafts:
        many = str(draft.fields.get("part", ""))
        key = (draft.kind, draft.main, many)
        if key not in best or draft.rank > best[key].rank:
            best[key] = draft
    for draft in drafts:
        if draft not in best.values():
            scene.dropped.append(f"{scene.said(draft.main, draft.last)}: {draft.rule.id} gives way to a better reading")
    kept = sorted(best.values(), key=lambda d: (d.main, d.kind))
    return [d for d in kept if not any(_inside(d, other) for other in kept)]


def _inside(draft: Draft, other: Draft) -> bool:
    """Whether a suspect, follow-up or finding lies within a longer and surer one of its kind."""
    return (
        draft is not other and draft.kind == other.kind and draft.kind in ("suspect", "follow_up", "finding")
        and other.main <= draft.main and draft.last <= other.last and other.rank > draft.rank
    )  # fmt: skip
