"""The same work of the same thing told twice in a sentence is one, in its surer telling."""

from __future__ import annotations

from worklog_tui.extract.scene import Draft, Scene


def refine(drafts: list[Draft], scene: Scene) -> list[Draft]:
    """The drafts without second tellings of work."""
    best: dict[tuple[str, str], Draft] = {}
    for draft in drafts:
        if draft.kind == "work" and draft.thing is not None:
            key = (_family(draft.fields["action"]), draft.thing.words.lower())
            if key not in best or draft.rank > best[key].rank:
                best[key] = draft
    kept = {id(d) for d in best.values()}
    return [d for d in drafts if d.kind != "work" or id(d) in kept]


def _family(action: str) -> str:
    """Fitting and replacing are one telling: `put a new belt on`."""
    return "fit" if action == "replace" else action
