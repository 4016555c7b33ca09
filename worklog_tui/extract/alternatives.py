"""Alternatives: `could be the feed, the switch or the earth`, `either the pump is dry or it is drawing air`.

A suspicion may be told as a whole clause. Its words up to the next `or`, comma or new thought are one suspect each.
"""

from __future__ import annotations

from dataclasses import dataclass

from worklog_tui.extract.finders.several import spread
from worklog_tui.extract.scene import Draft, Scene
from worklog_tui.extract.tokens import Thing, Token
from worklog_tui.rulebook.patterns import Rule

EITHER = Rule(
    "suspect.alternative",
    "",
    {"kind": "suspect", "standing": "suspected", "even": ["asked", "not", "maybe"]},
    (),
    (),
    0.66,
)
ASKED = Rule("suspect.alternative", "", {**EITHER.gives, "even": ["asked", "not", "maybe", "if"]}, (), (), 0.66)
OPENS = frozenset("either its thats it's shes so means is be isit".split()) | {"it is", "that is", "which means"}
ASKING = frozenset("know tell wonder wondering see say sure".split())
WHOLE = 6
"Tokens up to which a suspicion is kept in all its words."
FARTHEST = 40
NO_CAUSE = frozenset({"tool", "machine", "unknown", "place"})
LEADING = ("article", "degree", "copula")
LEADING_WORDS = frozenset("it its thats that just my the a an im shes hes theyre is be in on".split())
ENDS = frozenset(
    {
        "one of the two",
        "one of them",
        "one or the other",
        "and",
        "which",
        "when",
        "if",
        "because",
        "cause",
        "not",
        "rather",
    }
)


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
    """Further suspects of a sentence; a verdict among `found` that is one of several alternatives becomes a suspicion."""
    made: list[Draft] = []
    i = 0
    while i < len(scene.tokens):
        if not _opens(scene, i):
            i += 1
            continue
        spans, end = _spans(scene.tokens, i + 1)
        several = _several(scene.tokens, spans)
        if several or scene.tokens[i].sense("suspicion"):
            made += _suspects(scene, i, spans if several else spans[:1], several, found)
            i = max(end, i + 1) if several else i + 1
        else:
            i += 1
    return made


def _opens(scene: Scene, i: int) -> bool:
    token = scene.tokens[i]
    if token.sense("suspicion") or token.low in OPENS:
        return True
    return i == 0 and token.low == "or" and bool(scene.context.suspects)


def _spans(tokens: list[Token], i: int) -> tuple[list[tuple[int, int]], int]:
    """The stretches between commas and `or` up to the end of the thought, and where that is."""
    spans, first, k = [], i, i
    while k < len(tokens) and k < i + FARTHEST:
        token = tokens[k]
        if token.kind == "stop" or (k > first and (token.low in ENDS or _new_thought(tokens, k, first))):
            break
        if token.low == "or" or token.kind == "comma" or (k > first and token.sense("suspicion")):
            spans.append((first, k))
            first = k + 1
        k += 1
    spans.append((first, k))
    last_or = max((n for n, (start, _) in enumerate(spans) if tokens[start - 1].low == "or"), default=0)
    return [s for s in spans[: last_or + 1] if s[1] > s[0]], k


def _new_thought(tokens: list[Token], k: int, first: int) -> bool:
    """Whether another clause begins at k within an alternative."""
    return tokens[k].clause != tokens[k - 1].clause and tokens[k - 1].low not in ("or", "either") and k > first


def _several(tokens: list[Token], spans: list[tuple[int, int]]) -> bool:
    return len(spans) > 1 or any(
        t.thing is not None and t.thing.also and " or " in t.low for first, end in spans for t in tokens[first:end]
    )


def _suspects(
    scene: Scene, opener: int, spans: list[tuple[int, int]], several: bool, found: list[Draft]
) -> list[Draft]:
    pieces = [p for first, end in spans if (p := _piece(scene.tokens, first, end)) is not None]
    sure = [p for p in pieces if p.sure]
    if not sure or (several and len(pieces) < len(spans)):
        return []
    made: list[Draft] = []
    asked = opener > 0 and any(t.low in ASKING for t in scene.tokens[max(0, opener - 2) : opener])
    for piece in pieces:
        known = [d for d in found if d.kind == "suspect" and d.main <= piece.last and piece.first <= d.last]
        if known:
            for draft in known if several else ():
                if draft.fields["standing"] == "confirmed":
                    draft.fields["standing"] = "suspected"
            continue
        rule = ASKED if asked else EITHER
        draft = Draft("suspect", piece.first, piece.last, rule, {}, confidence=rule.confidence, thing=piece.thing,
                      first_used=min(opener, piece.first), last_used=piece.last)  # fmt: skip
        draft.fields = {"cause": scene.said(piece.first, piece.last), "standing": "suspected", "name": piece.name}
        made += spread(draft, scene)
    return made


def _piece(tokens: list[Token], first: int, end: int) -> Piece | None:
    """What an alternative names; None when it names nothing that can be at fault."""
    while (
        first < end
        and (tokens[first].low in LEADING_WORDS or tokens[first].sense(*LEADING))
        and not _at_fault(tokens[first])
    ):
        first += 1
    while end > first and tokens[end - 1].sense("degree", "break") and not _at_fault(tokens[end - 1]):
        end -= 1
    if first >= end or any(t.kind in ("amount", "thread", "number") for t in tokens[first:end]):
        return None
    cause = next((k for k in range(first, end) if tokens[k].sense("cause")), None)
    at = next((k for k in range(first, end) if _can_fail(tokens[k])), None)
    bad = next((k for k in range(first, end) if tokens[k].sense("bad")), None)
    thing = tokens[at].thing if at is not None else None
    if cause is not None:
        sense = tokens[cause].sense("cause")
        name = sense.name if sense else ""
        return (
            Piece(first, end - 1, thing, name, True) if end - first <= WHOLE else Piece(cause, cause, thing, name, True)
        )
    if at is not None and thing is not None:
        if end - first <= WHOLE:
            return Piece(
                first, end - 1, thing, thing.name, bad is not None or end - first == 1 or _denied(tokens, first, end)
            )
        if bad is not None and abs(bad - at) <= 4:
            return Piece(min(at, bad), max(at, bad), thing, thing.name, True)
        return None
    if bad is not None:
        return Piece(first, end - 1, None, tokens[bad].sense("bad").name, True) if end - first <= WHOLE else None  # type: ignore[union-attr]
    return Piece(first, end - 1, None, "", False) if end - first <= 2 else None


def _at_fault(token: Token) -> bool:
    return token.thing is not None or token.sense("cause", "bad") is not None


def _can_fail(token: Token) -> bool:
    return token.thing is not None and token.thing.kind not in NO_CAUSE


def _denied(tokens: list[Token], first: int, end: int) -> bool:
    return any(t.sense("not") for t in tokens[first:end])
