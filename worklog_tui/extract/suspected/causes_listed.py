"""Causes told as a list: `candidates: coil tired, points burnt`, typed `no charge = brushes`, `nut or screw?`.

Words that announce causes, a sign of equation behind a trouble, or a bare question after one make each member of what
follows a suspect.
"""

from __future__ import annotations

from dataclasses import replace

from worklog_tui.extract.finders.several import spread
from worklog_tui.extract.scene import Draft, Scene
from worklog_tui.extract.suspected.pieces import NOT_ASKED, Piece, fault, read_piece
from worklog_tui.extract.things.named_as import spoken
from worklog_tui.extract.tokens import ARROWS, Token
from worklog_tui.model import Finding, Reading, Suspect
from worklog_tui.rulebook.patterns import Rule

LISTED = Rule("suspect.listed", "", {"kind": "suspect", "standing": "suspected"}, (), (), 0.64)
HEAD = 8
"Tokens between the word that announces a list and the list itself."
EQUATES = frozenset({"=", "=="})
"Signs of typed shorthand between a trouble and its cause; an arrow also leads on to what follows from it."
AND = frozenset({"and", "or", "or else", "and or", "maybe", "then", "poss", "possibly"})


def listed(scene: Scene, found: list[Draft]) -> list[Draft]:
    """The suspects of a list that no rule found; what was read within an equation from its trouble is taken out."""
    return _cleared(scene, found) + (_announced(scene, found) or _equation(scene, found) or _asked(scene, found))


def _cleared(scene: Scene, found: list[Draft]) -> list[Draft]:
    """`Spool, joint and hoses are cleared`: what stands before the last one, with commas between, is cleared too."""
    made: list[Draft] = []
    taken = {d.main for d in found if d.kind == "suspect"}
    for draft in found:
        if draft.kind != "suspect" or draft.fields["standing"] != "ruled out" or draft.last_used <= draft.last:
            continue
        k = _joint(scene, min(draft.main, draft.first_used))
        while k is not None and (name := _part(scene, k)):
            thing = scene.tokens[k].thing
            if k not in taken:
                fields = {**draft.fields, "cause": spoken(scene.said(k, k)), "name": name}
                more = replace(draft, main=k, last=k, thing=thing, fields=fields, first_used=k)
                made += spread(more, scene)
            k = _joint(scene, k)
    return made


def _joint(scene: Scene, k: int) -> int | None:
    """The token before a comma or `and` that stands before token k, articles passed over; None without one."""
    i = k - 1
    while i > 0 and scene.tokens[i].sense("article"):
        i -= 1
    return i - 1 if i > 0 and (scene.tokens[i].kind == "comma" or scene.tokens[i].low == "and") else None


def _part(scene: Scene, k: int) -> str:
    """The name of the part that a token names, by a word that is often none too; empty for other words."""
    thing = scene.tokens[k].thing
    if thing is not None:
        return thing.name if thing.kind not in NOT_ASKED else ""
    rows = scene.book.table.get(scene.tokens[k].low, ()) if _loose(scene, scene.tokens[k]) else ()
    return next((str(row[1]) for row in rows if row[0] == "part"), "")


def _announced(scene: Scene, found: list[Draft]) -> list[Draft]:
    """`Candidates for the weak spark: …`, `the usual suspects are …`."""
    if not scene.holds("causes_ahead"):
        return []
    for i, token in enumerate(scene.tokens):
        if not token.sense("causes_ahead"):
            continue
        if token.low.endswith(" are"):
            return _members(scene, found, i, i + 1, least=2)
        for k in range(i + 1, min(i + 1 + HEAD, len(scene.tokens))):
            if scene.tokens[k].sense("copula") or "colon" in scene.tokens[k].classes:
                return _members(scene, found, i, k + 1, least=1)
            if scene.tokens[k].kind in ("comma", "stop"):
                return _members(scene, found, i, k + 1, least=2)
    return []


