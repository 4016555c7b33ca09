"""What is accused or cleared in any words, and whether it may be: each flag of a rule's `gives` is one condition here.

`names` says where the name stands: `next` to the words of the rule, right before them (`last`), within them
(`inside`), or before their last word (`end`).
"""

from __future__ import annotations

from worklog_tui.extract.finders import blamed
from worklog_tui.extract.finders.blamed import Named
from worklog_tui.extract.matching import Match
from worklog_tui.extract.scene import Draft, Scene
from worklog_tui.extract.tokens import Thing, Token
from worklog_tui.model import Finding, Suspect

NO_PART = frozenset({"tool", "machine"})
BARRED = {
    "suspected": NO_PART,
    "confirmed": NO_PART | {"quality"},
    "ruled out": frozenset({"fluid", "machine", "tool", "material"}),
}
"Kinds of things that, named alone, have not that standing: `so it's charging` tells how it is, not what it was."
SHORT = 3
"Tokens of the longest name that is only asked."
IS = ("'s", "\u2019s")
GOES_ON = frozenset({"or else", *"and then or not which because cos if when yeah look see".split()})
"Words that begin what is said further."
AWAY = frozenset("gone out".split())
LIKENS = "like"
"`Smells like paint` tells what it is like, unless a part or a cause is named."
SEEPS = frozenset({"air", "water"})
"Fluids that are to blame by being there."


def accused(found: Match, scene: Scene) -> Draft | None:
    """The cause named in any words next to what accuses or clears it; None where it names none."""
    gives = found.rule.gives
    if gives.get("after_bad") and not _bad_before(found, scene):
        return None
    named = _named(found, scene)
    if named is None or not _told_so(named, found, scene) or not _placed_so(named, found, scene):
        return None
    if named.thing is not None and named.thing.kind == "fluid" and scene.tokens[named.last].low in AWAY:
        return None  # `so that's the air gone`: what was wanted
    if named.first == named.last and not gives.get("any") and not may_stand(str(gives["standing"]), named.thing):
        return None
    made = Draft("suspect", named.first, named.last, found.rule, {}, thing=named.thing,
                 confidence=found.rule.confidence, first_used=min(found.first, named.first),
                 last_used=max(found.last - 1, named.last))  # fmt: skip
    made.fields = {"cause": named.words, "standing": gives["standing"], "name": named.name}
    return made


def _named(found: Match, scene: Scene) -> Named | None:
    gives = found.rule.gives
    any_words = bool(gives.get("any_words")) or (scene.typed and bool(gives.get("typed")))
    match gives["names"]:
        case "next":
            return blamed.after(scene, found.last, any_words)
        case "inside":
            return blamed.after(scene, found.first + 1, any_words)
        case "last":
            return blamed.before(scene, found.first)
        case _:
            return blamed.before(scene, found.last - 1)


def may_stand(standing: str, thing: Thing | None) -> bool:
    """Whether a thing named alone may have that standing: a fluid is not ruled out, and `spark?` asks for a test."""
    return thing is None or thing.kind not in BARRED[standing]


def _told_so(named: Named, match: Match, scene: Scene) -> bool:
    """Whether what is named is known, suspected before, told to be bad, as the rule asks."""
    gives = match.rule.gives
    if scene.tokens[match.first].low.endswith(LIKENS) and not _is_part(named, scene):
        return False
    bad = _told_bad(scene.tokens[named.first : named.last + 1])
    return (
        (named.known or not gives.get("sure"))
        and (bad or not gives.get("told"))
        and (suspected_before(scene, named) or not gives.get("again"))
        and (not gives.get("cleared") or _may_be_cleared(named, scene))
        and (not gives.get("instead") or _something_cleared(scene))
        and (not gives.get("after_bad") or _explains(named, match, scene))
    )


def _is_part(named: Named, scene: Scene) -> bool:
    """Whether a part or a cause is named, no stuff."""
    caused = any(t.sense("cause") for t in scene.tokens[named.first : named.last + 1])
    return caused or (named.thing is not None and may_stand("ruled out", named.thing))


