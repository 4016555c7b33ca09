"""Alternatives: `could be the feed, the switch or the earth`, `either the pump is dry or it is drawing air`.

A suspicion may be told as a whole clause. Its words up to the next `or`, comma or new thought are one suspect each.
"""

from __future__ import annotations

from worklog_tui.extract.finders.several import spread
from worklog_tui.extract.scene import Draft, Scene
from worklog_tui.extract.suspected.pieces import NO_CAUSE, Piece, at_all, fault, named_outright, read_piece
from worklog_tui.extract.things.named_as import spoken
from worklog_tui.extract.tokens import Token
from worklog_tui.rulebook.patterns import Rule

EVEN = ["asked", "not", "maybe", "would"]
EITHER = Rule("suspect.alternative", "", {"kind": "suspect", "standing": "suspected", "even": EVEN}, (), (), 0.66)
ASKED = Rule("suspect.alternative", "", {**EITHER.gives, "even": [*EVEN, "if"]}, (), (), 0.66)
OPENS = frozenset("either its thats shes so means is be".split()) | {"it is", "that is", "which means"}
OPENS_ASKED = frozenset({"whether", "if", "is it", "is that", "was it", "was that", "are they"})
ASKING = frozenset("know tell wonder wondering see say sure ask asking dunno work".split())
OUTER = frozenset("just well also easily all both".split())
"Words between a thing and a suspicion of its state."
SUBJECT = 5
"Tokens within which a sentence that begins with a thing tells a suspicion of it."
FARTHEST = 40
TO_COME = frozenset({"itll be", "it will be", "thatll be", "that will be", "itd be", "thatd be", "that would be"})
NOT = "not the "
WILL = frozenset("itll thatll theyll shell hell will gonna".split())
OR = frozenset({"or", "or else"})
OPENING = OPENS | OPENS_ASKED | OR
"With one of these words, or one of suspicion, alternatives begin."
ENDS = frozenset("and which when if because cause not rather let lets so yeah yep look see".split()) | {
    "let me",
    "one of the two", "one of them", "one or the other",
}  # fmt: skip


def told(scene: Scene, found: list[Draft]) -> list[Draft]:
    """The suspects that no rule found; a verdict among `found` that is one of several becomes a suspicion, in place."""
    made: list[Draft] = []
    either = "or" in scene.words() and (not OR.isdisjoint(scene.lows()) or any(_joined(t) for t in scene.tokens))
    if not either and not scene.holds("suspicion"):
        return made
    upto = 0
    for i, opener in enumerate(scene.tokens):
        if not ("suspicion" in opener.classes or (either and (i == 0 or opener.low in OPENING))):
            continue  # without an `or` only a suspicion tells anything
        bare, token = i == 0 and _may_list(scene), scene.tokens[i]
        if i >= upto and (bare or _opens(scene, i)):
            spans, last = _spans(scene, i + (not bare))
            several = _several(scene.tokens, spans)
            if several:
                more = _suspects(scene, -1 if bare else i, spans, several, found)
                made, upto = made + more, last if more else upto
            elif token.sense("suspicion") or token.low in OR:
                made += _suspects(scene, i, spans[:1], several, found)
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
    if OR.isdisjoint(scene.lows()):
        return False
    first = scene.tokens[0]
    named = first.thing is not None or first.sense("article", "bad", "cause") or first.low == "no"
    told = scene.holds("suspicion") and any(
        t.sense("suspicion") and _subject(scene, k) is not None for k, t in enumerate(scene.tokens[:SUBJECT])
    )
    return bool(named) and not told and not _opens(scene, 0)


def _asked_before(tokens: list[Token], i: int) -> bool:
    """Whether the words before token i say that something is not known: `can't tell if`."""
    return any(t.sense("whoknows") or any(w in ASKING for w in t.low.split()) for t in tokens[max(0, i - 2) : i])


def _spans(scene: Scene, i: int) -> tuple[list[tuple[int, int]], int]:
    """The stretches between commas and `or` up to the end of the thought, and where that is."""
    tokens = scene.tokens
    spans, first, k = [], i, i
    while k < len(tokens) and k < i + FARTHEST:
        token = tokens[k]
        if token.kind == "stop" or _ends(tokens, first, k):
            break
        if k > first and (_new_thought(tokens, k) or _new_line(scene, first, k)):
            break
        if token.low in OR or token.kind == "comma" or (k > first and "suspicion" in token.classes):
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


