"""Where the second of two things begins a clause of its own: `cleaned the bowl and the needle leaks` is no list."""

from __future__ import annotations

from worklog_tui.extract.things.supported import ARTICLES
from worklog_tui.extract.tokens import Thing, Token

LISTS = frozenset("and & + or nor".split())
SINGULAR = frozenset("is isnt isn't was wasnt wasn't has hasnt hasn't".split())
PLURAL = frozenset("are arent aren't were werent weren't".split())
IS = frozenset({"'s", "\u2019s"})
TIMES = frozenset({"now", "still", "just", "then"})
"Words between a thing and its verb."
VERBS = frozenset("wont won't doesnt doesn't didnt didn't cant can't couldnt couldn't came got went fell broke".split())
TELLS = ("copula", "does", "bad", "good", "function", "moves", "reads")
"Classes of the words that a verb of one thing is found in: looks, turns, leaks, sits square."
LONGEST = 40
"Tokens before a thing that are looked at: reading stays linear in one endless line (judgement)."
DID = 2
"Tokens between a deed and its thing: an article."


def a_clause_ahead(thing: Thing, word: str, tokens: list[Token], k: int) -> bool:
    """Whether the second thing is none of a list but what the next words are said of: a whole machine that has a verb
    of its own behind a part, `choke in and the engine hums`, or is the other suspect, `the belt or the motor`; or what
    is only measured, behind a fluid.
    """
    after = tokens[k].thing
    if any(t.low == "between" for t in _before(tokens, k)):
        return False
    if word not in LISTS or after is None or thing.kind == "unknown" or after.kind == "unknown":
        return False
    if (thing.kind == "machine") == (after.kind == "machine"):
        return {thing.kind, after.kind} == {"fluid", "quality"}
    verb = k + 1 < len(tokens) and tokens[k + 1].sense("copula", "does", "bad", "good", "noted") is not None
    return word == "or" or verb


def told_alone(text: str, word: str, tokens: list[Token], k: int) -> bool:
    """Whether a verb is said of the second thing alone, because something is told or done with the first:
    `gum in the tap and the plunger is seized`, `cleaned the bowl and the needle leaks`.
    """
    if word != "and" or tokens[k - 1].low not in ARTICLES:
        return False
    rest = [t for t in tokens[k + 1 : k + 3] if t.low not in TIMES]
    verb = rest[0] if rest else None
    if verb is not None and (verb.low in PLURAL or _is_verb(verb)):
        return _is_done(tokens, k - 3)
    if (verb is None or verb.low not in SINGULAR) and text[tokens[k].end - 2 : tokens[k].end] not in IS:
        return False
    here = _before(tokens, k)
    return any(t.sense("bad", "good", "copula", "did") for t in here) and all(t.low != "between" for t in here)


def _before(tokens: list[Token], k: int) -> list[Token]:
    """What stands in the clause before the first of the two things."""
    return [t for t in tokens[max(0, k - LONGEST) : max(0, k - 2)] if t.clause == tokens[k].clause]


def _is_done(tokens: list[Token], k: int) -> bool:
    """Whether the thing at token k is what a deed was done to."""
    return any(t.sense("did") for t in tokens[max(0, k - DID) : k])


def _is_verb(token: Token) -> bool:
    """Whether a token is, or begins with, the verb of one thing."""
    first = token.low.split(maxsplit=1)[0]
    if first in SINGULAR:
        return False
    return first in VERBS or (first.endswith("s") and not first.endswith("ss") and bool(token.sense(*TELLS)))
