"""The same work of the same thing, or the same need of it, told twice in a sentence is one, in its surer telling; so
is what the sentences before have told: `pull. And pull. There!` A deed going on is no state besides.
"""

from __future__ import annotations

from worklog_tui.extract.finish import tidy
from worklog_tui.extract.scene import Draft, Scene
from worklog_tui.model import Work

ONE_TRY = "start"
"A try of the engine goes on from one note to the next."


def refine(drafts: list[Draft], scene: Scene) -> list[Draft]:
    """The drafts without second tellings."""
    best: dict[tuple[str, str], Draft] = {}
    for draft in drafts:
        key = _key(draft)
        if key is not None and (key not in best or draft.rank > best[key].rank):
            best[key] = draft
    kept = {id(d) for d in best.values() if not _just_told(d, scene)}
    owed = [d for d in drafts if d.kind == "follow_up" and d.fields["reason"] != "fault"]
    by_means = {d.main for d in drafts if d.kind == "work" and d.fields.get("used")}
    told = [d for d in drafts if (_key(d) is None or id(d) in kept) and not _going_on(d, by_means, scene)]
    return [d for d in told if not _only_left(d, owed)]


def _only_left(draft: Draft, owed: list[Draft]) -> bool:
    """Whether it says only that a thing is left as it is, of which the sentence has told before what it needs."""
    if draft.kind != "follow_up" or draft.thing is None or draft.fields["reason"] != "fault":
        return False
    words = draft.thing.words.lower()
    return any(d.main < draft.main and d.thing is not None and d.thing.words.lower() == words for d in owed)


def _going_on(draft: Draft, by_means: set[int], scene: Scene) -> bool:
    """Whether a finding is read from the word of a deed that goes on: `the belt is soaking in degreaser`."""
    if draft.kind != "finding" or draft.main not in by_means or not scene.tokens[draft.main].sense("doing"):
        return False
    scene.dropped.append(f"{scene.said(draft.main, draft.last)}: it is being done, and was not found so")
    return True


def _just_told(draft: Draft, scene: Scene) -> bool:
    """Whether this note has told the same work of this thing already, a try of the engine also the note before."""
    if draft.kind != "work" or draft.thing is None:
        return False
    action, words = draft.fields["action"], tidy(draft.thing.words).lower()
    tail, notes = scene.context.tail, scene.context.notes
    older = set(notes[:-1]) if action == ONE_TRY else set(notes)
    told = any(
        isinstance(f, Work)
        and f.main.note not in older
        and not (tail is not None and f.main.note == tail.note and f.main.start >= tail.offset)
        and _family(f.action) == _family(action)
        and f.part.lower() == words
        for f in scene.context.recent
    )
    if told:
        scene.dropped.append(f"{scene.said(draft.main, draft.last)}: says again what was done")
    return told


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
