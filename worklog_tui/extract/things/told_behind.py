"""Which one of several, told behind the thing: `the hose on the right-hand side`, `the flange on number two`."""

from __future__ import annotations

from dataclasses import replace

from worklog_tui.extract.things.markers import marker, state_follows, value_follows
from worklog_tui.extract.things.subjects import with_which
from worklog_tui.extract.tokens import Thing, Token
from worklog_tui.rulebook import Rulebook
from worklog_tui.rulebook.classes import thing_classes

LEADS, HAS = frozenset("on at for".split()), frozenset("has had is was isnt wasnt".split())
ALIKE = frozenset({"part", "joint", "fastener", "control", "quality"})
"Kinds of things that there are several of."


def join_told_behind(tokens: list[Token], book: Rulebook) -> list[Token]:
    """The tokens with such things as one, with which one it is; only where something is told of it next, or no more."""
    ends = {i: end for i, t in enumerate(tokens) if t.thing is not None and (end := _end(tokens, i)) > i}
    out: list[Token] = []
    i = 0
    while ends and i < len(tokens):
        thing, end = tokens[i].thing, ends.get(i, i + 1)
        out.append(_joined(tokens, i, end, thing, book) if thing is not None and i in ends else tokens[i])
        i = end
    return out or tokens


def _end(tokens: list[Token], i: int) -> int:
    """Where the marker behind the thing at token i ends; 0 where there is none that tells which one it is."""
    thing = tokens[i].thing
    if thing is None or thing.kind not in ALIKE or thing.which.isdigit() or i + 2 >= len(tokens):
        return 0
    k = i + 2 if tokens[i + 1].low in LEADS else len(tokens)
    while k < len(tokens) and tokens[k].sense("article"):
        k += 1
    which, end = marker(tokens, k) if k < len(tokens) else ("", k)
    if not which or tokens[k].kind == "number" or which.startswith("other") or value_follows(tokens, end):
        return 0
    after = tokens[end] if end < len(tokens) else None
    told = after is None or after.kind in ("stop", "comma") or after.low in HAS or state_follows(tokens, end, True)
    return end if told else 0


def _joined(tokens: list[Token], i: int, end: int, thing: Thing, book: Rulebook) -> Token:
    which = marker(tokens, next(k for k in range(i + 2, end) if not tokens[k].sense("article")))[0]
    words = with_which(thing.words, which)
    low = " ".join(t.low for t in tokens[i:end])
    classes = thing_classes(thing.name, thing.kind, book.named)
    one = replace(thing, words=words, own=words, which=which)
    return Token("thing", low, tokens[i].start, tokens[end - 1].end, classes, thing=one)