def _placed_so(named: Named, match: Match, scene: Scene) -> bool:
    """Whether the words around are those that the rule asks for: a question, the end of a thought, a word behind."""
    gives = match.rule.gives
    behind = scene.tokens[named.last + 1].low if named.last + 1 < len(scene.tokens) else ""
    if gives.get("follow") and (behind not in gives["follow"] or _has_verb(scene, named.last)):
        return False  # `so the pack's not optional`
    if gives.get("apart") and _has_verb(scene, match.last - 2):
        return False
    if gives.get("starts") and not _only_asked(named, scene):
        return False
    return (not gives.get("queried") or scene.tokens[-1].low == "?") and (
        not gives.get("ends") or _thought_ends(scene, named.last + 1)
    )


def _only_asked(named: Named, scene: Scene) -> bool:
    """Whether a typed question is nothing but a name, after trouble or with a state: `belt slips. clutch?`."""
    bad = _told_bad(scene.tokens[named.first : named.last + 1])
    return scene.typed and _thought_starts(scene, named) and (bad or told_bad_here(scene))


def _has_verb(scene: Scene, k: int) -> bool:
    """Whether a token hides a verb: `the pack's`."""
    return scene.text[: scene.tokens[k].end].endswith(IS)


def _may_be_cleared(named: Named, scene: Scene) -> bool:
    """Whether it may be ruled out: what was suspected, or a part; a fluid or a new word only by `it's not the …`."""
    if suspected_before(scene, named) or (named.thing is not None and may_stand("ruled out", named.thing)):
        return True
    return scene.tokens[named.first - 1].sense("article") is not None


def _told_bad(tokens: list[Token]) -> bool:
    """Whether a part is named and said to be bad."""
    parts = any(t.thing is not None and t.thing.kind != "quality" for t in tokens)
    return parts and any(t.sense("bad") for t in tokens)


def _thought_starts(scene: Scene, named: Named) -> bool:
    """Whether a short name opens its thought: `belt?`, `jumps: claw?`."""
    opens = named.first == 0 or scene.tokens[named.first - 1].kind in ("stop", "comma")
    return opens and named.last - named.first < SHORT and not scene.tokens[named.first].sense("trouble")


def _thought_ends(scene: Scene, k: int) -> bool:
    if k >= len(scene.tokens) or scene.tokens[k].kind in ("stop", "comma"):
        return True
    token = scene.tokens[k]
    return token.clause != scene.tokens[k - 1].clause or token.low in GOES_ON or bool(token.sense("suspicion"))


def _explains(named: Named, match: Match, scene: Scene) -> bool:
    """Whether it names a cause, or a state of a part, or air or water."""
    inside = scene.tokens[named.first : named.last + 1]
    if scene.tokens[match.first].low == "is" and _tells(inside):
        return False
    return any(t.sense("cause") for t in inside) or named.name in SEEPS or _told_bad(inside)


def _tells(tokens: list[Token]) -> bool:
    """Whether how a thing is and where is told, and no thing named: of a needle, `is gummed shut in the seat`."""
    thing = next((k for k, t in enumerate(tokens) if t.thing is not None), len(tokens))
    return bool(tokens[0].sense("bad")) and (thing == len(tokens) or bool(tokens[thing - 1].sense("article")))


def _bad_before(match: Match, scene: Scene) -> bool:
    """Whether something bad was told before the words of the rule, in this note."""
    return told_bad_here(scene) or any(t.sense("bad", "trouble") for t in scene.tokens[: match.first])


def _something_cleared(scene: Scene) -> bool:
    """Whether this note ruled something out, or found something good: `No, that's clean. It's the needle.`"""
    here = [f for f in scene.context.recent if f.main.note not in scene.context.notes]
    return any(
        (isinstance(f, Suspect) and f.standing == "ruled out") or (isinstance(f, Finding) and f.verdict == "good")
        for f in here
    )


def told_bad_here(scene: Scene) -> bool:
    """Whether this note told something bad before this sentence."""
    return scene.once(("told bad here",), lambda: _told_bad_here(scene))


def _told_bad_here(scene: Scene) -> bool:
    older = scene.context.notes
    here = [f for f in scene.context.recent if f.main.note not in older]
    return any(isinstance(f, Finding) and f.verdict == "bad" for f in here)


def suspected_before(scene: Scene, named: Named) -> bool:
    """Whether what is named was suspected and not yet cleared."""
    key = named.name or named.words.lower()
    return any(_same(key, other) or _same(other, key) for other in scene.context.suspects)


def _same(key: str, other: str) -> bool:
    """Whether a name is another one, or its head: `pump` of `fuel pump`."""
    return key == other or other.endswith(f" {key}")
