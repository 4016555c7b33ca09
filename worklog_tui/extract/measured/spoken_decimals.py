"""Decimals spoken without their point: on a voltmeter `thirteen nine` is 13.9, and so is `thirteen nine volts`."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise

from worklog_tui.extract.context import Context
from worklog_tui.extract.tokens import NUMBER, Token
from worklog_tui.rulebook import Rulebook

WHOLE = (5, 30)
"Volts of a vehicle, between which such a number is spoken so (common practice)."
DIGITS = 9


def join_decimals(tokens: list[Token], context: Context, book: Rulebook) -> None:
    """Joins such pairs under a running test of volts, in place."""
    if not [token for token in tokens if token.kind == "number"]:
        return
    _join_gravities(tokens, context, book)
    if not any(_whole(token) for token in tokens):
        return
    running = context.topic is not None and context.topic.quantity == "voltage"
    i = 0
    while i + 1 < len(tokens):
        first, second = tokens[i], tokens[i + 1]
        running = running or _announces(first, "voltage", book)
        if _whole(first) and not _counts_on(tokens, i + 2):
            here = running or _at_battery(tokens, i)
            if _digit(second, here) or (here and _lone_one(tokens, i + 1)):
                tokens[i : i + 2] = [_joined(first, second)]
                i = _range_from(tokens, i)
        i += 1


def _announces(token: Token, quantity: str, book: Rulebook) -> bool:
    """Whether a word announces the test of a quantity, alone or in a name."""
    return any(book.topics.get(word) == quantity for word in (token.low, *token.low.split()))


def _join_gravities(tokens: list[Token], context: Context, book: Rulebook) -> None:
    """Under a hydrometer `one two fifty` is 1.250."""
    if not any(t.low == "one" and after.kind == "number" for t, after in pairwise(tokens)):
        return
    running = context.topic is not None and context.topic.quantity == "density"
    i = 0
    while i + 1 < len(tokens):
        first, second = tokens[i], tokens[i + 1]
        running = running or _announces(first, "density", book)
        if running and first.low == "one" and second.kind == "number" and (second.value or 0) in GRAVITIES:
            value = 1 + (second.value or 0.0) / 1000
            tokens[i : i + 2] = [replace(second, start=first.start, value=value, classes=NUMBER, pairs=())]
        i += 1


GRAVITIES = range(50, 351)
"Thousandths above one between which the acid of a battery lies (common practice)."


def _at_battery(tokens: list[Token], i: int) -> bool:
    """`battery's at twelve four`, `twelve one at the battery`, `ten one while it's cranking`: beside what is measured
    in volts.
    """
    near = (*tokens[max(0, i - 4) : i], *tokens[i + 2 : i + 5])
    if any(t.low == "cranking" for t in near):
        return True
    return any((s := t.sense("part")) is not None and s.of[:1] == ("voltage",) for t in near)


def _lone_one(tokens: list[Token], k: int) -> bool:
    """`Twelve one at the battery`: a one that ends the number; `eleven one of these days` is none."""
    after = tokens[k + 1] if k + 1 < len(tokens) else None
    ends = after is None or after.kind in ("stop", "comma") or after.low in BEHIND_ONE
    return tokens[k].low == "one" and ends


BEHIND_ONE = frozenset("at on across while with and so now when standing resting cranking volts".split())


def _range_from(tokens: list[Token], i: int) -> int:
    """Joins the number before `to` with the one at token i, `fourteen to fourteen two`; the index where it stands."""
    if i < 2 or tokens[i - 1].low not in ("to", "or") or tokens[i - 2].kind != "number" or tokens[i].kind != "number":
        return i
    low, high = tokens[i - 2], tokens[i]
    if low.value is None or high.value is None or low.high is not None or not low.value < high.value <= 1.5 * low.value:
        return i
    tokens[i - 2 : i + 1] = [replace(low, end=high.end, high=high.value, classes=NUMBER)]
    return i - 2


def _whole(token: Token) -> bool:
    return (
        token.kind == "number" and token.low.isalpha() and token.high is None and token.value is not None
        and token.value == int(token.value) and WHOLE[0] <= token.value <= WHOLE[1]
    )  # fmt: skip


def _digit(token: Token, running: bool) -> bool:
    """A digit in words, alone under a running test, or with volts behind it."""
    if not token.low.isalpha():
        return False
    if token.amount is not None:
        low = token.amount.low
        return token.amount.unit == "V" and low == token.amount.high and low == int(low) and 0 < low <= DIGITS
    return running and token.kind == "number" and token.high is None and token.value in range(DIGITS + 1)


def _counts_on(tokens: list[Token], k: int) -> bool:
    """`eleven twelve thirteen`, `ten nine eight`: numbers that are counted, or said digit by digit."""
    return k < len(tokens) and tokens[k].kind == "number"


def _joined(first: Token, second: Token) -> Token:
    assert first.value is not None
    if second.amount is not None:
        value = first.value + second.amount.low / 10
        return replace(second, start=first.start, low=first.low, amount=replace(second.amount, low=value, high=value))
    digit = 1.0 if second.low == "one" else second.value or 0.0
    value = first.value + digit / 10
    return replace(first, end=second.end, value=value, classes=NUMBER, pairs=())
