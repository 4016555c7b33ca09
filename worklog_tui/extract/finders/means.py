"""What was put in or used for a piece of work: `with a wire brush`, `new seal`, `in paraffin`, `a smear of grease`."""

from __future__ import annotations

from worklog_tui.extract.matching import Match
from worklog_tui.extract.scene import Draft, Scene
from worklog_tui.extract.tokens import Token
from worklog_tui.rulebook import Sense

WITH = frozenset({"with", "using", "w"})
FURTHER = {
    "clean": frozenset({"in", "into", "on"}), "soak": frozenset({"in", "into"}), "flush": frozenset({"through"}),
    "replace": frozenset({"from", "off", "frm", "for"}), "fit": frozenset({"from", "off", "frm"}),
    "make": frozenset({"from", "of", "out of", "frm", "in"}), "repair": frozenset({"on"}),
}  # fmt: skip
"Words besides `with` that lead to what was used, for the actions that they say it of."
MEANS_WORDS = 4
UPON = frozenset({"on"})
"What something was sharpened or cleaned on is a tool: `on the grinder`, `on a stone`."
SURE = ("washes", "abrasive", "improvised")
NO_MEANS = frozenset({"pronoun", "copula", "not"})


def used(made: Draft, match: Match, scene: Scene, sense: Sense | None, action: str) -> str:
    """What was put in or used, in the speaker's words; empty when nothing tells."""
    return (
        _by_rule(match, scene)
        or _put_in(made, scene, action)
        or _named(made, scene, action)
        or _poured_in(made, match, scene, action)
        or (sense.system if sense is not None else "")
        or _air(made, action)
    )


def _by_rule(match: Match, scene: Scene) -> str:
    """The slot or the fixed word that the rule names, with the `new` before it."""
    said = match.rule.gives.get("used", "")
    if not said.startswith("<"):
        return str(said)
    at = match.slots.get(said.strip("<>"))
    if at is None or scene.tokens[at].sense("new"):
        return ""
    return scene.said(at - (at > 0 and scene.tokens[at - 1].sense("new") is not None), at)


def _put_in(made: Draft, scene: Scene, action: str) -> str:
    """`fitted a new seal`: the new seal; `head on, new gasket`: the new gasket."""
    k = made.thing_at
    if k is None or action not in ("replace", "fit"):
        return ""
    if scene.tokens[made.main].low.endswith(" new"):
        return f"new {made.thing.words}" if made.thing else ""
    first = next((n for n in (k - 1, k - 2) if n >= 0 and scene.tokens[n].sense("new")), None)
    if first is not None:
        return scene.said(first, k)
    n = max(made.main, k) + 1
    after = scene.tokens[n : n + 3]
    if action == "fit" and len(after) == 3 and after[0].kind == "comma" and after[1].sense("new") and after[2].thing:
        return scene.said(n + 1, n + 2)
    return ""


def _named(made: Draft, scene: Scene, action: str) -> str:
    """`with a wire brush`, after the verb in its clause: what it was done with, in a few words; `with` comes first."""
    return _led_by(WITH, made, scene, action) or _led_by(FURTHER.get(action, frozenset()), made, scene, action)


def _led_by(leads: frozenset[str], made: Draft, scene: Scene, action: str) -> str:
    tokens, stop = scene.tokens, scene.clause(made.main).stop
    for k in range(made.main + 1, stop - 1):
        if tokens[k].kind in ("stop", "comma") or (k > made.main + 1 and "did" in tokens[k].classes):
            return ""
        if tokens[k].low not in leads or made.thing_at in (k + 1, k + 2):
            continue
        last = k + 1
        while last + 1 < min(stop, k + 1 + MEANS_WORDS) and tokens[last].kind != "thing":
            if tokens[last + 1].kind in ("comma", "stop") or tokens[last + 1].low in ("and", "but"):
                break
            last += 1
        sure = leads is WITH or _is_means(tokens[last], tokens[k].low) or action == "make"
        if sure and tokens[k + 1].kind not in ("comma", "stop") and not tokens[k + 1].sense(*NO_MEANS):
            return scene.said(k + 1, last)
    return ""


def _is_means(token: Token, lead: str) -> bool:
    """Whether a word names something that work is done with, after the word that leads to it."""
    if lead in UPON:
        return bool(token.sense("abrasive")) or (token.thing is not None and token.thing.kind == "tool")
    return token.kind == "thing" or bool(token.sense(*SURE))


def _air(made: Draft, action: str) -> str:
    """A tyre is filled with air."""
    return "air" if action == "fill" and made.thing is not None and made.thing.name in AIRED else ""


AIRED = frozenset({"tyre", "inner tube"})
ENDS = frozenset("in into went goes gone back out to from down and".split())


def _of_grade(match: Match, scene: Scene) -> str:
    """`two pints of thirty in`, `.6 of 10w30`: the grade or the fluid behind the amount."""
    tokens = scene.tokens
    for k in range(match.first, min(match.last + 1, len(tokens) - 1)):
        if tokens[k].low == "of" and k and tokens[k - 1].kind in ("amount", "number"):
            first = k + 2 if tokens[k + 1].sense("article") else k + 1
            last = first
            while last < min(first + MEANS_WORDS, len(tokens)) and not _ends(tokens[last]):
                last += 1
            return scene.said(first, last - 1) if last > first else ""
    return ""


def _ends(token: Token) -> bool:
    return token.kind in ("comma", "stop") or token.low in ENDS


def _poured_in(made: Draft, match: Match, scene: Scene, action: str) -> str:
    """`fresh coolant in`: what is filled in is the fluid itself."""
    k = made.thing_at
    if action == "fill" and (graded := _of_grade(match, scene)):
        return graded
    if action != "fill" or k is None or made.thing is None or made.thing.kind != "fluid":
        return ""
    return scene.said(k - (k > 0 and scene.tokens[k - 1].sense("new") is not None), k)
