"""`The right one's the same`, `same on the other side`: what was found of one thing is told of another."""

from __future__ import annotations

from worklog_tui.extract.scene import Draft, Scene
from worklog_tui.extract.things.markers import SAME
from worklog_tui.extract.things.side_words import SIDES
from worklog_tui.extract.things.subjects import name_with, with_which
from worklog_tui.extract.tokens import Thing, Token
from worklog_tui.model import Finding
from worklog_tui.rulebook.patterns import Rule

RULE = Rule("finding.same-again", "", {"kind": "finding", "from": "<same>"}, (), (), 0.66)
ENDS = frozenset("again story too though there now and but so then".split())
"Words that may stand behind `the same`; others say the same as what."
LEADS, AGAIN = frozenset("on with for at".split()), frozenset({"again", "story"})
SMALL = ("article", "copula", "degree", "filler", "all")
UNSAID = ("not", "if", "maybe", "asked", "plan", "would", "book", "reported")
"Stances in which nothing is told."


def again(scene: Scene, found: list[Draft]) -> list[Draft]:
    """The findings of a sentence that repeats the last one of another thing."""
    if SAME.isdisjoint(scene.lows()):
        return []
    made = []
    for k, token in enumerate(scene.tokens):
        if token.low not in SAME or token.stances & set(UNSAID) or (before := _found_last(scene, found, k)) is None:
            continue
        thing, at = _subject(scene, k) or _led_to(scene, k, before) or (None, None)
        if thing is not None and thing.words.lower() != _part(before).lower():
            made.append(_again(scene, before, k, thing, at))
    return made


def _found_last(scene: Scene, found: list[Draft], k: int) -> Draft | Finding | None:
    """The last finding before token k: of this sentence, or of this note or the one before."""
    here = [d for d in found if d.kind == "finding" and d.main < k and d.thing is not None]
    if here:
        return max(here, key=lambda d: d.main)
    notes = set(scene.context.notes[-2:])
    recent = (f for f in reversed(scene.context.recent) if isinstance(f, Finding) and f.main.note in notes)
    return next(recent, None)


def _subject(scene: Scene, k: int) -> tuple[Thing, int] | None:
    """The thing that is the same, right before the word: `right one's the same`, `rear bearing - ditto`."""
    after = scene.tokens[k + 1] if k + 1 < len(scene.tokens) else None
    if not (after is None or after.kind in ("stop", "comma") or after.low in ENDS or _new_clause(scene, k + 1)):
        return None
    i = k - 1
    while i >= 0 and (scene.tokens[i].sense(*SMALL) or scene.tokens[i].kind == "comma"):
        i -= 1
    thing = scene.tokens[i].thing if i >= 0 else None
    return (thing, i) if thing is not None and thing.kind not in ("quality", "tool", "machine") else None


def _new_clause(scene: Scene, k: int) -> bool:
    return scene.tokens[k].clause != scene.tokens[k - 1].clause


def _led_to(scene: Scene, k: int, before: Draft | Finding) -> tuple[Thing, int | None] | None:
    """The other one behind the word: `same on the other side`, `ditto rh`, `same with the exhaust one`."""
    tokens, i = scene.tokens, k + 1
    while i < len(tokens) and (tokens[i].low in LEADS | AGAIN or tokens[i].sense("article")):
        i += 1
    if i >= len(tokens) or not _opens(tokens, k) or not (i > k + 1 or tokens[k].low == "ditto"):
        return None
    token = tokens[i]
    if token.thing is not None and token.thing.kind in ("part", "joint", "fastener", "control"):
        return token.thing, i
    which = token.which if token.kind == "which" else token.low if token.low in SIDES or token.low == "other" else ""
    if not which:
        return None
    part = _part(before)
    name = before.name if isinstance(before, Finding) else before.thing.name if before.thing is not None else ""
    words = with_which(part, which)
    return Thing(words, name_with(name, which), "part", which, words), None


def _opens(tokens: list[Token], k: int) -> bool:
    """Whether the word stands at the head of its clause, but for small words."""
    i = k - 1
    while i >= 0 and tokens[i].sense(*SMALL):
        i -= 1
    return i < 0 or tokens[i].kind in ("stop", "comma") or tokens[i].low in ("and", "its", "thats")


def _part(before: Draft | Finding) -> str:
    return before.part if isinstance(before, Finding) else before.thing.words if before.thing is not None else ""


def _again(scene: Scene, before: Draft | Finding, k: int, thing: Thing, at: int | None) -> Draft:
    if isinstance(before, Draft):
        fields = before.fields | {"same": scene.said(before.main, before.last)}
    else:
        fields = {"verdict": before.verdict, "state": before.state, "opposite": "", "weak": False}
        fields["same"] = before.condition
    return Draft("finding", k, k, RULE, fields, thing, at, set(), RULE.confidence, k, k)
