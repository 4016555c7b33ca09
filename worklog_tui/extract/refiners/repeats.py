"""The same work of the same thing, or the same need of it, told twice in a sentence is one, in its surer telling."""

from __future__ import annotations

from worklog_tui.extract.scene import Draft, Scene


def refine(drafts: list[Draft], scene: Scene) -> list[Draft]:
    """The drafts without second tellings."""
    best: dict[tuple[str, str], Draft] = {}
    for draft in drafts:
        key = _key(draft)
        if key is not None and (key not in best or draft.rank > best[key].rank):
            best[key] = draft
    kept = {id(d) for d in best.values()}
    return [d for d in drafts if _key(d) is None or id(d) in kept]


def _key(draft: Draft) -> tuple[str, str] | None:
    """What makes two tellings one; None for what is never one."""
    if draft.thing is None:
        return None
    if draft.kind == "work":
        return _family(draft.fields["action"]), draft.thing.words.lower()
    if draft.kind == "follow_up":
        return str(draft.fields["reason"]), draft.thing.words.lower()
    return None


def _family(action: str) -> str:
    """Fitting and replacing are one telling: `put a new belt on`."""
    return "fit" if action == "replace" else action
