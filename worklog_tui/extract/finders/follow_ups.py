"""Follow-ups: what must be come back to, and why."""

from __future__ import annotations

from worklog_tui.extract.matching import Match
from worklog_tui.extract.scene import Draft, Scene
from worklog_tui.extract.subjects import earlier, nearest, remembered
from worklog_tui.extract.tokens import Thing

LONGEST = 9


def draft(match: Match, scene: Scene) -> Draft | None:
    """The follow-up of a match: what it is about, in the speaker's words, and the reason."""
    gives = match.rule.gives
    topic = str(gives["topic"])
    slots = [match.slots[s.strip("<>")] for s in topic.split() if s.strip("<>") in match.slots]
    made = Draft("follow_up", match.first, match.last - 1, match.rule, {}, confidence=match.rule.confidence,
                 first_used=match.first, last_used=match.last - 1)  # fmt: skip
    if topic == "clause":
        words = _rest(match, scene, made)
    elif slots:
        made.main, made.last = min(slots), max(slots)
        made.thing = next((scene.tokens[k].thing for k in slots if scene.tokens[k].thing), None)
        words = scene.said(made.main, made.last)
    else:
        thing = _thing_talked_of(match, scene, made)
        made.thing, words = thing, thing.words if thing else ""
    if not words:
        return None
    made.fields = {"topic": words, "reason": gives["reason"], "name": made.thing.name if made.thing else ""}
    return made


def _rest(match: Match, scene: Scene, made: Draft) -> str:
    """The words after the match up to the end of the sentence, at most a few."""
    first = match.slots.get("from", match.last)
    last = first
    while last < len(scene.tokens) and scene.tokens[last].kind != "stop" and last - first < LONGEST:
        last += 1
    if last == first:
        return ""
    made.main, made.last = first, last - 1
    made.thing = next((scene.tokens[k].thing for k in range(first, last) if scene.tokens[k].thing), None)
    return scene.said(first, last - 1)


def _thing_talked_of(match: Match, scene: Scene, made: Draft) -> Thing | None:
    k = nearest(scene, match.first, lambda t: t.kind != "tool")
    if k is None:
        k = earlier(scene, match.first, lambda t: t.kind not in ("tool", "quality", "machine"))
    if k is not None:
        made.thing_at = k
        return scene.tokens[k].thing
    made.filled.add("topic")
    return remembered(scene)
