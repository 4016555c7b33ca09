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

EVEN = ["asked", "not", "maybe", "would"]
EITHER = Rule("suspect.alternative", "", {"kind": "suspect", "standing": "suspected", "even": EVEN}, (), (), 0.66)
ASKED = Rule("suspect.alternative", "", {**EITHER.gives, "even": [*EVEN, "if"]}, (), (), 0.66)
OPENS = frozenset("either its thats shes so means is be".split()) | {"it is", "that is", "which means"}
OPENS_ASKED = frozenset({"whether", "if", "is it", "is that", "was it", "was that", "are they"})
ASKING = frozenset("know tell wonder wondering see say sure ask asking dunno work".split())
WHOLE = 6
"Tokens up to which a suspicion is kept in all its words."
FARTHEST = 40
NO_CAUSE = frozenset({"tool", "machine", "unknown"})
NOT_ASKED = frozenset({"fluid", "material", "machine"})
"What it is may be asked; that it is to blame is not."
TO_COME = frozenset({"itll be", "it will be", "thatll be", "that will be", "itd be", "thatd be", "that would be"})
OR = frozenset({"or", "or else"})
UNSAID = frozenset({"which", "which is", "what", "who", "where"})
PARTLY = frozenset("rest half part some most all bit lot other".split())
LEADING = frozenset(
    "or ive got theres either whether it its thats that just my the a an im shes hes theyre is was be in on s".split()
)
TRAILING = frozenset("on of in these this those that it here there then again now".split())
ENDS = frozenset("and which when if because cause not rather let lets so".split()) | {
    "let me",
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
        bare = i == 0 and _may_list(scene)
        if bare or _opens(scene, i):
            spans, last = _spans(scene.tokens, i + (not bare))
            several = _several(scene.tokens, spans)
            if several:
                more = _suspects(scene, -1 if bare else i, spans, several, found)
                made, end = made + more, max(last, end) if more else end
            elif scene.tokens[i].sense("suspicion") or scene.tokens[i].low in OR:
                made += _suspects(scene, i, spans[:1], several, found)
        i = end
    return made


def _opens(scene: Scene, i: int) -> bool:
    token = scene.tokens[i]
    if "suspicion" in token.classes or token.low in OPENS:
        return True
    if token.low in OPENS_ASKED:
        return "asked" in token.stances or _asked_before(scene.tokens, i)
    return token.low in OR and all(t.low in OR or t.kind == "comma" for t in scene.tokens[:i])


def _may_list(scene: Scene) -> bool:
    """Whether a sentence may be nothing but alternatives: `rings, or a valve stuck open`."""
    first = scene.tokens[0]
    named = first.thing is not None or first.sense("article", "bad", "cause") or first.low == "no"
    return bool(named) and not _opens(scene, 0) and any(t.low in OR for t in scene.tokens)


def _asked_before(tokens: list[Token], i: int) -> bool:
    """Whether the words before token i say that something is not known: `can't tell if`."""
    return any(t.sense("whoknows") or any(w in ASKING for w in t.low.split()) for t in tokens[max(0, i - 2) : i])


def _spans(tokens: list[Token], i: int) -> tuple[list[tuple[int, int]], int]:
    """The stretches between commas and `or` up to the end of the thought, and where that is."""
    spans, first, k = [], i, i
    while k < len(tokens) and k < i + FARTHEST:
        token = tokens[k]
        if token.kind == "stop" or _ends(tokens, first, k):
            break
        if k > first and _new_thought(tokens, k):
            break
        if token.low in OR or token.kind == "comma" or (k > first and token.sense("suspicion")):
            spans.append((first, k))
            first = k + 1
        k += 1
    spans.append((first, k))
    last_or = max((n for n, span in enumerate(spans) if _one_more(tokens, *span)), default=0)
    return [s for s in spans[: last_or + 1] if s[1] > s[0]], k


def _ends(tokens: list[Token], first: int, k: int) -> bool:
    """Whether token k ends the alternatives: `and`, `one of them`, `not the other` after one is named."""
    token, after = tokens[k], tokens[k + 1] if k + 1 < len(tokens) else None
    if token.low == "not":
        return k > first and (after is None or after.thing is not None or after.sense("article") is not None)
    return token.low in ENDS or (token.low == "one" and after is not None and after.low == "of" and k > first)


def _one_more(tokens: list[Token], first: int, end: int) -> bool:
    """Whether an `or` stands before the stretch, or within a thing of it: `the coil or the rotor arm`."""
    return tokens[first - 1].low in OR or any(_joined(t) for t in tokens[first:end])


def _joined(token: Token) -> bool:
    return token.thing is not None and bool(token.thing.also) and " or " in token.low


def _new_thought(tokens: list[Token], k: int) -> bool:
    """Whether another clause begins at k within an alternative."""
    return tokens[k].clause != tokens[k - 1].clause and tokens[k - 1].low not in ("or", "or else", "either")


def _several(tokens: list[Token], spans: list[tuple[int, int]]) -> bool:
    return len(spans) > 1 or any(_joined(t) for first, end in spans for t in tokens[first:end])


def _suspects(
    scene: Scene, opener: int, spans: list[tuple[int, int]], several: bool, found: list[Draft]
) -> list[Draft]:
    either = any(t.low == "either" for t in scene.tokens[opener : opener + 3])
    told = [_piece(scene.tokens, first, end, either) for first, end in spans]
    if len(told) > 2 and told[-1] is None:
        told.pop()  # the last one runs on into other talk
    pieces = [p for p in told if p is not None]
    if not any(p.sure for p in pieces) or len(pieces) < len(told):
        return []
    if (either or opener < 0) and not any(_at_all(scene.tokens, p) for p in pieces):
        return []  # `either they have finished or somebody stopped them`
    if not several and scene.tokens[opener].low in TO_COME and not _named_outright(scene.tokens, opener, pieces[0]):
        return []  # `it'll be flat by the morning`, `it'll be a touch rich`
    if opener < 0 and not (all(p.sure for p in pieces) and any(_fault(scene.tokens, p) for p in pieces)):
        return []
    made: list[Draft] = []
    asked = opener >= 0 and (scene.tokens[opener].low in OPENS_ASKED or _asked_before(scene.tokens, opener))
    if asked and not (any(_at_all(scene.tokens, p) for p in pieces) and all(p.sure or p.thing for p in pieces)):
        return []  # `is it dry or is it wet?`, `is it grease or fat?`
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
                 first_used=piece.first if opener < 0 else min(opener, piece.first), last_used=piece.last)  # fmt: skip


