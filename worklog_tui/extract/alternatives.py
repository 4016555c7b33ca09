"""Alternatives: `could be the feed, the switch or the earth`, `either the pump is dry or it is drawing air`.

A suspicion may be told as a whole clause. Its words up to the next `or`, comma or new thought are one suspect each.
"""

from __future__ import annotations

from dataclasses import dataclass

from worklog_tui.extract.finders.several import spread
from worklog_tui.extract.scene import Draft, Scene
from worklog_tui.extract.things import spoken
from worklog_tui.extract.tokens import Thing, Token
from worklog_tui.rulebook.patterns import Rule

EVEN = ["asked", "not", "maybe"]
EITHER = Rule("suspect.alternative", "", {"kind": "suspect", "standing": "suspected", "even": EVEN}, (), (), 0.66)
ASKED = Rule("suspect.alternative", "", {**EITHER.gives, "even": [*EVEN, "if"]}, (), (), 0.66)
OPENS = frozenset("either its thats shes so means is be".split()) | {"it is", "that is", "which means"}
ASKING = frozenset("know tell wonder wondering see say sure".split())
WHOLE = 6
"Tokens up to which a suspicion is kept in all its words."
FARTHEST = 40
NO_CAUSE = frozenset({"tool", "machine", "unknown"})
LEADING = frozenset("either it its thats that just my the a an im shes hes theyre is be in on s".split())
ENDS = frozenset("and which when if because cause not rather".split()) | {
    "one of the two", "one of them", "one or the other",
}  # fmt: skip


@dataclass(frozen=True, slots=True)
class Piece:
    """Tokens first to last of one alternative."""

    first: int
    last: int
    thing: Thing | None
    name: str
    sure: bool
    "Whether it names something that can be at fault."


def told(scene: Scene, found: list[Draft]) -> list[Draft]:
    """The suspects that no rule found; a verdict among `found` that is one of several becomes a suspicion, in place."""
    made: list[Draft] = []
    i = 0
    while i < len(scene.tokens):
        end = i + 1
        if _opens(scene, i):
            spans, last = _spans(scene.tokens, i + 1)
            several = _several(scene.tokens, spans)
            if several:
                made += _suspects(scene, i, spans, several, found)
                end = max(last, end)
            elif scene.tokens[i].sense("suspicion"):
                made += _suspects(scene, i, spans[:1], several, found)
        i = end
    return made


def _opens(scene: Scene, i: int) -> bool:
    token = scene.tokens[i]
    if "suspicion" in token.classes or token.low in OPENS:
        return True
    return i == 0 and token.low == "or" and bool(scene.context.suspects)


def _spans(tokens: list[Token], i: int) -> tuple[list[tuple[int, int]], int]:
    """The stretches between commas and `or` up to the end of the thought, and where that is."""
    spans, first, k = [], i, i
    while k < len(tokens) and k < i + FARTHEST:
        token = tokens[k]
        if token.kind == "stop" or (token.low in ENDS and (k > first or token.low != "not")):
            break
        if k > first and _new_thought(tokens, k):
            break
        if token.low == "or" or token.kind == "comma" or (k > first and token.sense("suspicion")):
            spans.append((first, k))
            first = k + 1
        k += 1
    spans.append((first, k))
    last_or = max((n for n, span in enumerate(spans) if _one_more(tokens, *span)), default=0)
    return [s for s in spans[: last_or + 1] if s[1] > s[0]], k


def _one_more(tokens: list[Token], first: int, end: int) -> bool:
    """Whether an `or` stands before the stretch, or within a thing of it: `the coil or the rotor arm`."""
    return tokens[first - 1].low == "or" or any(_joined(t) for t in tokens[first:end])


def _joined(token: Token) -> bool:
    return token.thing is not None and bool(token.thing.also) and " or " in token.low


def _new_thought(tokens: list[Token], k: int) -> bool:
    """Whether another clause begins at k within an alternative."""
    return tokens[k].clause != tokens[k - 1].clause and tokens[k - 1].low not in ("or", "either")


def _several(tokens: list[Token], spans: list[tuple[int, int]]) -> bool:
    return len(spans) > 1 or any(_joined(t) for first, end in spans for t in tokens[first:end])


def _suspects(
    scene: Scene, opener: int, spans: list[tuple[int, int]], several: bool, found: list[Draft]
) -> list[Draft]:
    pieces = [p for first, end in spans if (p := _piece(scene.tokens, first, end)) is not None]
    if not any(p.sure for p in pieces) or len(pieces) < len(spans):
        return []
    made: list[Draft] = []
    asked = any(t.low in ASKING or t.sense("whoknows") for t in scene.tokens[max(0, opener - 2) : opener])
    for piece in pieces:
        known = [d for d in found if d.kind == "suspect" and d.main <= piece.last and piece.first <= d.last]
        if several and piece.sure and all(d.last - d.main < piece.last - piece.first for d in known):
            found[:] = [d for d in found if d not in known]
            known = []
        for draft in known if several else ():
            if draft.fields["standing"] == "confirmed":
                draft.fields["standing"] = "suspected"
        if not known:
            made += spread(_draft(scene, opener, piece, ASKED if asked else EITHER), scene)
    return made


def _draft(scene: Scene, opener: int, piece: Piece, rule: Rule) -> Draft:
    fields = {"cause": spoken(scene.said(piece.first, piece.last)), "standing": "suspected", "name": piece.name}
    return Draft("suspect", piece.first, piece.last, rule, fields, thing=piece.thing, confidence=rule.confidence,
                 first_used=min(opener, piece.first), last_used=piece.last)  # fmt: skip


def _piece(tokens: list[Token], first: int, end: int) -> Piece | None:
    """What an alternative names; None when it names nothing that can be at fault."""
    first, end = _trimmed(tokens, first, end)
    if first >= end or any(t.kind in ("amount", "thread", "number") for t in tokens[first:end]):
        return None
    span, whole = range(first, end), end - first <= WHOLE
    cause = next((k for k in span if tokens[k].sense("cause")), None)
    at = next((k for k in span if (t := tokens[k].thing) is not None and t.kind not in NO_CAUSE), None)
    bad = next((k for k in span if tokens[k].sense("bad")), None)
    thing = tokens[at].thing if at is not None else None
    if cause is not None:
        name = _name(tokens[cause], "cause")
        return Piece(first, end - 1, thing, name, True) if whole else Piece(cause, cause, thing, name, True)
    if at is not None and thing is not None:
        if whole:
            sure = bad is not None or end - first == 1 or any(tokens[k].sense("not") for k in span)
            return Piece(first, end - 1, thing, thing.name, sure)
        if bad is None or abs(bad - at) > 4:
            return None
        return Piece(min(at, bad), max(at, bad), thing, thing.name, True)
    if bad is not None:
        return Piece(first, end - 1, None, _name(tokens[bad], "bad"), True) if whole else None
    return Piece(first, end - 1, None, "", False) if end - first <= 2 else None


def _name(token: Token, cls: str) -> str:
    sense = token.sense(cls)
    return sense.name if sense else ""


def _trimmed(tokens: list[Token], first: int, end: int) -> tuple[int, int]:
    while first < end and not _at_fault(tokens[first]) and (
        tokens[first].low in LEADING or tokens[first].sense("article", "degree", "copula")
    ):  # fmt: skip
        first += 1
    while end > first and tokens[end - 1].sense("degree", "break") and not _at_fault(tokens[end - 1]):
        end -= 1
    return first, end


def _at_fault(token: Token) -> bool:
    return token.thing is not None or token.sense("cause", "bad") is not None
