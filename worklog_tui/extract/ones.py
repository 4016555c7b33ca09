"""`The left one`, `number three`: a marker of which one stands for a thing that was named before."""

from __future__ import annotations

from worklog_tui.extract.context import Context
from worklog_tui.extract.subjects import SIDES, as_thing, with_which
from worklog_tui.extract.tokens import Thing, Token
from worklog_tui.rulebook import Rulebook
from worklog_tui.rulebook.classes import thing_classes

STATES = ("bad", "good", "noted")
ONES = frozenset({"one", "ones"})


def name_ones(tokens: list[Token], context: Context, book: Rulebook) -> list[Token]:
    """The tokens with such markers as things, where a state follows and something that there are several of was
    named.
    """
    if not any(t.kind == "which" or "side" in t.classes or t.low in ONES for t in tokens):
        return tokens
    out: list[Token] = []
    i = 0
    while i < len(tokens):
        which, end = _marker(tokens, i)
        outright = bool(which) and tokens[end - 1].low in ONES
        if not which:
            which, end = _kind_of(tokens, i)
            outright = bool(which)
        named = (
            _several([t.thing for t in out if t.thing is not None], context)
            if which and (outright or _state_follows(tokens, end, context.topic is not None))
            else None
        )
        if named is None:
            out.append(tokens[i])
            i += 1
            continue
        told_by = tokens[i].thing
        words = with_which(named.own or named.words, which) if told_by is None else _one_of(told_by, named)
        thing = Thing(words, named.name, named.kind, which, words, named.per, named.quantities, named.system)
        classes = thing_classes(named.name, named.kind, book.named)
        out.append(
            Token(
                "thing",
                " ".join(t.low for t in tokens[i:end]),
                tokens[i].start,
                tokens[end - 1].end,
                classes,
                thing=thing,
            )
        )
        i = end
    return out


def _kind_of(tokens: list[Token], i: int) -> tuple[str, int]:
    """`The motor one`: a thing that tells which of several is meant, and where its words end."""
    thing = tokens[i].thing
    named = thing is not None and thing.kind != "material" and i + 1 < len(tokens) and tokens[i + 1].low in ONES
    return (tokens[i].low, i + 2) if named and not _value_follows(tokens, i + 2) else ("", i)


def _one_of(thing: Thing, named: Thing) -> str:
    """`Motor pulley`: one of several by what it belongs to."""
    many = (named.own or named.words).split()[-1]
    return f"{thing.words} {many.removesuffix('s') if not many.endswith('ss') else many}"


def _value_follows(tokens: list[Token], end: int) -> bool:
    """Whether a number is told of it, which finds its own part."""
    return any(t.kind in ("number", "amount") for t in tokens[end : end + 3])


def _marker(tokens: list[Token], i: int) -> tuple[str, int]:
    """The marker at token i and where it ends: `left one`, `right-hand ones`, `number two`, `the rear`."""
    token = tokens[i]
    if token.kind == "which":
        return token.which, i + 1 + (i + 1 < len(tokens) and tokens[i + 1].low in ("one", "ones"))
    if not token.sense("side") or token.low not in SIDES or token.low in ("in", "ex"):
        return "", i
    end, words = i + 1, [token.low.removesuffix("s")]
    while end < len(tokens) and (
        tokens[end].low in ("one", "ones", "hand", "side") or (tokens[end].sense("side") and tokens[end].low in SIDES)
    ):
        if tokens[end].low not in ("one", "ones", "side"):
            words.append(tokens[end].low.removesuffix("s"))
        end += 1
    before = tokens[i - 1].low if i else ""
    return (
        (" ".join(words), end)
        if end > i + 1 or before in ("the", "and") or token.low not in ("right", "top", "back")
        else ("", i)
    )


def _state_follows(tokens: list[Token], end: int, running: bool) -> bool:
    """Whether a state is said right after: `is burnt`; under a running test `wet` only says how it was taken."""
    for token in tokens[end : end + 4]:
        if any(token.sense(s) for s in STATES):
            return not (running and token.sense("how") and _value_follows(tokens, tokens.index(token, end)))
        if not (token.sense("copula", "degree", "not", "all", "pronoun") or token.kind == "comma"):
            return False
    return False


def _several(said: list[Thing], context: Context) -> Thing | None:
    """The last named thing that there are several of."""
    for thing in [*reversed(said), *(as_thing(s) for s in context.things)]:
        if thing.kind not in ("machine", "tool", "fluid", "unknown") and (
            thing.per or thing.words.lower().endswith("s")
        ):
            return thing
    return None