def _new_line(scene: Scene, first: int, k: int) -> bool:
    """Whether the last alternative ended with its line: `or an injector's dribbling | had both of them out`."""
    if not scene.opens_note(k) or scene.tokens[first - 1].low not in OR:
        return False
    piece = read_piece(scene.tokens, first, k)
    return piece is not None and piece.sure


def _several(tokens: list[Token], spans: list[tuple[int, int]]) -> bool:
    return len(spans) > 1 or any(_joined(t) for first, end in spans for t in tokens[first:end])


def _suspects(
    scene: Scene, opener: int, spans: list[tuple[int, int]], several: bool, found: list[Draft]
) -> list[Draft]:
    either = any(t.low == "either" for t in scene.tokens[opener : opener + 3])
    told = [read_piece(scene.tokens, first, end, either) for first, end in spans]
    if len(told) > 2 and told[-1] is None:
        told.pop()  # the last one runs on into other talk
    pieces = [p for p in told if p is not None]
    if not any(p.sure for p in pieces) or len(pieces) < len(told):
        return []
    if (either or opener < 0) and not any(at_all(scene.tokens, p) for p in pieces):
        return []  # `either they have finished or somebody stopped them`
    if not several and _to_come(scene.tokens, opener) and not named_outright(scene.tokens, opener, pieces[0]):
        return []  # `it'll be flat by the morning`, `it'll be a touch rich`
    if opener < 0 and not _listed(scene, pieces):
        return []
    made: list[Draft] = []
    asked = opener >= 0 and (scene.tokens[opener].low in OPENS_ASKED or _asked_before(scene.tokens, opener))
    if asked and not (any(at_all(scene.tokens, p) for p in pieces) and all(p.sure or p.thing for p in pieces)):
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


def _to_come(tokens: list[Token], opener: int) -> bool:
    """Whether a suspicion is of what will be: `it'll be flat`, `it'll probably rust`."""
    return tokens[opener].low in TO_COME or (opener > 0 and tokens[opener - 1].low.rpartition(" ")[2] in WILL)


def _listed(scene: Scene, pieces: list[Piece]) -> bool:
    """Whether bare words list what may be at fault: most of them say that something is bad, or all only ask."""
    if not any(fault(scene.tokens, p) for p in pieces):
        return False
    return all(p.sure or p.thing is not None for p in pieces) and 2 * sum(p.sure for p in pieces) > len(pieces)


def _draft(scene: Scene, opener: int, piece: Piece, rule: Rule) -> Draft:
    cause, thing, name = spoken(scene.said(piece.first, piece.last)), piece.thing, piece.name
    first = piece.first if opener < 0 else min(opener, piece.first)
    subject = _subject(scene, opener) if thing is None and opener >= 0 else None
    if subject is not None:
        first, thing = subject, scene.tokens[subject].thing
    if subject is not None and thing is not None:
        cause, name = f"{spoken(thing.words)} {cause}", thing.name
    standing = "suspected"
    if cause.lower().startswith(NOT):
        cause, standing = cause[len(NOT) :], "ruled out"  # `that's not the pump or the valve`
    fields = {"cause": cause, "standing": standing, "name": name}
    return Draft("suspect", piece.first, piece.last, rule, fields, thing=thing, confidence=rule.confidence,
                 first_used=first, last_used=piece.last)  # fmt: skip


def _subject(scene: Scene, opener: int) -> int | None:
    """The thing before a suspicion of its state: `the needle might be sticking`, `the pump's maybe worn`."""
    for k in range(opener - 1, max(opener - 4, -1), -1):
        token = scene.tokens[k]
        if token.clause != scene.tokens[opener].clause:
            return None
        if token.thing is not None:
            suspected = any(t.sense("suspicion") for t in scene.tokens[:k])  # `could be a valve, could be it's dry`
            return None if suspected or token.thing.kind in NO_CAUSE else k
        if not (token.sense("copula", "degree") or token.low in OUTER):
            return None
    return None
