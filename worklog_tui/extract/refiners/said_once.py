"""A suspect that has the same standing as a moment ago is told again, not anew."""

from __future__ import annotations

from worklog_tui.extract.remember import known_as
from worklog_tui.extract.scene import Draft, Scene
from worklog_tui.model import Suspect

NOTES = 1
"Notes back in which the same was said."


def refine(drafts: list[Draft], scene: Scene) -> list[Draft]:
    """The drafts without suspects that this sentence, this note or the one before told so already."""
    if all(draft.kind != "suspect" for draft in drafts):
        return drafts
    before = set(scene.context.notes[:-NOTES])
    told = {
        (fact.name or fact.cause.lower(), fact.standing)
        for fact in scene.context.recent
        if isinstance(fact, Suspect) and fact.main.note not in before
    }
    kept: list[Draft] = []
    for draft in sorted(drafts, key=lambda d: -d.confidence):
        if draft.kind == "suspect" and draft.confidence >= 0.5:
            key = (known_as(draft), str(draft.fields["standing"]))
            if key in told:
                scene.dropped.append(f"{draft.fields['cause']}: {draft.rule.id} let go, told already")
                continue
            told.add(key)
        kept.append(draft)
    same = {id(d) for d in kept}
    return [d for d in drafts if id(d) in same]