def _piece(tokens: list[Token], first: int, end: int, any_words: bool = False) -> Piece | None:
    """What an alternative names; None when it names nothing that can be at fault, unless any words will do."""
    first, end = _trimmed(tokens, first, end)
    if first < end and tokens[first].low in PARTLY and any(t.low == "of" for t in tokens[first + 1 : first + 3]):
        return None  # `that'll be the rest of your squeal`
    if first < end and tokens[first].sense("trouble") and tokens[first - 1].low in ("the", "your", "my", "our"):
        return None  # `that must be the squeal` names what is heard, not why
    if first >= end or any(t.kind in ("amount", "thread", "number") or t.low in UNSAID for t in tokens[first:end]):
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
        if (bad is None or abs(bad - at) > 4) and (cut := _does_wrong(tokens, at, end)):
            return Piece(first, cut, thing, thing.name, True)
        if bad is None or abs(bad - at) > 4:
            return None
        return Piece(min(at, bad), max(at, bad), thing, thing.name, True)
    if bad is not None:
        return Piece(first, end - 1, None, _name(tokens[bad], "bad"), True) if whole else None
    small = all(t.low in TRAILING or t.sense("filler", "article") for t in tokens[first:end])
    told = any_words and any(t.sense("copula", "not") for t in tokens[first:end])
    short = end - first <= (WHOLE if told else 2)
    return Piece(first, end - 1, None, "", False) if short and not small else None


def _does_wrong(tokens: list[Token], at: int, end: int) -> int:
    """The end of `the clutch ain't releasing`, of what goes on about what a thing does not do; 0 for other words."""
    for k in range(at + 1, min(at + 3, end - 1)):
        if tokens[k].sense("not"):
            return k + 1
    return 0


def _fault(tokens: list[Token], piece: Piece) -> bool:
    return any(t.sense("cause", "bad") for t in tokens[piece.first : piece.last + 1])


def _at_all(tokens: list[Token], piece: Piece) -> bool:
    """Whether an alternative names a cause, or a part."""
    caused = any(t.sense("cause") for t in tokens[piece.first : piece.last + 1])
    return caused or (piece.thing is not None and piece.thing.kind not in NOT_ASKED)


def _named_outright(tokens: list[Token], opener: int, piece: Piece) -> bool:
    """Whether an alternative names a part or a cause outright, by no word that also tells how something is."""
    if piece.thing is not None and piece.thing.kind not in NOT_ASKED:
        return True
    caused = [t for t in tokens[piece.first : piece.last + 1] if t.sense("cause")]
    return bool(caused) and not (any(t.sense("bad") for t in caused) and tokens[opener + 1].sense("degree"))


def _name(token: Token, cls: str) -> str:
    sense = token.sense(cls)
    return sense.name if sense else ""


def _trimmed(tokens: list[Token], first: int, end: int) -> tuple[int, int]:
    while first < end and not _at_fault(tokens[first]) and (
        tokens[first].low in LEADING or tokens[first].sense("article", "degree", "copula")
    ):  # fmt: skip
        first += 1
    while end > first + 1 and not _at_fault(tokens[end - 1]) and (
        tokens[end - 1].low in TRAILING or tokens[end - 1].sense("degree", "break", "copula")
    ):  # fmt: skip
        end -= 1
    return first, end


def _at_fault(token: Token) -> bool:
    return token.thing is not None or token.sense("cause", "bad") is not None
