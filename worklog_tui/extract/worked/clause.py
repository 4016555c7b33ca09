"""What the builds of a clause share: who did it, what it was done to, and the name under which it is explained."""

from __future__ import annotations

from typing import Any

from worklog_tui.extract.matching import Match
from worklog_tui.extract.scene import Scene
from worklog_tui.extract.tokens import Token
from worklog_tui.rulebook.patterns import Rule

ME = frozenset("i we ive weve id".split())
LEADS = frozenset("and then so but now".split())
IT = frozenset("it them em that those both these her all each everything".split()) | {"the lot", "both of them"}
REACH = 6
"Tokens between a verb and what it was done to."
WORKED = frozenset({"part", "joint", "fastener", "control", "electric", "unknown"})
"Kinds of things that something is done to; of a tool, a machine or a quality the builds tell too little."
GAUGES = ("gauge", "meter", "light", "lamp", "tester", "indicator")
"How the names of things end that are hung on only to see by."


def by_me(scene: Scene, k: int) -> bool:
    """Whether the verb at token k has no other subject than the speaker."""
    first = scene.clause(k).start
    at = k - 1
    while at >= first and (scene.tokens[at].sense("degree") or scene.tokens[at].low in ADVERBS):
        at -= 1
    before = scene.tokens[at]
    if at < first or (scene.opens_note(k) and not before.sense("copula", "article", "not")):
        return True
    return before.kind in ("comma", "stop") or before.low in ME | LEADS or before.sense("break", "how") is not None


ADVERBS = frozenset("then finally eventually carefully gently first next also ve had have anyway quickly".split())


def object_of(scene: Scene, k: int) -> int | None:
    """The index of the thing that stands as object behind token k, with only its article and what describes it before
    it; of a pronoun its index.
    """
    for at in range(k + 1, min(k + 1 + REACH, scene.clause(k).stop)):
        token = scene.tokens[at]
        if token.kind == "thing":
            return at
        if at == k + 1 and token.low in IT and not _goes_with_name(scene, at):
            return at
        if not describes(token):
            return None
    return None


def _goes_with_name(scene: Scene, at: int) -> bool:
    """`That bush`, `all the bolts`: no pronoun."""
    after = scene.tokens[at + 1] if at + 1 < len(scene.tokens) else None
    return after is not None and (after.kind == "thing" or after.sense("article", "objectword", "new") is not None)


def describes(token: Token) -> bool:
    """Whether a token may stand between a verb or an article and the noun."""
    if token.kind in ("stop", "comma", "amount") or token.low in LEADS | ME:
        return False
    if token.sense("objectword", "article", "degree", "new", "good", "bad", "noted", "side", "all", "colour"):
        return True
    return token.kind in ("number", "which") or (token.kind == "word" and token.low.isalpha())


def match(name: str, scene: Scene, first: int, last: int, at: int, thing: int | None, **gives: Any) -> Match:
    """A match of the build `name` on the tokens first to last (inclusive)."""
    said = {"kind": "work", "at": "<at>", **gives}
    slots = {"at": at}
    if thing is not None and scene.tokens[thing].kind == "thing":
        slots["thing"] = thing
        said["part"] = "<thing>"
    else:
        said["it"] = True
    return Match(Rule(f"worked.{name}", "", said, (), (), SURE if "part" in said else LESS), first, last + 1, slots)


SURE, LESS = 0.66, 0.58
"""Judgement: of a thing that is named, and of one that only `it` stands for."""