def _equation(scene: Scene, found: list[Draft]) -> list[Draft]:
    """Typed `drum stops = belts + clutch`: what stands behind the sign of a trouble is its cause."""
    if not scene.typed:
        return []
    for k, token in enumerate(scene.tokens):
        sign = scene.text[token.start : token.end].strip() if token.kind == "comma" else token.low
        if sign not in EQUATES | ARROWS or not _trouble(scene.tokens[:k]):
            continue
        first = k + 1
        behind = scene.tokens[first : _end(scene.tokens, first)]
        if any(_is_good(t) or t.kind in ("number", "amount") for t in behind):
            continue
        goes_on = any(t.sense("bad", "did", "doing", "want", "must", "new") for t in behind) or not any(
            t.thing for t in behind
        )
        if sign in ARROWS and goes_on:
            continue
        named = [d for d in found if d.kind == "suspect" and d.main >= first]
        made = _members(scene, named, 0, first, least=1)
        if made or named:
            found[:] = [d for d in found if d.kind != "suspect" or d in named]
        return made
    return []


def _asked(scene: Scene, found: list[Draft]) -> list[Draft]:
    """`Nut or screw?` right behind a reading or a fault."""
    tokens = scene.tokens
    if not tokens or tokens[-1].low != "?" or not any(t.low == "or" or _or_within(t) for t in tokens):
        return []
    last = scene.context.recent[-1] if scene.context.recent else None
    older = set(scene.context.notes[:-1])
    told = isinstance(last, Finding | Reading | Suspect) and last.main.note not in older
    if not told or (isinstance(last, Finding) and last.verdict == "good"):
        return []
    if not all(t.thing is not None or t.low in AND or t.sense("article", "side", "bad") or t.kind in ("comma", "stop")
               or _loose(scene, t) for t in tokens):  # fmt: skip
        return []
    if any(t.thing is not None and t.thing.kind in NOT_ASKED for t in tokens):
        return []
    return _members(scene, found, 0, 0, least=2)


def _members(scene: Scene, found: list[Draft], head: int, first: int, least: int) -> list[Draft]:
    """A suspect for each member from token `first` to the end of the sentence, if at least so many name a cause."""
    tokens, end = scene.tokens, _end(scene.tokens, first)
    pieces: list[Piece] = []
    start = first
    for k in range(first, end + 1):
        if k < end and not (tokens[k].kind == "comma" or tokens[k].low in AND):
            continue
        piece = read_piece(tokens, start, k) if k > start else None
        if piece is not None and (piece.sure or piece.thing is not None or _loose(scene, tokens[piece.last])):
            pieces.append(piece)
        elif k > start and pieces and k < end:
            break  # the list has gone over into other talk
        start = k + 1
    several = sum(1 + len(p.thing.also) if p.thing is not None else 1 for p in pieces)
    if several < least or (least > 1 and not any(p.thing or fault(tokens, p) for p in pieces)):
        return []
    made: list[Draft] = []
    for piece in pieces:
        if any(d.kind == "suspect" and d.main <= piece.last and piece.first <= d.last for d in found):
            continue
        made += spread(_draft(scene, piece, head), scene)
    return made


def _draft(scene: Scene, piece: Piece, head: int) -> Draft:
    fields = {"cause": spoken(scene.said(piece.first, piece.last)), "standing": "suspected", "name": piece.name}
    return Draft("suspect", piece.first, piece.last, LISTED, fields, thing=piece.thing,
                 confidence=LISTED.confidence, first_used=min(head, piece.first), last_used=piece.last)  # fmt: skip


def _end(tokens: list[Token], first: int) -> int:
    return next((k for k in range(first, len(tokens)) if tokens[k].kind == "stop"), len(tokens))


def _trouble(tokens: list[Token]) -> bool:
    """Whether words before a sign tell a trouble: a bad state, or what a trouble is called."""
    start = max((k + 1 for k, t in enumerate(tokens) if t.kind == "stop"), default=0)
    return any(t.sense("bad", "trouble") or t.low == "no" for t in tokens[start:])


def _is_good(token: Token) -> bool:
    return token.sense("good") is not None and token.sense("bad") is None


def _or_within(token: Token) -> bool:
    return token.thing is not None and bool(token.thing.also) and " or " in token.low


def _loose(scene: Scene, token: Token) -> bool:
    """Whether a word is often no part, but is one here: `screw`, of `nut or screw?`."""
    return token.kind in ("word", "term") and any(s[0] == "part" for s in scene.book.table.get(token.low, ()))
