"""Where talk without stops begins a clause: `seven ohms the run winding is three`, `it's stretched the ram sticks`.

What was told before ends with a state, a figure or a pronoun, and behind it stands a thing with a verb of its own.
"""

from __future__ import annotations

from worklog_tui.extract.tokens import Token

NAMES = frozenset("the this that these those my our your his her one both".split())
"Words with which a name begins; without one only a figure is ended by what comes."
MOST = 3
"Tokens of a name between its first word and the thing: `the left rear`."
VERBS = frozenset(
    "has had hasnt hadnt doesnt didnt wont isnt arent wasnt werent cant couldnt looks feels seems wants".split()
)
NO_VERB = frozenset("been being be".split())
WHOLE = frozenset("it them again now too there though anyway".split())
"Words with which a clause may end."
PARTICLES = frozenset("on in off out up down back".split())
"So may these behind such a word: `hooked it back on`."
NOTHING = frozenset("nothing nowt".split())
WHICH = frozenset("that which".split())


def thing_begins(tokens: list[Token], i: int) -> bool:
    """Whether a thing with its verb begins a clause at token i, behind words that tell something whole."""
    before, named = tokens[i - 1], tokens[i].low in NAMES
    if before.low == "no":
        return named  # `with a magnet no the tooth`: put right, not denied
    figure = before.kind == "amount"
    bare = figure or before.low in NOTHING
    if not (named or bare):
        return False
    return (figure or _ends(tokens, i - 1)) and has_verb(tokens, i, bare)


def has_verb(tokens: list[Token], i: int, bare: bool = False) -> bool:
    """Whether a name begins at token i, with an article unless it may be bare, that has a verb of its own."""
    k = i
    if tokens[k].low in NAMES:
        k += 1
        while k < len(tokens) - 1 and k - i < MOST and _of_a_name(tokens[k]):
            k += 1
    elif not bare:
        return False
    thing = tokens[k].thing if k < len(tokens) else None
    if thing is None or k + 1 >= len(tokens):
        return False
    after = tokens[k + 1]
    verb = (bool(after.sense("copula")) and after.low not in NO_VERB) or after.low in VERBS
    return verb or _has(tokens[k], thing.words)


def _of_a_name(token: Token) -> bool:
    return token.kind != "thing" and token.sense("side", "objectword") is not None


def _has(token: Token, words: str) -> bool:
    """Whether the verb is drawn together with the name: `the seal's gone`."""
    return token.low == f"{words.lower()}s"


def _ends(tokens: list[Token], i: int) -> bool:
    """Whether a clause may end with token i."""
    token = tokens[i]
    if token.low in PARTICLES:
        while i > 1 and tokens[i].low in PARTICLES:
            i -= 1
        return tokens[i].low in ("it", "them")
    if token.low in NOTHING:
        return tokens[i - 1].low == "no"  # `no hum no nothing the fan's fine`
    if token.low in WHOLE:
        return True
    return bool(token.sense("bad", "good")) and tokens[i - 1].low not in WHICH  # not in `that works the valve`
