"""Things joined: `gasket on the sump` is one thing, and so is `rings and valves`, which remembers both."""

from __future__ import annotations

from dataclasses import replace

from worklog_tui.extract.things.clause_ahead import LISTS, a_clause_ahead, told_alone
from worklog_tui.extract.things.named_as import spoken
from worklog_tui.extract.things.supported import ARTICLES
from worklog_tui.extract.tokens import Thing, Token

JOINS = frozenset("of on in for at from behind under".split())
IS = frozenset({"'s", "\u2019s"})
"With it `the belt or the motor's tight` says two things, of which the second has a verb."
PLACES = frozenset({"on", "in", "at", "behind", "under"})
MOST = 4
"Things that may follow the first one of a list."


def join_things(text: str, tokens: list[Token]) -> list[Token]:
    """The tokens with things that belong together as one token."""
    if len([token for token in tokens if token.thing is not None]) < 2:
        return tokens
    out: list[Token] = []
    for k, token in enumerate(tokens):
        back = _link(out, token.thing) if token.thing is not None else None
        apart = (
            back is None
            or _stands_apart(text, back[0], back[2], token)
            or a_clause_ahead(back[1], back[2], tokens, k)
            or told_alone(text, back[2], tokens, k)
        )
        if back is None or token.thing is None or apart:
            out.append(token)
            continue
        first, thing, word = back
        while out[-1] is not first:
            out.pop()
        out[-1] = Token(
            "thing",
            f"{first.low} {word} {token.low}",
            first.start,
            token.end,
            first.classes,
            thing=_joined(thing, token.thing, word, _both(text, first, token)),
        )
    return out


def _both(text: str, before: Token, after: Token) -> str:
    """The words of two things with those between them."""
    first, last = before.thing, after.thing
    return spoken(f"{first and first.words}{text[before.end : after.start]}{last and last.words}")


def _stands_apart(text: str, first: Token, word: str, token: Token) -> bool:
    """Whether a verb is hidden between: `the pulley's on its key` says where it is, and names one thing."""
    if word == "or":
        return text[token.end - 2 : token.end] in IS
    return word in PLACES and text[first.end - 2 : first.end] in IS


def _joined(thing: Thing, other: Thing, word: str, words: str) -> Thing:
    """The first thing with the other one as its whole, or as one more of a list."""
    if word in JOINS:
        return replace(thing, words=words, which=thing.which or other.which, of=other)
    return replace(thing, words=words, also=(*thing.also, other))


def _link(out: list[Token], after: Thing) -> tuple[Token, Thing, str] | None:
    """The thing and the joining word right before here: `X of [the]`, `X and [the]`."""
    k = len(out) - 1
    if k >= 0 and (out[k].low in ARTICLES or out[k].low == "its"):
        k -= 1
    if k < 1 or out[k].kind == "stop":
        return None
    word, before = out[k].low, out[k - 1]
    thing = before.thing
    if thing is None:
        return None
    if word in LISTS:
        again = (thing.name, thing.which) == (after.name, after.which)  # `plug out, spark and the spark is weak`
        return (before, thing, word) if len(thing.also) < MOST and not again else None
    if word not in JOINS or thing.kind in ("machine", "quality", "tool") or thing.also or thing.of is not None:
        return None
    if (word == "in" and after.kind in ("tool", "machine", "unknown")) or (word == "for" and after.kind == "machine"):
        return None
    if word == "on" and after.kind == "tool":
        return None  # `the old condenser on the meter`
    return before, thing, word
