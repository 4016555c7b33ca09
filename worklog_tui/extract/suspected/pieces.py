"""Pieces: what one alternative of several names, and whether that can be at fault."""

from __future__ import annotations

from dataclasses import dataclass

from worklog_tui.extract.tokens import Thing, Token

NO_CAUSE = frozenset({"tool", "machine", "unknown"})
UNSAID = frozenset({"which", "which is", "what", "who", "where"})
PARTLY = frozenset("rest half part some most all bit lot other".split())
LEADING = frozenset(
    "or ive got theres either whether it its thats that just my the a an im shes hes theyre is was be in on s".split()
)
TRAILING = frozenset("on of in these this those that it here there then again now".split())
WHOLE = 6
"Tokens up to which a suspicion is kept in all its words."
NOT_ASKED = frozenset({"fluid", "material", "machine"})
"What it is may be asked; that it is to blame is not."


@dataclass(frozen=True, slots=True)
class Piece:
    """Tokens first to last of one alternative."""

    first: int
    last: int
    thing: Thing | None
    name: str
    sure: bool
    "Whether it names something that can be at fault."


def read_piece(tokens: list[Token], first: int, end: int, any_words: bool = False) -> Piece | None:
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


def fault(tokens: list[Token], piece: Piece) -> bool:
    """Whether an alternative says that something is bad."""
    return any(t.sense("cause", "bad") for t in tokens[piece.first : piece.last + 1])


def at_all(tokens: list[Token], piece: Piece) -> bool:
    """Whether an alternative names a cause, or a part."""
    caused = any(t.sense("cause") for t in tokens[piece.first : piece.last + 1])
    return caused or (piece.thing is not None and piece.thing.kind not in NOT_ASKED)


def named_outright(tokens: list[Token], opener: int, piece: Piece) -> bool:
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
        tokens[first].low in LEADING or tokens[first].sense("article", "degree", "copula", "suspicion")
    ):  # fmt: skip
        first += 1
    while end > first + 1 and not _at_fault(tokens[end - 1]) and (
        tokens[end - 1].low in TRAILING or tokens[end - 1].sense("degree", "break", "copula")
    ):  # fmt: skip
        end -= 1
    return first, end


def _at_fault(token: Token) -> bool:
    return token.thing is not None or token.sense("cause", "bad") is not None
