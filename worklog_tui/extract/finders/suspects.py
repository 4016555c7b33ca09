"""Suspects: what could be the cause of the trouble, what is ruled out, and what it was."""

from __future__ import annotations

from worklog_tui.extract.matching import Match
from worklog_tui.extract.scene import Draft, Scene
from worklog_tui.extract.subjects import as_thing, earlier, nearest, remembered
from worklog_tui.extract.things import spoken
from worklog_tui.extract.tokens import Thing
from worklog_tui.model import Finding

NO_PART = frozenset({"tool", "machine"})
NEVER_BLAMED = frozenset({"fluid", "machine", "tool", "material"})


def draft(match: Match, scene: Scene) -> Draft | None:
    """The suspect of a match: a cause of the vocabulary, a part, or a part with its state."""
    gives = match.rule.gives
    if not gives["cause"]:
        return _talked_of(match, scene)
    slots = [match.slots[s.strip("<>")] for s in str(gives["cause"]).split() if s.strip("<>") in match.slots]
    if not slots:
        return None
    first, last = min(slots), max(slots)
    made = Draft("suspect", first, last, match.rule, {}, confidence=match.rule.confidence,
                 first_used=match.first, last_used=match.last - 1)  # fmt: skip
    token = scene.tokens[first]
    cause = token.sense("cause")
    thing = next((scene.tokens[k].thing for k in (first, last) if scene.tokens[k].thing), None)
    made.thing = thing
    if gives.get("asks") and cause is None and "bad" not in match.slots:
        made.confidence -= ONLY_NAMED  # `oiler?` asks how it is, not whether it is to blame
    if gives.get("either") and not (thing is not None and thing.also and " or " in token.low):
        return None
    if gives.get("denies") and not _denied(match, scene):
        return None
    if first == last and not gives.get("any") and not _blamed(str(gives["standing"]), thing):
        return None
    name = cause.name if cause else (thing.name if thing else "")
    if gives.get("again") and name not in scene.context.suspects:
        return None
    made.fields = {"cause": spoken(scene.said(first, last)), "standing": gives["standing"], "name": name}
    return made


def _talked_of(match: Match, scene: Scene) -> Draft | None:
    """`there's your problem`: the thing of the sentence, else what was last named."""
    made = Draft("suspect", match.first, match.last - 1, match.rule, {}, confidence=match.rule.confidence,
                 first_used=match.first, last_used=match.last - 1)  # fmt: skip
    k = earlier(scene, match.first, _can_fail)
    clears = match.rule.gives["standing"] == "ruled out"
    if k is None:
        k = nearest(scene, match.first, _can_fail)
        back = clears or match.rule.gives.get("before")
        k = None if back and k is not None and k > match.first else k
    if k is not None and match.first <= k < match.last:
        k = None  # what was lost is not the cause
    if k is not None:
        made.thing_at, made.thing = k, scene.tokens[k].thing
    else:
        made.filled.add("cause")
        made.confidence -= POINTS_AHEAD if _points_ahead(match, scene) else 0
        made.confidence -= FROM_AFAR if not clears and last_found(scene) is None else 0
        found = None if clears else last_found(scene)
        made.thing = found or remembered(scene, _can_fail, fresh=1 + clears)
    if made.thing is None or (match.rule.gives.get("near") and made.filled):
        return None
    made.fields = {"cause": made.thing.words, "standing": match.rule.gives["standing"], "name": made.thing.name}
    return made


ONLY_NAMED = 0.14
FROM_AFAR = 0.35
"Nothing was found bad in the last words: what is meant is a guess."
POINTS_AHEAD = 0.15
"`There's the culprit.` with nothing named before it in its sentence shows what comes."


def _points_ahead(match: Match, scene: Scene) -> bool:
    """Whether the words show what is told next."""
    said = scene.tokens[match.first].low
    return said.startswith("here") or (
        said.startswith("there") and (match.last >= len(scene.tokens) or scene.tokens[match.last].kind == "stop")
    )


def _denied(match: Match, scene: Scene) -> bool:
    """Whether the words of the match hold a denial."""
    return any(t.sense("not") for t in scene.tokens[match.first : match.last])


def _blamed(standing: str, thing: Thing | None) -> bool:
    """Whether a bare thing may have that standing: a fluid is not ruled out, and `spark?` asks for a test."""
    if thing is None:
        return True
    return thing.kind not in (NEVER_BLAMED if standing == "ruled out" else NO_PART)


def _can_fail(thing: Thing) -> bool:
    return thing.kind not in ("tool", "machine", "material")


def last_found(scene: Scene) -> Thing | None:
    """The part that was last found bad, in this note or the one before."""
    near = scene.context.notes[-2:]
    for fact in reversed(scene.context.recent):
        if isinstance(fact, Finding) and fact.verdict == "bad" and fact.main.note in near and fact.name:
            subject = next((s for s in scene.context.things if s.name == fact.name), None)
            return as_thing(subject) if subject is not None else Thing(fact.part, fact.name, "part", own=fact.part)
    return None
