"""A number that names a thing, or that is part of a firing order, measures nothing."""

from __future__ import annotations

from worklog_tui.extract.scene import Draft, Scene


def refine(drafts: list[Draft], scene: Scene) -> list[Draft]:
    """The drafts without the readings of such numbers."""
    named = {
        k
        for d in drafts
        if d.kind == "number" or (d.kind == "trait" and d.fields["trait"] == "firing order")
        for k in range(d.main, d.last + 1)
    }
    kept = []
    for draft in drafts:
        if draft.kind == "reading" and draft.main in named:
            scene.dropped.append(f"{scene.said(draft.main, draft.last)}: a name, no measure")
        else:
            kept.append(draft)
    return kept
