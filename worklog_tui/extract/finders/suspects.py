"""Suspects: what could be the cause of the trouble, what is ruled out, and what it was."""

from __future__ import annotations

from worklog_tui.extract.finders import blamed
from worklog_tui.extract.finders.blamed import Named
from worklog_tui.extract.finders.pointed import pointed_at
from worklog_tui.extract.matching import Match
from worklog_tui.extract.scene import Draft, Scene
from worklog_tui.extract.things import spoken
from worklog_tui.extract.tokens import Thing, Token
from worklog_tui.model import Finding

NO_PART = frozenset({"tool", "machine"})
NEVER_BLAMED = frozenset({"fluid", "machine", "tool", "material"})
ONLY_NAMED = 0.14
SHORT = 3
"Tokens of the longest name that is only asked."
SEEPS = frozenset({"air", "water"})
"Fluids that are to blame by being there."


def draft(match: Match, scene: Scene) -> Draft | None:
    """The suspect of a match: a cause of the vocabulary, a part, or a part with its state."""
    gives = match.rule.gives
    if gives.get("names"):
        return _named(match, scene)
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
        made.confidence -= ONLY_NAMED  # `oiler?` asks how it is, not whether it is to blame
    if gives.get("asks") and token.sense("trouble") and " " not in token.low:
        return None  # `chatter?` asks whether there is any
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


def _named(found: Match, scene: Scene) -> Draft | None:
    """The cause named in any words next to what accuses or clears it; None where it names none."""
    gives = found.rule.gives
    any_words = bool(gives.get("any_words")) or (scene.typed and bool(gives.get("typed")))
    match gives["names"]:
        case "next":
            named = blamed.after(scene, found.last, any_words)
        case "last":
            named = blamed.before(scene, found.first)
        case _:
            named = blamed.before(scene, found.last - 1)
    if named is None or not _may_be(named, found, scene):
        return None
    if gives.get("again") and not suspected_before(scene, named):
        return None
    made = Draft("suspect", named.first, named.last, found.rule, {}, thing=named.thing,
                 confidence=found.rule.confidence, first_used=min(found.first, named.first),
                 last_used=max(found.last - 1, named.last))  # fmt: skip
    made.fields = {"cause": named.words, "standing": gives["standing"], "name": named.name}
    return made


def _may_be(named: Named, match: Match, scene: Scene) -> bool:
    """Whether what is named may be blamed so, as the rule asks: known, at the end of its thought, told to be bad."""
    gives, standing = match.rule.gives, str(match.rule.gives["standing"])
    inside = scene.tokens[named.first : named.last + 1]
    behind = scene.tokens[named.last + 1].low if named.last + 1 < len(scene.tokens) else ""
    if (gives.get("sure") and not named.known) or (gives.get("told") and not _told_bad(inside)):
        return False
    if (gives.get("queried") and scene.tokens[-1].low != "?") or (gives.get("follow") and behind not in gives["follow"]):
        return False
    if gives.get("cleared") and not _may_be_cleared(named, match, scene):
        return False
    if gives.get("starts") and not (scene.typed and _thought_starts(scene, named) and told_bad_here(scene)):
        return False
    if gives.get("after_bad") and not _explains(named, match, scene):
        return False
    if gives.get("ends") and not _thought_ends(scene, named.last + 1):
        return False
    if gives.get("any") or named.first != named.last:
        return True
    return _blamed(standing, named.thing)


def _may_be_cleared(named: Named, match: Match, scene: Scene) -> bool:
    """Whether it may be ruled out: what was suspected, or a part; a fluid or a new word only by `it's not the …`."""
    if suspected_before(scene, named):
        return True
    if named.thing is not None and named.thing.kind not in NEVER_BLAMED:
        return True
    return scene.tokens[named.first - 1].sense("article") is not None


def _told_bad(tokens: list[Token]) -> bool:
    """Whether a part is named and said to be bad."""
    return any(t.thing is not None and t.thing.kind != "quality" for t in tokens) and any(t.sense("bad") for t in tokens)


def _thought_starts(scene: Scene, named: Named) -> bool:
    """Whether a short name opens its thought: `belt?`, `jumps: claw?`."""
    opens = named.first == 0 or scene.tokens[named.first - 1].kind in ("stop", "comma")
    return opens and named.last - named.first < SHORT and not scene.tokens[named.first].sense("trouble")


def told_bad_here(scene: Scene) -> bool:
    """Whether this note told something bad before this sentence."""
    return any(
        isinstance(f, Finding) and f.verdict == "bad" and f.main.note not in scene.context.notes
        for f in scene.context.recent
    )


def _explains(named: Named, match: Match, scene: Scene) -> bool:
    """Whether it names a cause, or a state of a part, or air or water, right after something bad was told."""
    inside = scene.tokens[named.first : named.last + 1]
    causes = any(t.sense("cause") for t in inside) or named.name in SEEPS or _told_bad(inside)
    before = scene.tokens[: match.first]
    return causes and (any(t.sense("bad", "trouble") for t in before) or told_bad_here(scene))


def _thought_ends(scene: Scene, k: int) -> bool:
    if k >= len(scene.tokens) or scene.tokens[k].kind in ("stop", "comma"):
        return True
    return scene.tokens[k].clause != scene.tokens[k - 1].clause or scene.tokens[k].low in ("and", "then", "or", "not")


def suspected_before(scene: Scene, named: Named) -> bool:
    """Whether what is named was suspected and not yet cleared."""
    key = named.name or named.words.lower()
    return any(key == other or key in other or other in key for other in scene.context.suspects)


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


def _blamed(standing: str, thing: Thing | None) -> bool:
    """Whether a bare thing may have that standing: a fluid is not ruled out, and `spark?` asks for a test."""
    if thing is None:
        return True
    return thing.kind not in (NEVER_BLAMED if standing == "ruled out" else NO_PART)
