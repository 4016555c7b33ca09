"""Suspects: what could be the cause of the trouble, what is ruled out, and what it was."""

from __future__ import annotations

from worklog_tui.extract.finders.accused import accused, may_stand, told_bad_here
from worklog_tui.extract.finders.pointed import pointed_at
from worklog_tui.extract.matching import Match
from worklog_tui.extract.scene import Draft, Scene
from worklog_tui.extract.things.named_as import spoken

ONLY_NAMED = 0.14
"`Oiler?` asks how it is, not whether it is to blame."
YOURS = frozenset({"your", "yr", "my", "our"})
STUFF = frozenset({"fluid", "material"})


def draft(match: Match, scene: Scene) -> Draft | None:
    """The suspect of a match: a cause of the vocabulary, a part, or a part with its state."""
    gives = match.rule.gives
    if gives.get("names"):
        return accused(match, scene)
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
    if gives.get("asks") and cause is None and "bad" not in match.slots and not told_bad_here(scene):
        made.confidence -= ONLY_NAMED
    if gives.get("asks") and token.sense("trouble") and " " not in token.low:
        return None  # `chatter?` asks whether there is any
    if token.sense("trouble") and first and scene.tokens[first - 1].low in YOURS and thing is None:
        return None  # `that'll be your chatter` names what is heard, not why
    several = thing is not None and thing.also and " or " in token.low and thing.kind not in STUFF
    if gives.get("either") and not several:  # `oil or grease?` asks what to use
        return None
    if gives.get("denies") and not _denied(match, scene):
        return None
    if first == last and not gives.get("any") and not may_stand(str(gives["standing"]), thing):
        return None
    name = cause.name if cause else (thing.name if thing else "")
    if gives.get("again") and name not in scene.context.suspects:
        return None
    standing = "suspected" if gives["standing"] == "confirmed" and _or_another(scene, last) else gives["standing"]
    made.fields = {"cause": spoken(scene.said(first, last)), "standing": standing, "name": name}
    return made


def _or_another(scene: Scene, last: int) -> bool:
    """`So that's rings, or it's been stood a year`: where another cause follows, nothing is settled yet."""
    after = [t.low for t in scene.tokens[last + 1 : last + 3] if t.kind != "comma"]
    return after[:1] == ["or"]


def _talked_of(match: Match, scene: Scene) -> Draft | None:
    """`there's your problem`: what is shown by it."""
    gives = match.rule.gives
    made = Draft("suspect", match.first, match.last - 1, match.rule, {}, confidence=match.rule.confidence,
                 first_used=match.first, last_used=match.last - 1)  # fmt: skip
    shown = pointed_at(match, scene)
    if shown is None or (gives.get("near") and shown.filled):
        return None
    made.thing, made.thing_at = shown.thing, shown.at
    made.confidence -= shown.doubt
    if shown.filled:
        made.filled.add("cause")
    made.fields = {"cause": shown.words, "standing": gives["standing"], "name": shown.thing.name if shown.thing else ""}
    return made


def _denied(match: Match, scene: Scene) -> bool:
    """Whether the words of the match hold a denial."""
    return any(t.sense("not") for t in scene.tokens[match.first : match.last])
